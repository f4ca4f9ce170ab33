/** One number a wheel. */
export interface PerWheel<Value> {
  readonly frontLeft: Value;
  readonly frontRight: Value;
  readonly rearLeft: Value;
  readonly rearRight: Value;
}

export interface UnevenFloor {
  /** heights of the four pads under the tyres [mm, + higher]; only their differences count */
  readonly pads: PerWheel<number>;
  /** distances of the pads [mm], over 0 */
  readonly frontTrack: number;
  readonly rearTrack: number;
  readonly wheelbase: number;
}

export interface FloorCorrection {
  /** against the line through the two pads of the wheel's own axle [rad]; null where none was measured */
  readonly cambers: PerWheel<number | null>;
  /** of the line through an axle's pads [rad, + left pad higher] */
  readonly tilt: { readonly front: number; readonly rear: number };
  /** along the car [rad, + front higher] */
  readonly slope: number;
  /** how far one pad is out of the plane of the other three [mm, + front left and rear right are high] */
  readonly twist: number;
}

/** `corrected` of a wheel: with γ measured against the plumb, s = (0, cos γ, −sin γ), and asin(−s·n) against the floor. */
function against(measured: number | null, across: number, along: number): number | null {
  if (measured === null) return null;
  const size = Math.sqrt(1 + across * across + along * along);
  return Math.asin((Math.sin(measured) + across * Math.cos(measured)) / size);
}

/**
 * Cambers that were measured against the plumb on a floor that is not level, as they are against the floor.
 *
 * The floor under an axle is taken as the plane through its two pads, sloping along the car as the means of the axles do;
 * without that slope the answer is γ + atan(h/track) exactly, h the own pad's height over the other. Toe is left out: it would
 * add its own part of the slope along the car, 0.001° for 0.1° of toe and 10 mm in the wheelbase.
 *
 * @param measured - [rad, + top outboard]; null: not measured
 */
export function correctForFloor(floor: UnevenFloor, measured: PerWheel<number | null>): FloorCorrection {
  const { pads, frontTrack, rearTrack, wheelbase } = floor;
  for (const length of [frontTrack, rearTrack, wheelbase])
    if (!(Number.isFinite(length) && length > 0)) throw new RangeError(`A distance of pads is ${length}; it has to be over 0.`);
  const front = (pads.frontLeft - pads.frontRight) / frontTrack;
  const rear = (pads.rearLeft - pads.rearRight) / rearTrack;
  const along = (pads.frontLeft + pads.frontRight - pads.rearLeft - pads.rearRight) / (2 * wheelbase);
  return {
    cambers: {
      frontLeft: against(measured.frontLeft, front, along),
      frontRight: against(measured.frontRight, -front, along),
      rearLeft: against(measured.rearLeft, rear, along),
      rearRight: against(measured.rearRight, -rear, along),
    },
    tilt: { front: Math.atan(front), rear: Math.atan(rear) },
    slope: Math.atan(along),
    twist: pads.frontLeft - pads.frontRight - pads.rearLeft + pads.rearRight,
  };
}
