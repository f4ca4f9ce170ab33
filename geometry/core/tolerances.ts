/** Tolerances of the solvers, each with its unit and reason. */

/** Where Newton stops [mm]: a tenth of the largest residual that the geometry promises, 1e-9 mm. */
export const NEWTON_STOP_MM = 1e-10;
/** Largest turn of the knuckle in one step of a continuation [rad]: farther, another branch could be caught. */
export const CONTINUATION_TURN = 0.05;
/** Largest travel or rack movement in one step of a continuation [mm], for a wheel of ordinary size. */
export const CONTINUATION_STEP_MM = 8;
/** Smallest step before a continuation calls the place a fold [mm]. */
export const CONTINUATION_SMALLEST_MM = 1e-3;
/** Largest turn of the lower arm in one Newton step of a strut [rad]. */
export const ARM_STEP = 0.1;
/** A design whose tie rod is closer to over centre than this has no branch to follow (sine of the angle). */
export const OVER_CENTRE = 1e-3;
/** Smallest scaled singular value of a design Jacobian that is still called a linkage. */
export const SINGULAR = 1e-6;
/** An instant centre farther than 1e7 mm is no instant centre [rad/mm]. */
export const NO_INSTANT_CENTRE = 1e-7;
/** Toe counts as reset within this [rad]; the next step of the search is far below it. */
export const TOE_REACHED = 1e-12;
/** Where the search for a wheel's height on the ground stops [mm]. */
export const HEIGHT_STOP_MM = 1e-10;
