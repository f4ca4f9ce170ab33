import { describe, expect, it } from 'vitest';
import {
  findSetup,
  parseCar,
  sweptSpace,
  toMechanism,
  type AxleName,
  type KeepOut,
  type SideName,
} from '../../../geometry/index';
import type { CarDocument } from '../../../geometry/car/document';
import { dot, length, scale, subtract, type Vector } from '../../../geometry/core/vector';
import { fitUpCorners } from '../../../geometry/fitup/corners';
import { assembleCar } from '../../../geometry/setup/assembleCar';
import { follow, settled, type Followed, type Pose } from '../../laws/followLinkage';
import { fitted } from './envelopes';

/*
 * Every corner of a mesh and the middle of every triangle against a brute force that shares nothing with it: poses by Newton on the
 * constraints from the pose before, the distance of a point from a body by its closed form at design, the least of it over a grid of
 * positions and then by halved steps from the best of the grid. It can only come out too far outside.
 */

interface Body {
  readonly shape: object;
  /** distance of a point of the design position from it, negative inside [mm] */
  readonly off: (p: Vector) => number;
}

const sphere = (at: Vector, radius: number): Body => ({
  shape: { kind: 'sphere', at, radius },
  off: (p) => length(subtract(p, at)) - radius,
});

const capsule = (from: Vector, to: Vector, radius: number): Body => {
  const along = subtract(to, from);
  const whole = dot(along, along);
  return {
    shape: { kind: 'capsule', from, to, radius },
    off: (p) => {
      const arm = subtract(p, from);
      const share = Math.min(1, Math.max(0, dot(arm, along) / whole));
      return length(subtract(arm, scale(along, share))) - radius;
    },
  };
};

const box = (centre: Vector, size: Vector): Body => ({
  shape: { kind: 'box', centre, size },
  off: (p) => {
    const past = subtract(p, centre).map((value, i) => Math.abs(value) - size[i] / 2) as unknown as Vector;
    const outside = length([Math.max(0, past[0]), Math.max(0, past[1]), Math.max(0, past[2])]);
    return outside + Math.min(0, Math.max(...past));
  },
});

/** Of revolution about the spindle, which lies across the car at design: a rectangle whose corners are rounded. */
const TYRE = { tyreRadius: 322, tyreWidth: 214, shoulderRadius: 31 } as const;

const tyre = (centre: Vector): Body => ({
  shape: { kind: 'tyre' },
  off: (p) => {
    const [x, y, z] = subtract(p, centre);
    const { tyreRadius, tyreWidth, shoulderRadius } = TYRE;
    const across = Math.abs(y) - tyreWidth / 2 + shoulderRadius;
    const out = length([x, z, 0]) - tyreRadius + shoulderRadius;
    return length([Math.max(0, across), Math.max(0, out), 0]) + Math.min(0, Math.max(across, out)) - shoulderRadius;
  },
});

interface Case {
  readonly car: string;
  readonly axle: AxleName;
  readonly side: SideName;
  /** what carries it */
  readonly on?: 'wheel';
  readonly grow: number;
  readonly bound: number;
  readonly body: (wheel: Vector) => Body;
}

const CASES: readonly Case[] = [
  // camber and toe of it are 0
  { car: 'car-22', axle: 'front', side: 'left', on: 'wheel', grow: 0, bound: 2, body: tyre },
  {
    car: 'car-21',
    axle: 'front',
    side: 'left',
    grow: 0,
    bound: 2,
    body: ([x, y, z]) => capsule([x - 60, y - 40, z - 90], [x + 80, y - 70, z + 130], 16),
  },
  { car: 'car-23', axle: 'front', side: 'right', grow: 6, bound: 2, body: ([x, y, z]) => sphere([x + 110, y - 30, z + 40], 19) },
  {
    car: 'car-22',
    axle: 'rear',
    side: 'right',
    grow: 0,
    bound: 1,
    body: ([x, y, z]) => box([x + 30, y - 60, z - 20], [90, 30, 60]),
  },
];

/** Steps of the grid over travel and lock, and over travel alone; the last step of the halving [mm]. */
const [OVER_BOTH, OVER_TRAVEL, FINEST] = [4, 0.5, 1 / 16];

