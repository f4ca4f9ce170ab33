import { axleSolver, inCar, placeTracks, type Placed } from '../axle/axleSolver';
import { rollCentre } from '../axle/rollCentre';
import type { AxleName } from '../car/document';
import { succeed, type Result } from '../core/result';
import { add, scale, ZERO, type Vector } from '../core/vector';
import type { Failure } from '../corner/failure';
import { followCarrier } from '../corner/carrier';
import { knucklePoint } from '../corner/knucklePoint';
import type { Motion } from '../corner/motion';
import { barState } from '../readings/barReadings';
import { frontViewInstantCentre, sideViewInstantCentre } from '../readings/cornerReadings';
import type { PerSide, Position } from '../readings/rows';
import { spanState } from '../readings/spanReadings';
import { axisAtPlane, steeringAxis } from '../readings/steeringAxis';
import { wheelStance } from '../readings/wheelStance';
import type { AssembledAxle, AssembledCar } from './assembleCar';
import type { AssembledSide } from './assembleSide';
import { carrierOf } from './cornerParts';
import { frameFor } from './axleGround';
import { onStrutTube } from './linkages';

/** Where everything of an axle is at one position: car coordinates [mm], right-hand points with their negative y. For drawing and tables. */
export interface PlacedAxle {
  readonly left: PlacedCorner;
  readonly right: PlacedCorner;
  readonly travel: PerSide<number>;
  /** inner ends of the steered rods; null on an unsteered axle */
  readonly rack: PerSide<Vector> | null;
  readonly ground: { readonly point: Vector; readonly normal: Vector };
  readonly rollCentre: Vector | null;
}

export interface PlacedCorner {
  readonly points: Readonly<Record<string, Vector>>;
  readonly rods: readonly { readonly name: string; readonly inner: Vector; readonly outer: Vector }[];
  /** front pivot, rear pivot, ball joint of a strut's lower arm */
  readonly arm: readonly [Vector, Vector, Vector] | null;
  readonly trailingArm: { readonly pivot: Vector; readonly axis: Vector } | null;
  readonly wheelCentre: Vector;
  /** unit vector, outboard */
  readonly spindle: Vector;
  readonly contactCentre: Vector;
  readonly loadedRadius: number;
  readonly strut: { readonly top: Vector; readonly foot: Vector } | null;
  readonly spring: { readonly upper: Vector; readonly lower: Vector } | null;
  readonly damper: { readonly upper: Vector; readonly lower: Vector } | null;
  readonly bar: { readonly pivot: Vector; readonly axis: Vector; readonly armEnd: Vector; readonly linkEnd: Vector } | null;
  readonly steeringAxis: { readonly point: Vector; readonly direction: Vector; readonly ground: Vector } | null;
  /** [y, z] */
  readonly frontViewInstantCentre: readonly [number, number] | null;
  /** [x, z] */
  readonly sideViewInstantCentre: readonly [number, number] | null;
  /** row-major, turns knuckle directions at design into car directions now */
  readonly rotation: readonly number[];
}

/**
 * Where all points and parts of an axle are at a position.
 * @returns the places, or why the position cannot be reached
 * @throws RangeError as `readingsOfAxle`
 */
export function placeAxle(car: AssembledCar, name: AxleName, position: Position = {}): Result<PlacedAxle, Failure> {
  const made = axleSolver(car, name);
  if (!made.ok) return made;
  const solver = made.value;
  const placement = placeTracks(solver, solver.main, position);
  if (!placement.ok) return placement;
  const placed = placement.value;
  const { axle } = solver;
  const stances = {
    left: wheelStance(axle.left.corner, solver.main.left.motion, frameFor(axle.left, placed.frame)),
    right: wheelStance(axle.right.corner, solver.main.right.motion, frameFor(axle.right, placed.frame)),
  };
  const centre = rollCentre(
    [stances.left.contact, inCar(axle.right, stances.right.contact)],
    [stances.left.contactVelocity, inCar(axle.right, stances.right.contactVelocity)],
    placed.frame,
    placed.groundPoint,
  );
  const { frame } = placed;
  const left = placeCorner(axle, axle.left, solver.main.left.motion, placed);
  const right = placeCorner(axle, axle.right, solver.main.right.motion, placed);
  return succeed({
    left,
    right,
    travel: placed.travel,
    rack: rackEnds(axle, left, right),
    ground: { point: placed.groundPoint, normal: frame.normal },
    rollCentre:
      centre === null
        ? null
        : add(
            add(scale(frame.left, centre.across), scale(frame.normal, centre.up)),
            scale(frame.ahead, placed.groundPoint[0] * frame.ahead[0]),
          ),
  });
}

function rackEnds(axle: AssembledAxle, left: PlacedCorner, right: PlacedCorner): PerSide<Vector> | null {
  const rod = axle.mechanism.steering?.rod;
  if (rod === undefined) return null;
  const end = (corner: PlacedCorner): Vector => corner.rods.find(({ name }) => name === rod)!.inner;
  return { left: end(left), right: end(right) };
}

