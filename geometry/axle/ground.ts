import { cross, dot, mirror, scale, subtract, unit, type Vector } from '../core/vector';

/**
 * The ground's directions in car coordinates: n its unit normal, X̂ the car's X laid into it, Ŷ = n × X̂.
 * At design n is Z exactly.
 */
export interface GroundFrame {
  readonly normal: Vector;
  readonly ahead: Vector;
  readonly left: Vector;
}

export const LEVEL: GroundFrame = { normal: [0, 0, 1], ahead: [1, 0, 0], left: [0, 1, 0] };

/**
 * n = (−sin β, cos β sin ρ, cos β cos ρ).
 * @param pitch - β [rad], + nose down (ISO 8855)
 * @param roll - ρ [rad], + right hand about X: left side up, as in a left turn
 */
export function groundFrame(pitch: number, roll: number): GroundFrame {
  if (pitch === 0 && roll === 0) return LEVEL;
  const c = Math.cos(pitch);
  return frameOf([-Math.sin(pitch), c * Math.sin(roll), c * Math.cos(roll)]);
}

export function frameOf(normal: Vector): GroundFrame {
  const ahead = unit(subtract([1, 0, 0], scale(normal, normal[0])));
  return { normal, ahead, left: cross(normal, ahead) };
}

/** The same ground seen in the frame of a mirrored right-hand corner: `left` is then that corner's outboard. */
export function mirrorFrame(frame: GroundFrame): GroundFrame {
  if (frame === LEVEL) return LEVEL;
  return { normal: mirror(frame.normal), ahead: mirror(frame.ahead), left: scale(mirror(frame.left), -1) };
}

/** dn/dρ, pitch held. */
export const normalPerRoll = (pitch: number, roll: number): Vector => {
  const c = Math.cos(pitch);
  return [0, c * Math.cos(roll), -c * Math.sin(roll)];
};

/** How X̂ and Ŷ change with the normal. @param turn - dn */
export function frameChange(frame: GroundFrame, turn: Vector): { readonly ahead: Vector; readonly left: Vector } {
  const n = frame.normal;
  const size = Math.sqrt(1 - n[0] * n[0]);
  const bent: Vector = [-turn[0] * n[0] - n[0] * turn[0], -turn[0] * n[1] - n[0] * turn[1], -turn[0] * n[2] - n[0] * turn[2]];
  const ahead = scale(subtract(bent, scale(frame.ahead, dot(frame.ahead, bent))), 1 / size);
  const a = cross(turn, frame.ahead);
  const b = cross(n, ahead);
  return { ahead, left: [a[0] + b[0], a[1] + b[1], a[2] + b[2]] };
}
