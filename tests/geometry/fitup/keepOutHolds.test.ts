import { describe, expect, it } from 'vitest';
import { findSetup, fitUpCorners, parseCar, sweptSpace, toMechanism, type KeepOut, type SideName } from '../../../geometry/index';
import { SOLVED } from '../../../geometry/corner/motion';
import { trackCorner } from '../../../geometry/corner/solveCorner';
import { trackAt } from '../../../geometry/fitup/envelope';
import { placed, PLACEMENT_WIDTH } from '../../../geometry/fitup/placement';
import { piecesOf } from '../../../geometry/fitup/pieces';
import { assembleCar } from '../../../geometry/setup/assembleCar';
import { sample } from './loadedCars';

type Point = readonly [number, number, number];

const PARTS = {
  block: { axle: 'front', on: 'knuckle', shape: { kind: 'box', centre: [40, 640, 290], size: [50, 40, 60] } },
  ball: { axle: 'rear', on: 'knuckle', shape: { kind: 'sphere', at: [-2450, 650, 330], radius: 25 } },
};

/** Numbers from 0 to 1, the same every time. */
function randoms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

/** Points on the skin of each part at design, where the left-hand corner has it. */
const SKIN: Readonly<Record<keyof typeof PARTS, (random: () => number) => Point>> = {
  block: (random) => {
    const at = [2 * random() - 1, 2 * random() - 1, 2 * random() - 1];
    at[Math.floor(3 * random())] = random() < 0.5 ? -1 : 1;
    return [40 + 25 * at[0]!, 640 + 20 * at[1]!, 290 + 30 * at[2]!];
  },
  ball: (random) => {
    const [up, turn] = [2 * random() - 1, 2 * Math.PI * random()];
    const out = Math.sqrt(1 - up * up);
    return [-2450 + 25 * out * Math.cos(turn), 650 + 25 * out * Math.sin(turn), 330 + 25 * up];
  },
};

function mechanismOf() {
  const parsed = parseCar(JSON.stringify({ ...sample('saltmarsh-hatch'), parts: PARTS }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  return toMechanism(parsed.value.document);
}

function keepOutOf(part: keyof typeof PARTS, side: SideName, grow = 0): KeepOut {
  const mechanism = mechanismOf();
  const setups = [['Baseline', findSetup(mechanism.document, 'Baseline')]] as const;
  const made = sweptSpace(mechanism, { axles: [PARTS[part].axle as 'front'], sides: [side], setups, of: [part], grow, bound: 2 });
  if ('failure' in made) throw new Error(made.failure.message);
  if ('refused' in made) throw new Error(made.message);
  return made;
}

/** Where points of a part's skin are at positions anywhere in travel and lock, car frame; solved one by one. */
function sweptPoints(part: keyof typeof PARTS, side: SideName, count: number): Point[] {
  const mechanism = mechanismOf();
  const car = assembleCar(mechanism, findSetup(mechanism.document, 'Baseline'));
  if (!car.ok) throw new Error(car.failure.message);
  const corners = fitUpCorners([{ name: 'Baseline', car: car.value }], [PARTS[part].axle as 'front']);
  const corner = corners.find((one) => one.side.mechanism.side === side)!;
  const envelope = corner.envelope!;
  const { pieces } = piecesOf(mechanism.document, mechanism.mmPerUnit, corner.axle, corner.side, new Map());
  const piece = pieces.find(({ name }) => name === part)!;
  const random = randoms(7);
  const within = (list: readonly number[]): number => list[0]! + random() * (list[list.length - 1]! - list[0]!);
  const made: Point[] = [];
  while (made.length < count) {
    const [travel, rack] = [within(envelope.travels), within(envelope.racks)];
    const [i, j] = [envelope.travels, envelope.racks].map((list) => {
      const first = list.findIndex(
        (value) => value >= Math.min(list === envelope.travels ? travel : rack, list[list.length - 1]!),
      );
      return Math.max(0, first);
    });
    const track = trackAt(envelope, i!, j!);
    if (trackCorner(corner.side.corner, track, travel, rack) !== SOLVED) throw new Error('the position was not reached');
    const place = new Float64Array(PLACEMENT_WIDTH);
    expect(piece.follow(track.motion, rack, place)).toBe(true);
    const [x, y, z] = placed(place, SKIN[part](random));
    made.push([x, side === 'left' ? y : -y, z]);
  }
  return made;
}

/** How often a closed mesh goes round a point: 1 inside, 0 outside; by the solid angles of its triangles. */
function winding({ mesh: { positions: p, triangles } }: KeepOut, [x, y, z]: Point): number {
  let sum = 0;
  const v = new Float64Array(9);
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const at = 3 * triangles[i + k]!;
      v[3 * k] = p[at]! - x;
      v[3 * k + 1] = p[at + 1]! - y;
      v[3 * k + 2] = p[at + 2]! - z;
    }
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = v as unknown as [number, ...number[]] as number[];
    const [la, lb, lc] = [Math.hypot(ax!, ay!, az!), Math.hypot(bx!, by!, bz!), Math.hypot(cx!, cy!, cz!)];
    const six = ax! * (by! * cz! - bz! * cy!) + ay! * (bz! * cx! - bx! * cz!) + az! * (bx! * cy! - by! * cx!);
    const ab = ax! * bx! + ay! * by! + az! * bz!;
    const bc = bx! * cx! + by! * cy! + bz! * cz!;
    const ca = cx! * ax! + cy! * ay! + cz! * az!;
    sum += 2 * Math.atan2(six, la * lb * lc + ab * lc + bc * la + ca * lb);
  }
  return sum / (4 * Math.PI);
}

