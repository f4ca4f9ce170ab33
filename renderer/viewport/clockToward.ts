import { toDegrees, type AdjusterDocument, type SideName, type Triple } from '../../geometry/index';

const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Triple, b: Triple): Triple => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** A pull of less than this along the bushing's face has no direction in it [mm]. */
const LEAST = 0.5;

/**
 * The clock of an offset bushing whose hole points where it is pulled to: right hand about the axis, from twelve [degrees].
 * @param pull - in the car's frame [mm]; the right side is the mirror image of the file's left
 * @returns null where the pull is along the bushing's axis
 */
export const clockToward = (
  { axis, twelve }: Extract<AdjusterDocument, { kind: 'offset-bushing' }>,
  pull: Triple,
  side: SideName,
): number | null => {
  const pulled: Triple = side === 'right' ? [pull[0], -pull[1], pull[2]] : pull;
  const along = dot(twelve, axis) / dot(axis, axis);
  const noon: Triple = [twelve[0] - along * axis[0], twelve[1] - along * axis[1], twelve[2] - along * axis[2]];
  const three = cross(axis, noon);
  const [up, across] = [dot(pulled, noon) / Math.sqrt(dot(noon, noon)), dot(pulled, three) / Math.sqrt(dot(three, three))];
  return Math.abs(up) < LEAST && Math.abs(across) < LEAST ? null : toDegrees(Math.atan2(across, up));
};
