/** Tolerances of the solvers, each with its unit and reason. */

/** Largest constraint residual of a pose that is called solved [mm]. */
export const CLOSURE_MM = 1e-9;
/** Where Newton stops: quadratic convergence puts the next residual far below CLOSURE_MM [mm]. */
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
/** Where the search for a toe setting or a standing height stops: [rad] and [mm]. */
export const TOE_STOP = 1e-14;
export const HEIGHT_STOP_MM = 1e-11;
