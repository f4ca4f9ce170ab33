import { axleSolver, placeTracks, type AxleSolver } from '../axle/axleSolver';
import type { GroundFrame } from '../axle/ground';
import type { AxleName } from '../car/document';
import { fail, succeed, type Result } from '../core/result';
import { add, cross, dot, scale, type Vector } from '../core/vector';
import type { Failure } from '../corner/failure';
import { knuckleDirection, wheelCentre } from '../corner/knucklePoint';
import { casterOfSwing, swungCambers } from '../readings/casterBySwing';
import { sweepReadings } from '../readings/readings';
import type { PerSide } from '../readings/rows';
import { frameFor } from '../setup/axleGround';
import type { AssembledCar } from '../setup/assembleCar';

/** A wheel as a gauge finds it, in the left-hand frame of its corner: `left` of the ground is outboard. */
interface SeenWheel {
  readonly centre: Vector;
  /** unit vector, outboard */
  readonly spindle: Vector;
  readonly ground: GroundFrame;
}

const SIDES = ['left', 'right'] as const;

const perSide = <Value>(of: (side: 'left' | 'right') => Value): PerSide<Value> => ({ left: of('left'), right: of('right') });

/** Both wheels at a bump from where the car stands, the rack centred. */
function wheelsAt(solver: AxleSolver, bump: number): Result<PerSide<SeenWheel>, Failure> {
  const placed = placeTracks(solver, solver.main, { travel: bump });
  if (!placed.ok) return placed;
  const { frame } = placed.value;
  return succeed(
    perSide((side) => {
      const { corner } = solver.axle[side];
      const { motion } = solver.main[side];
      const spindle = knuckleDirection(motion, corner.spindle);
      return { centre: wheelCentre(motion), spindle, ground: frameFor(solver.axle[side], frame) };
    }),
  );
}

function refuse(what: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) throw new RangeError(`${what} is ${value}; it has to be over 0.`);
}

/** Two dial indicators on one hub plate, both at zero where the car stands [mm]. */
export interface DialReadings {
  /** + where the plate came outboard */
  readonly front: number;
  readonly rear: number;
  /** rear − front: + toe-in, the steer of the wheel since the dials were set */
  readonly difference: number;
}

export interface BumpSteerRow {
  /** wheel travel from where the car stands [mm, + bump] */
  readonly bump: number;
  readonly dials: Result<PerSide<DialReadings>, Failure>;
}

/**
 * A bump-steer gauge: what two dial indicators show on a plate as the wheel is jacked.
 *
 * The plate is bolted to the hub, parallel to the wheel plane (the wheel is off). The dials stand on the floor and do not move:
 * at the height of the hub where the car stands, `spacing` apart along the car's X laid on the floor, half of it ahead of the
 * hub, their stems across the car. With s the spindle and W the hub, a stem at (a, h) touches the plate at
 * y = (W·s − a X̂·s − h n·s) / (Ŷ·s); so rear − front = spacing · (tan toe − tan toe where the car stands), whatever the camber.
 *
 * @param spacing - of the two dials [mm], over 0
 * @param bumps - wheel travels from where the car stands [mm]
 * @returns one row a bump, or the failure of the setup where it cannot stand; a bump out of reach is a row with its failure
 */
export function bumpSteerGauge(
  car: AssembledCar,
  axle: AxleName,
  { spacing, bumps }: { readonly spacing: number; readonly bumps: readonly number[] },
): Result<readonly BumpSteerRow[], Failure> {
  refuse('The distance of the dials', spacing);
  const solver = axleSolver(car, axle);
  if (!solver.ok) return solver;
  const zero = wheelsAt(solver.value, 0);
  if (!zero.ok) return zero;
  const stems = perSide((side) => {
    const { centre, ground } = zero.value[side];
    const [along, height] = [dot(centre, ground.ahead), dot(centre, ground.normal)];
    return { front: [along + spacing / 2, height] as const, rear: [along - spacing / 2, height] as const };
  });
  const touched = ({ centre, spindle, ground }: SeenWheel, [along, height]: readonly [number, number]): number =>
    (dot(centre, spindle) - along * dot(ground.ahead, spindle) - height * dot(ground.normal, spindle)) /
    dot(ground.left, spindle);
  return succeed(
    bumps.map((bump) => {
      const wheels = wheelsAt(solver.value, bump);
      if (!wheels.ok) return { bump, dials: wheels };
      const dials = perSide((side) => {
        const [now, was] = [wheels.value[side], zero.value[side]];
        const front = touched(now, stems[side].front) - touched(was, stems[side].front);
        const rear = touched(now, stems[side].rear) - touched(was, stems[side].rear);
        return { front, rear, difference: rear - front };
      });
      return { bump, dials: succeed(dials) };
    }),
  );
}