/** How far outside of everything that the body passes through a point is, as far as was tried. */
function bruteForce(document: CarDocument, { axle, side }: Case, body: Body): (at: Vector) => number {
  const mechanism = toMechanism(document);
  const car = assembleCar(mechanism, findSetup(document, 'Baseline'));
  if (!car.ok) throw new Error(car.failure.message);
  const corner = fitUpCorners([{ name: 'Baseline', car: car.value }], [axle]).find((one) => one.side.mechanism.side === side)!;
  const { linkage } = corner.side.corner;
  const { travels, racks } = corner.envelope!;
  const ends = (list: readonly number[]) => [list[0], list[list.length - 1]] as const;
  const [lowest, highest] = ends(travels);
  const [first, last] = ends(racks);
  const grain = last > first ? OVER_BOTH : OVER_TRAVEL;
  const poses = new Map<string, Followed>();
  const keyAt = (travel: number, rack: number) => `${travel} ${rack}`;
  const poseAt = (travel: number, rack: number, from: Followed): Followed => {
    const known = poses.get(keyAt(travel, rack));
    if (known !== undefined) return known;
    const made = follow(linkage, from, travel, rack, 8);
    if (!made.arrived) throw new Error(`${travel}, ${rack} was not reached`);
    poses.set(keyAt(travel, rack), made);
    return made;
  };
  const steps = (from: number, to: number): number[] => {
    const count = Math.ceil((to - from) / grain);
    return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  };
  const grid: Followed[] = [];
  let row = settled(linkage)!;
  for (const rack of last > first ? steps(first, last) : [first]) {
    row = poseAt(lowest, rack, row);
    let here = row;
    for (const travel of steps(lowest, highest)) grid.push((here = poseAt(travel, rack, here)));
  }
  const design = (pose: Pose, p: Vector): Vector => {
    const arm = subtract(p, pose.centre);
    const [x, y, z] = linkage.wheelCentre;
    return [x + dot(pose.axes[0], arm), y + dot(pose.axes[1], arm), z + dot(pose.axes[2], arm)];
  };
  return ([x, y, z]) => {
    const p: Vector = [x, side === 'left' ? y : -y, z];
    const offAt = (one: Followed) => body.off(design(one.pose, p));
    let best = grid[0];
    let least = Infinity;
    for (const one of grid) {
      const off = offAt(one);
      if (off < least) [best, least] = [one, off];
    }
    for (let step = grain / 2; step >= FINEST; step /= 2) {
      for (let isBetter = true; isBetter;) {
        isBetter = false;
        for (const [up, along] of [
          [1, 0],
          [-1, 0],
          [0, 1],
          [0, -1],
        ] as const) {
          const travel = Math.min(highest, Math.max(lowest, best.travel + up * step));
          const rack = Math.min(last, Math.max(first, best.rack + along * step));
          const one = poseAt(travel, rack, best);
          const off = offAt(one);
          if (off < least) {
            [best, least] = [one, off];
            isBetter = true;
          }
        }
      }
    }
    return least;
  };
}

const placesOf = ({ mesh: { positions: p, triangles: t } }: KeepOut): Vector[] => {
  const corner = (i: number): Vector => [p[3 * i], p[3 * i + 1], p[3 * i + 2]];
  const places = Array.from({ length: p.length / 3 }, (_, i) => corner(i));
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [corner(t[i]), corner(t[i + 1]), corner(t[i + 2])];
    places.push([(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3]);
  }
  return places;
};

describe('every corner and every middle of a keep-out is outside of what is swept, and no farther than the bound', () => {
  it.each(
    CASES.map(
      (one) =>
        [`${one.car} ${one.axle} ${one.side} ${one.on ?? 'knuckle'}, grown by ${one.grow}, within ${one.bound} mm`, one] as const,
    ),
  )('%s', { timeout: 120_000 }, (_title, one) => {
    const plain = fitted(one.car);
    const wheel = plain[one.axle]!.points.wheelCentre as Vector;
    const body = one.body(wheel);
    const parts = { piece: { axle: one.axle, on: one.on ?? 'knuckle', shape: body.shape } };
    const axleOf = { ...plain[one.axle], wheel: { ...plain[one.axle]?.wheel, ...TYRE } };
    const parsed = parseCar(JSON.stringify({ ...plain, [one.axle]: axleOf, parts }));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
    const { document } = parsed.value;
    const setups = [['Baseline', findSetup(document, 'Baseline')]] as const;
    const { axle, side, grow, bound } = one;
    const made = sweptSpace(toMechanism(document), { axles: [axle], sides: [side], setups, of: ['piece'], grow, bound });
    if (!('mesh' in made)) throw new Error(JSON.stringify(made));
    const off = bruteForce(document, one, body);
    const all = placesOf(made).map((place) => off(place) - grow);
    expect(all.length).toBeGreaterThan(1000);
    const least = all.reduce((a, b) => Math.min(a, b));
    const most = all.reduce((a, b) => Math.max(a, b));
    expect(least).toBeGreaterThanOrEqual(-0.01);
    expect(most).toBeLessThanOrEqual(bound + 0.01);
    // and it says so itself, on the safe side
    expect(made.outward.least).toBeLessThanOrEqual(least);
    expect(made.outward.most).toBeLessThanOrEqual(bound);
  });
});
