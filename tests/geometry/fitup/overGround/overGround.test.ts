import { describe, expect, test } from 'vitest';
import { findSetup, parseCar, toMechanism, type AxleName, type CarDocument, type SideName } from '../../../../geometry/index';
import { add, cross, dot, mirror, reject, scale, unit, type Vector } from '../../../../geometry/core/vector';
import { startTrack, trackCorner } from '../../../../geometry/corner/solveCorner';
import { knuckleDirection, wheelCentre } from '../../../../geometry/corner/knucklePoint';
import { groundFrame } from '../../../../geometry/axle/ground';
import { envelopeOf } from '../../../../geometry/fitup/envelope';
import { overGround, type Attitude, type GroundRow, type OverGround } from '../../../../geometry/fitup/overGround/overGround';
import type { PartDocument } from '../../../../geometry/car/fitUpDocument';
import { assembleCar, type AssembledCar } from '../../../../geometry/setup/assembleCar';
import { goldenDocument } from '../../../golden/goldenCars';
import { sample } from '../loadedCars';

const BOTH: readonly SideName[] = ['left', 'right'];
const AXLES: readonly AxleName[] = ['front', 'rear'];

function withParts(
  document: CarDocument,
  parts: Readonly<Record<string, PartDocument>>,
  more: Partial<CarDocument> = {},
): CarDocument {
  const parsed = parseCar(JSON.stringify({ ...document, parts, ...more }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  return parsed.value.document;
}

function stood(document: CarDocument, setup: string): AssembledCar {
  const car = assembleCar(toMechanism(document), findSetup(document, setup));
  if (!car.ok) throw new Error(car.failure.message);
  return car.value;
}

function asked(document: CarDocument, setup = 'Baseline', axles = AXLES, sides = BOTH): OverGround {
  return overGround(toMechanism(document), [{ name: setup, car: stood(document, setup) }], axles, sides, new Map());
}

const rowOf = ({ rows }: OverGround, part: string, attitude: Attitude, side: SideName = 'left'): GroundRow =>
  rows.find((row) => row.part === part && row.attitude === attitude && row.side === side)!;

/** Three little balls on the body say where the plane is: it is as high over each as the row says, less the ball. */
const PROBES: Readonly<Record<string, PartDocument>> = Object.fromEntries(
  (
    [
      [0, 0, 0],
      [-1000, 0, 0],
      [0, 500, 0],
    ] as const
  ).map((at, i) => [`probe${i}`, { on: 'body', only: true, shape: { kind: 'sphere', at, radius: 1 } }]),
);

interface Plane {
  readonly normal: Vector;
  readonly height: number;
}

/** The plane as the heights of the three balls have it. */
function planeOf(answer: OverGround, attitude: Attitude): Plane {
  const stance = answer.stances.find((one) => one.attitude === attitude)!;
  const { normal } = groundFrame((stance.pitch * Math.PI) / 180, (stance.roll * Math.PI) / 180);
  const heights = [0, 1, 2].map((i) => rowOf(answer, `probe${i}`, attitude).height + 1);
  const at: readonly Vector[] = [
    [0, 0, 0],
    [-1000, 0, 0],
    [0, 500, 0],
  ];
  const height = dot(normal, at[0]) - heights[0];
  for (const i of [1, 2]) expect(dot(normal, at[i]) - height).toBeCloseTo(heights[i], 9);
  return { normal, height };
}

/** Heights of the lowest points of the four wheels, each looked for all around its circle. */
function feetHeights(car: AssembledCar, plane: Plane, attitude: Attitude): number[] {
  return AXLES.flatMap((name) => {
    const axle = car[name];
    if (axle === null) return [];
    return BOTH.map((side) => {
      const { corner, wheel } = axle[side];
      const envelope = envelopeOf(axle.mechanism, '', axle[side]);
      const solid = 'missing' in envelope ? NaN : envelope.solid;
      const track = startTrack(corner);
      trackCorner(corner, track, attitude === 'solid' ? solid : axle.standing[side], 0);
      const inCar = (v: Vector): Vector => (side === 'left' ? v : mirror(v));
      const spindle = inCar(knuckleDirection(track.motion, corner.spindle));
      const centre = inCar(wheelCentre(track.motion));
      const radius = attitude === `${side}-flat` ? 0.5 * wheel.rimDiameter! : wheel.loadedRadius;
      const out = unit(reject([1, 0, 0], spindle));
      const up = unit(cross(spindle, out));
      let least = Infinity;
      for (let i = 0; i < 36000; i++) {
        const angle = (i * Math.PI) / 18000;
        const point = add(centre, add(scale(out, radius * Math.cos(angle)), scale(up, radius * Math.sin(angle))));
        least = Math.min(least, dot(plane.normal, point) - plane.height);
      }
      return least;
    });
  });
}

describe('the ground under a car', () => {
  const cars = ['saltmarsh-hatch', 'marram-coupe'].map((name) => [name, sample(name)] as const);
  const golden = ['21', '22', '23', '24'].map((name) => [`car ${name}`, goldenDocument(`car-${name}`)] as const);

  test.each([...cars, ...golden])('%s: all wheels stand on it, as circles all around, in every attitude', (_, document) => {
    for (const setup of Object.keys(document.setups ?? { Baseline: {} })) {
      const car = stood(withParts(document, PROBES), setup);
      const answer = asked(withParts(document, PROBES), setup);
      for (const { attitude, unevenBy } of answer.stances) {
        const heights = feetHeights(car, planeOf(answer, attitude), attitude);
        // as nearly as the plane says that the four fit on one
        expect(Math.max(...heights.map(Math.abs))).toBeCloseTo(unevenBy, 4);
        // and no wheel more than its share: what is off sums to nothing
        expect(heights.reduce((sum, height) => sum + height, 0)).toBeCloseTo(0, 3);
      }
      const attitudes = answer.stances.map(({ attitude }) => attitude);
      expect(attitudes).toContain('standing');
      expect(attitudes.length + answer.missing.length).toBeGreaterThanOrEqual(2);
    }
  });

  test('with ride heights it is the ground that the readings are of, but for what the axles of a file are off one level', () => {
    const document = sample('saltmarsh-hatch');
    for (const setup of Object.keys(document.setups ?? {})) {
      const car = stood(document, setup);
      const { pitch } = car;
      const stance = asked(document, setup).stances.find(({ attitude }) => attitude === 'standing')!;
      if (findSetup(document, setup).front?.rideHeight !== undefined) {
        // pitch counts from design, where the two grounds of this file are some hundredths of a millimetre apart
        const [front, rear] = AXLES.map((axle) => car[axle]!.groundPoint);
        const apart = (rear[2] - front[2]) / (front[0] - rear[0]);
        expect(Math.abs(apart)).toBeLessThan(1e-4);
        expect((stance.pitch * Math.PI) / 180).toBeCloseTo(pitch - apart, 5);
        expect(stance.unevenBy).toBeLessThan(1e-3);
      }
    }
  });

  test('one side flat leans the car as a right-angled triangle over its track says, the other side likewise', () => {
    // no camber and no ride height: the drop is radius less half the rim, nearly upright, over the track at the ground
    const document = sample('saltmarsh-hatch');
    const answer = asked(document, 'Baseline');
    const [left, right] = (['left-flat', 'right-flat'] as const).map((attitude) =>
      answer.stances.find((one) => one.attitude === attitude)!,
    );
    expect(left.roll).toBeCloseTo(-right.roll, 9);
    const drop = document.front!.wheel.loadedRadius - 0.5 * document.front!.wheel.rimDiameter!;
    const track = 2 * document.front!.points!['wheelCentre'][1];
    expect(Math.tan((right.roll * Math.PI) / 180)).toBeCloseTo(drop / track, 3);
  });
});

describe('parts over the ground', () => {
  const ball = (more: Partial<PartDocument> = {}): PartDocument =>
    ({ axle: 'front', on: 'body', shape: { kind: 'sphere', at: [100, 300, 180], radius: 30 }, ...more }) as PartDocument;

  test('a ball under a level car is as high as its middle less its radius and the ground', () => {
    const document = withParts(sample('saltmarsh-hatch'), { ...PROBES, sump: ball() });
    const answer = asked(document);
    const { normal, height } = planeOf(answer, 'standing');
    const row = rowOf(answer, 'sump', 'standing');
    expect(row.height).toBeCloseTo(dot(normal, [100, 300, 180]) - height - 30, 9);
    expect(row).toMatchObject({ axle: 'front', needs: 0, verdict: 'clear', spare: row.height });
    expect(dot(normal, row.point) - height).toBeCloseTo(row.height, 9);
    const right = rowOf(answer, 'sump', 'standing', 'right');
    expect(right.height).toBeCloseTo(row.height, 9);
    expect(right.point).toEqual(expect.arrayContaining([row.point[0]]));
    expect(right.point[1]).toBeCloseTo(-row.point[1], 9);
    // a flat left side brings the left one down, and the right one up
    expect(rowOf(answer, 'sump', 'left-flat').height).toBeLessThan(rowOf(answer, 'sump', 'left-flat', 'right').height);
  });

  test('what is there once is counted once; what stands on the ground, and the wheel itself, is not', () => {
    const document = withParts(sample('saltmarsh-hatch'), {
      sump: ball({ only: true }),
      pipe: ball({ only: true, side: 'right', shape: { kind: 'sphere', at: [100, -300, 180], radius: 30 } }),
      floor: { on: 'body', shape: { kind: 'sphere', at: [0, 200, 200], radius: 10 } },
      skid: ball({ touches: ['ground'] }),
      tyre: { axle: 'front', on: 'wheel', shape: { kind: 'tyre' } },
      rim: { axle: 'front', on: 'wheel', shape: { kind: 'rim' } },
    });
    const standing = asked(document).rows.filter(({ attitude }) => attitude === 'standing');
    const named = (name: string): string[] =>
      standing.filter(({ part }) => part === name).map(({ axle, side }) => `${String(axle)} ${side}`);
    expect(named('sump')).toEqual(['front left']);
    expect(named('pipe')).toEqual(['front right']);
    expect(named('floor').sort()).toEqual(['null left', 'null right']);
    for (const name of ['skid', 'tyre', 'rim']) expect(named(name), name).toEqual([]);
    // given for the right, it is on the right
    expect(standing.find(({ part }) => part === 'pipe')!.point[1]).toBeLessThan(0);
  });

  test('only of the axle and side asked for; the car stands on all its wheels all the same', () => {
    const document = sample('saltmarsh-hatch');
    const whole = asked(document);
    const part = asked(document, 'Baseline', ['rear'], ['right']);
    expect(part.stances).toEqual(whole.stances);
    expect(part.rows.length).toBeGreaterThan(0);
    expect(part.rows).toEqual(whole.rows.filter(({ axle, side }) => axle !== 'front' && side === 'right'));
  });

  test('the margin is the file’s, and the verdict goes by it; least spare first', () => {
    const low = (z: number): PartDocument => ball({ shape: { kind: 'sphere', at: [100, 300, z], radius: 30 } });
    const bare = asked(withParts(sample('saltmarsh-hatch'), { sump: low(180) }));
    const { height } = rowOf(bare, 'sump', 'standing');
    const at = (over: number): PartDocument => low(180 - height + over);
    const document = withParts(
      sample('saltmarsh-hatch'),
      { clear: at(60), close: at(45), short: at(20), under: at(-5) },
      { margins: { ground: 40 } },
    );
    const answer = asked(document);
    for (const [name, verdict] of Object.entries({ clear: 'clear', close: 'close', short: 'short', under: 'cuts' }))
      expect(rowOf(answer, name, 'standing'), name).toMatchObject({ verdict, needs: 40 });
    const spares = answer.rows.map(({ spare }) => spare);
    expect(spares).toEqual([...spares].sort((a, b) => a - b));
  });

  test('what spins hangs as low whichever way it is turned: a disc is as low as its radius', () => {
    const answer = asked(sample('saltmarsh-hatch'));
    const { rows } = answer;
    const disc = rows.find(({ part, attitude, axle }) => part === 'disc' && attitude === 'right-flat' && axle === 'front')!;
    const document = sample('saltmarsh-hatch');
    const rim = 0.5 * document.front!.wheel.rimDiameter!;
    // upright but for camber and the lean: half a rim over the ground less its own radius, within a millimetre
    expect(disc.side).toBe('right');
    expect(Math.abs(disc.height - (rim - document.front!.brake!.disc!.radius))).toBeLessThan(1);
  });

  test('what the file does not say is told: rims, and where the dampers end', () => {
    const document = sample('saltmarsh-hatch');
    const { rimDiameter: _, rimInside: _inside, ...wheel } = document.front!.wheel;
    const { damper: _damper, ...front } = document.front!;
    const bare = withParts({ ...document, front: { ...front, wheel } as typeof document.front } as CarDocument, {});
    const { missing, stances } = asked(bare);
    expect(stances.map(({ attitude }) => attitude)).not.toContain('left-flat');
    expect(missing.join(' ')).toContain('rimDiameter of the front wheels');
  });
});

describe('rows that are equal', () => {
  test('stay in the order of the setups that were asked for, though rounding sets the last bit of each', () => {
    const hatch = sample('saltmarsh-hatch');
    // 0.1 + 0.2 turns are not 0.3 turns to the last bit
    const setups = ['first', 'second', 'third'].map((name, i) => {
      const front = { both: { tieRod: [0.3, 0.1 + 0.2, 0.3 - 1e-16][i]! }, rideHeight: -7 - i * 1e-15 };
      return { name, car: stood({ ...hatch, setups: { [name]: { front } } } as CarDocument, name) };
    });
    const { rows } = overGround(toMechanism(hatch), setups, AXLES, BOTH, new Map());
    const alike = (a: GroundRow, b: GroundRow): boolean => Math.abs(a.spare - b.spare) < 1e-9;
    const place = ({ setup, attitude, axle, side }: GroundRow): readonly number[] => [
      setups.findIndex(({ name }) => name === setup),
      ['standing', 'left-flat', 'right-flat', 'solid'].indexOf(attitude),
      [null, 'front', 'rear'].indexOf(axle),
      BOTH.indexOf(side),
    ];
    let ties = 0;
    rows.slice(1).forEach((row, i) => {
      if (!alike(rows[i]!, row)) return;
      ties += 1;
      const [before, after] = [place(rows[i]!), place(row)];
      const first = before.findIndex((value, k) => value !== after[k]);
      expect(first < 0 || before[first]! < after[first]!).toBe(true);
    });
    expect(ties).toBeGreaterThan(50);
    const bits = new Set(rows.filter(({ part, side }) => part === 'disc' && side === 'left').map(({ spare }) => spare));
    expect(bits.size).toBeGreaterThan(4 * 2);
  });
});
