/**
 * The only place where degrees and radians meet. Inside the library every angle is in radians;
 * degrees belong to the file, the command line and the screen.
 */
declare const unitOfAngle: unique symbol;
export type Radians = number & { readonly [unitOfAngle]?: 'rad' };
export type Degrees = number & { readonly [unitOfAngle]?: 'deg' };

export const RADIANS_PER_DEGREE = Math.PI / 180;
export const DEGREES_PER_RADIAN = 180 / Math.PI;

export const toRadians = (degrees: Degrees): Radians => (degrees as number) * RADIANS_PER_DEGREE;
export const toDegrees = (radians: Radians): Degrees => (radians as number) * DEGREES_PER_RADIAN;
