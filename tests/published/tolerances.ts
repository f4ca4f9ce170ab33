/**
 * Tolerances of the published tests. A case that states its own keeps it, beside its figures; these are for what has none:
 * closed forms, where only rounding is left, and differences, where the step decides.
 */

/** A closed form of lengths of some 1000 mm: poses close within 1e-9 mm. */
export const CLOSED_MM = 1e-8;
/** A closed form of an angle [deg]. */
export const CLOSED_DEG = 1e-9;
/** A closed form of a rate, ratio, stiffness or per cent, relative. */
export const CLOSED_RELATIVE = 1e-9;
/** Equilibrium of forces against virtual work: the same numbers by a linear solve whose condition costs some digits, relative. */
export const STATICS_RELATIVE = 1e-8;
/** A central difference with a step of some tenths of a mm or of a degree against a derivative, relative. */
export const DIFFERENCE_RELATIVE = 1e-6;