describe('the space that a part sweeps', () => {
  it.each([
    ['block', 'left'],
    ['block', 'right'],
    ['ball', 'left'],
  ] as const)('holds every point of the %s at any position, on the %s', { timeout: 120_000 }, (part, side) => {
    const made = keepOutOf(part, side);
    expect(made.outward.least).toBeGreaterThanOrEqual(0);
    expect(made.outward.most).toBeLessThanOrEqual(2);
    const out = sweptPoints(part, side, 150).filter((point) => Math.abs(winding(made, point) - 1) > 1e-3);
    expect(out).toEqual([]);
    expect(winding(made, [0, 0, 2000])).toBeCloseTo(0, 6);
  });

  it('on the right is the mirror of the left where the sides are alike', { timeout: 120_000 }, () => {
    const [left, right] = [keepOutOf('ball', 'left'), keepOutOf('ball', 'right')];
    for (const k of [0, 1] as const)
      for (const i of [0, 2] as const) expect(Math.abs(right.box[k][i] - left.box[k][i])).toBeLessThan(2);
    expect(Math.abs(right.box[0][1] + left.box[1][1])).toBeLessThan(2);
    expect(Math.abs(right.volume / left.volume - 1)).toBeLessThan(0.02);
  });

  it('of a ball is a tube: no less than its path makes, and no more than with the bound', { timeout: 120_000 }, () => {
    const grow = 10;
    const made = keepOutOf('ball', 'left', grow);
    // the ball's middle draws a line, as the rear axle is not steered: its length from the poses themselves
    const mechanism = mechanismOf();
    const car = assembleCar(mechanism, findSetup(mechanism.document, 'Baseline'));
    if (!car.ok) throw new Error(car.failure.message);
    const corner = fitUpCorners([{ name: 'Baseline', car: car.value }], ['rear']).find(
      (one) => one.side.mechanism.side === 'left',
    )!;
    const { pieces } = piecesOf(mechanism.document, mechanism.mmPerUnit, corner.axle, corner.side, new Map());
    const piece = pieces.find(({ name }) => name === 'ball')!;
    const { travels, racks } = corner.envelope!;
    const path = travels.map((travel, i) => {
      const track = trackAt(corner.envelope!, i, 0);
      if (trackCorner(corner.side.corner, track, travel, racks[0]!) !== SOLVED) throw new Error('the position was not reached');
      const place = new Float64Array(PLACEMENT_WIDTH);
      piece.follow(track.motion, racks[0]!, place);
      return placed(place, [-2450, 650, 330]);
    });
    const long = path
      .slice(1)
      .reduce((sum, [x, y, z], i) => sum + Math.hypot(x - path[i]![0], y - path[i]![1], z - path[i]![2]), 0);
    // a tube around a curve that bends less than its radius is as large as one around a line (Pappus)
    const tube = (radius: number): number => Math.PI * radius * radius * (long + (4 / 3) * radius);
    expect(made.volume).toBeGreaterThan(tube(25 + grow));
    expect(made.volume).toBeLessThan(tube(25 + grow + 2));
  });
});
