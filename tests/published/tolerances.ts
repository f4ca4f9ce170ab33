/**
 * Tolerances of the published tests. A case that states its own keeps it, beside its figures; these are for what has none:
 * closed forms, where only rounding is left, and differences, where the step decides.
 */

/** A closed form of lengths of some 1000 mm: poses close within 1e-9 mm. */
export const CLOSED_MM = 1e-8;
/** A closed form of an instant centre, roll centre or swing arm: a rate divided by a small one, metres away [mm]. */
export const CENTRE_MM = 1e-5;
/** A closed form of an angle [deg]. */
export const CLOSED_DEG = 1e-9;
/** A closed form of a slope or rate near nothing [mm/mm, deg/mm, %]. */
export const CLOSED_SLOPE = 1e-9;
/** A closed form of a force of some 1000 N: a spring of 100 N/mm off by a closed length [N]. */
export const CLOSED_N = 1e-6;
/** A closed form of a rate, ratio, stiffness or per cent, relative. */
export const CLOSED_RELATIVE = 1e-9;
/** A closed form of a quotient of two small differences of angles, relative. */
export const SMALL_DIFFERENCE_RELATIVE = 1e-8;
/** A closed form for springs without load, against springs with next to none: 1e-7 mm of squeeze, relative. */
export const LIGHT_SPRING_RELATIVE = 1e-7;
/** A reading at a steer angle that is searched for on both sides [deg]. */
export const SEARCHED_DEG = 1e-8;
/** Equilibrium of forces against virtual work: the same numbers by a linear solve whose condition costs some digits, relative. */
export const STATICS_RELATIVE = 1e-8;
/** A central difference with a step of some tenths of a mm or of a degree against a derivative, relative. */
export const DIFFERENCE_RELATIVE = 1e-6;