/** What a caster gauge shows on one wheel [rad]. */
export interface CasterSwing {
  /** camber with the wheel's front turned outboard by the swing, and inboard */
  readonly outward: number;
  readonly inward: number;
  /** (outward − inward) / (2 sin swing) */
  readonly bySwing: number;
  /** of the steering axis where the wheel points straight ahead; null where there is none */
  readonly caster: number | null;
}

/**
 * Caster measured by swing: both wheels turned by an angle out and in, the wheel centre held at its height.
 * @param swing - steer angle either way [rad], over 0 and under a right angle
 * @param travel - from where the car stands [mm]
 * @returns null for a wheel that the rack does not turn so far, or an axle that is not steered
 * @see D. B. January, Steering Geometry and Caster Measurement, SAE 850219, 1985
 */
export function swingGauge(
  car: AssembledCar,
  axle: AxleName,
  { swing, travel = 0 }: { readonly swing: number; readonly travel?: number },
): Result<PerSide<CasterSwing | null>, Failure> {
  refuse('The swing', swing);
  if (swing >= Math.PI / 2) throw new RangeError(`The swing is ${swing}; it has to be under a right angle.`);
  const solver = axleSolver(car, axle);
  if (!solver.ok) return solver;
  const placed = placeTracks(solver.value, solver.value.main, { travel });
  if (!placed.ok) return placed;
  const [row] = sweepReadings(car, axle, [{ travel }], ['caster']);
  if (!row.ok) return fail(row.failure);
  return succeed(
    perSide((side) => {
      const { corner } = solver.value.axle[side];
      if (!corner.isSteered) return null;
      const ground = frameFor(solver.value.axle[side], placed.value.frame);
      const cambers = swungCambers(corner, solver.value.swing[side], placed.value.travel[side], ground, swing);
      if (cambers === null) return null;
      return { ...cambers, bySwing: casterOfSwing(cambers, swing), caster: row.value[side].caster ?? null };
    }),
  );
}

/** Distances of one rim from the string beside it [mm, + the rim is inboard of the string]. */
export interface StringReadings {
  readonly front: number;
  readonly rear: number;
}

/**
 * Strings: how far the front and the rear edge of each rim is from a line parallel to the car's centre line, at hub height.
 *
 * The edges are the ends of the rim's level diameter, on a circle `lip` outboard of the wheel centre: W + lip s ± ½ D h with
 * h = unit(s × n). So front − rear = D sin toe, whatever the camber, the offset and the lip.
 *
 * @param offset - of the strings from the car's centre line [mm]
 * @param diameter - of the circle that is measured to [mm], over 0
 * @param lip - of that circle outboard of the wheel centre [mm]
 * @param bump - from where the car stands [mm]
 */
export function stringGauge(
  car: AssembledCar,
  axle: AxleName,
  {
    offset,
    diameter,
    lip = 0,
    bump = 0,
  }: { readonly offset: number; readonly diameter: number; readonly lip?: number; readonly bump?: number },
): Result<PerSide<StringReadings>, Failure> {
  refuse('The diameter', diameter);
  const solver = axleSolver(car, axle);
  if (!solver.ok) return solver;
  const wheels = wheelsAt(solver.value, bump);
  if (!wheels.ok) return wheels;
  const [left, right] = SIDES.map((side) => {
    const { centre, spindle, ground } = wheels.value[side];
    const across = cross(spindle, ground.normal);
    const ahead = scale(across, (0.5 * diameter) / Math.sqrt(dot(across, across)));
    const face = add(centre, scale(spindle, lip));
    const edge = (by: 1 | -1): number => offset - dot(add(face, scale(ahead, by)), ground.left);
    return { front: edge(1), rear: edge(-1) };
  }) as [StringReadings, StringReadings];
  return succeed({ left, right });
}

/**
 * An angle of the wheel plane as a length across the rim: D sin of it. Toe by the rim's front and rear edge (+ toe-in), or
 * camber by its top and bottom against a plumb line (+ top outboard).
 * @param angle - [rad]
 * @param diameter - that the instrument spans [mm]
 */
export const acrossRim = (angle: number, diameter: number): number => diameter * Math.sin(angle);