function placeCorner(axle: AssembledAxle, side: AssembledSide, motion: Motion, placed: Placed): PlacedCorner {
  const { corner, parts } = side;
  const { rack } = placed;
  const ground = frameFor(side, placed.frame);
  const stance = wheelStance(corner, motion, ground);
  const out = (v: Vector): Vector => inCar(side, v);
  const pair = (p: { upper: Vector; lower: Vector }): { upper: Vector; lower: Vector } => ({
    upper: out(p.upper),
    lower: out(p.lower),
  });
  const rods = corner.linkage.rods.map((rod) => ({
    name: rod.name,
    inner: out(add(rod.inner, scale(rod.rack, rack))),
    outer: out(knucklePoint(corner, motion, rod.outer)),
  }));
  const { guide, pivot } = corner.linkage;
  const axis = steeringAxis(corner, motion, ground.normal);
  const bar = parts.bar === null ? null : barState(parts.bar, corner, motion, rack);
  const front = frontViewInstantCentre(stance.contact, stance.contactVelocity, stance.turn);
  return {
    points: placedPoints(axle, side, motion, rack),
    rods,
    arm: guide === null ? null : [rods[0].inner, rods[1].inner, rods[0].outer],
    trailingArm: pivot === null ? null : { pivot: out(knucklePoint(corner, motion, pivot.onArm)), axis: out(pivot.axis) },
    wheelCentre: out(stance.centre),
    spindle: out(stance.spindle),
    contactCentre: out(stance.contact),
    loadedRadius: corner.loadedRadius,
    strut: guide === null ? null : { top: out(guide.top), foot: out(knucklePoint(corner, motion, guide.foot)) },
    spring: parts.spring === null ? null : pair(spanState(parts.spring, corner, motion, rack, null)),
    damper: parts.damper === null ? null : pair(spanState(parts.damper, corner, motion, rack, null)),
    bar:
      bar === null || parts.bar === null
        ? null
        : { pivot: out(parts.bar.pivot), axis: out(parts.bar.axis), armEnd: out(bar.armEnd), linkEnd: out(bar.linkEnd) },
    steeringAxis:
      typeof axis === 'string'
        ? null
        : {
            point: out(axis.point),
            direction: out(axis.direction),
            ground: out(axisAtPlane(axis, stance.contact, ground.normal)),
          },
    frontViewInstantCentre: front === null ? null : [out([0, front[0], 0])[1], front[1]],
    sideViewInstantCentre: sideViewInstantCentre(stance.contact, stance.contactVelocity, stance.turn),
    rotation: rotationInCar(side, motion),
  };
}

/** Mirrored on the right: M R M negates what couples y with x and z. */
function rotationInCar(side: AssembledSide, motion: Motion): number[] {
  const r = Array.from(motion.subarray(0, 9));
  return side.corner.side === 'left' ? r : r.map((value, i) => (i === 1 || i === 3 || i === 5 || i === 7 ? -value : value));
}

/** Every named point of the file, where it is now. */
function placedPoints(axle: AssembledAxle, side: AssembledSide, motion: Motion, rack: number): Record<string, Vector> {
  const { corner, adjustment, mechanism } = side;
  const { rods, spring, damper, trailingArm } = axle.mechanism;
  const places: Record<string, Vector> = {};
  const { linkage } = corner;
  for (const [name, point] of Object.entries(mechanism.points)) places[name] = add(point, adjustment.shifts.body[name] ?? ZERO);
  for (const part of [spring, damper]) {
    if (part === null || part.points === null) continue;
    const { lower, lowerOn } = part.points;
    places[lower] = followCarrier(
      carrierOf(axle.mechanism, side.mechanism, adjustment, lowerOn, mechanism.points[lower]),
      corner,
      motion,
      rack,
    ).at;
  }
  rods.forEach((rod, i) => {
    places[rod.inner] = add(linkage.rods[i].inner, scale(linkage.rods[i].rack, rack));
    places[rod.outer] = knucklePoint(corner, motion, linkage.rods[i].outer);
  });
  if (trailingArm !== null) places[trailingArm.pivot] = knucklePoint(corner, motion, linkage.pivot!.onArm);
  if (linkage.guide !== null) {
    places['strutTop'] = linkage.guide.top;
    places['strutFoot'] = knucklePoint(corner, motion, linkage.guide.foot);
    for (const bolt of ['clampUpper', 'clampLower']) {
      const at = mechanism.points[bolt];
      if (at !== undefined) places[bolt] = knucklePoint(corner, motion, onStrutTube(side.mechanism, adjustment, at));
    }
  }
  places['wheelCentre'] = knucklePoint(corner, motion, linkage.wheelCentre);
  for (const name of Object.keys(places)) places[name] = inCar(side, places[name]);
  return places;
}
