/**
 * The motion record: pose and rates of one knuckle, as 28 numbers in a Float64Array.
 *
 * | from | what |
 * | --- | --- |
 * | 0 | R, row-major: turns a direction of the knuckle at design into where it points now |
 * | 9 | W, the wheel centre now [mm] |
 * | 12, 15 | twist per mm of wheel travel, rack held: velocity of W [mm/mm], angular velocity [rad/mm] |
 * | 18, 21 | twist per mm of rack, travel held |
 * | 24 | what the solver needs to go on from here: arm angle and its rates (strut), quaternion (multi-link) |
 *
 * A point q of the knuckle (coordinates at design) is now at W + R (q − W₀), W₀ the corner's wheel centre at design.
 * Both solvers write this record, so that no reading knows which of them it came from.
 */
export type Motion = Float64Array;

export const MOTION_WIDTH = 28;
export const CENTRE = 9;
export const TRAVEL_VELOCITY = 12;
export const TRAVEL_TURN = 15;
export const RACK_VELOCITY = 18;
export const RACK_TURN = 21;
export const SOLVER_STATE = 24;

/** Why a pose could not be solved; 0 is solved. The words are made in `failure.ts`, only when somebody asks. */
export const SOLVED = 0;
export const STRUT_TOO_SHORT = 1;
export const TIE_ROD_SHORT = 2;
export const PAST_ARC_END = 3;
export const FOLD = 4;
export type SolveStatus = 0 | 1 | 2 | 3 | 4;
