import { describe, expect, it } from 'vitest';
import { placeAxle, toDegrees, toRadians, type AxleName, type SideName, type Vector } from '../../../geometry/index';
import type { CarDocument } from '../../../geometry/car/document';
import type { JointDocument } from '../../../geometry/car/fitUpDocument';
import { cross, dot, length, mirror, subtract, unit } from '../../../geometry/core/vector';
import { envelopeOf } from '../../../geometry/fitup/envelope';
import { fitUpCorners, type StoodSetup } from '../../../geometry/fitup/corners';
import { jointTilts as tiltsOf, type JointRow } from '../../../geometry/fitup/joints/jointTilts';
import { inInches } from '../../golden/inInches';
import { fitted } from './envelopes';
import { sample, stand } from './loadedCars';

type Joints = Readonly<Record<string, JointDocument>>;

const jointTilts = (setups: readonly StoodSetup[], axles: readonly AxleName[]): JointRow[] =>
  tiltsOf(fitUpCorners(setups, axles));

const BOTH: readonly AxleName[] = ['front', 'rear'];
const rodJoint = (axle: AxleName, bolt: Vector, boltOn: string, rod: string): JointDocument => ({
  axle,
  bolt,
  boltOn,
  rod,
  rated: 15,
});

function stoodWith(document: CarDocument, joints: Joints, setups?: readonly string[]): StoodSetup[] {
  const { questions: _, ...rest } = document;
  const names = setups ?? Object.keys(document.setups ?? { Baseline: {} });
  return names.map((name) => ({ name, car: stand({ ...rest, joints }, name) }));
}

const rowOf = (rows: readonly JointRow[], point: string, side: SideName): JointRow => {
  const row = rows.find((one) => one.point === point && one.side === side);
  if (row === undefined) throw new Error(`no row of ${point} ${side}`);
  return row;
};

const CASES: [string, CarDocument, Joints][] = [
  [
    'strut and blade',
    sample('saltmarsh-hatch'),
    {
      tieRodEnd: rodJoint('front', [0.05, 0.1, 1], 'knuckle', 'tieRod'),
      rackEnd: rodJoint('front', [0, 0, 1], 'rack', 'tieRod'),
      toeKnuckle: rodJoint('rear', [1, 0.1, 0.2], 'knuckle', 'toe'),
      upperBody: rodJoint('rear', [1, 0, 0], 'body', 'upper'),
    },
  ],
  [
    'virtual axis',
    sample('marram-coupe'),
    {
      tensionKnuckle: rodJoint('front', [0, 0.1, 1], 'knuckle', 'tension'),
      tensionBody: rodJoint('front', [0, 0.1, 1], 'body', 'tension'),
      leadingKnuckle: rodJoint('rear', [0, 1, 0.3], 'knuckle', 'leading'),
    },
  ],
  [
    'right-hand points of its own',
    fitted('car-23'),
    {
      tieRodEnd: rodJoint('front', [0.1, -0.2, 1], 'knuckle', 'tieRod'),
      rackEnd: rodJoint('front', [0.3, 0, 1], 'rack', 'tieRod'),
    },
  ],
  ['double wishbone', fitted('car-24'), wishboneJoints(fitted('car-24'))],
];

function wishboneJoints(document: CarDocument): Joints {
  const { steering, rods } = document.front!;
  const [inner, outer] = rods![steering!.rod!];
  return {
    [inner]: rodJoint('front', [0.1, 0, 1], 'rack', steering!.rod!),
    [outer]: rodJoint('front', [0.1, 0.2, 1], 'knuckle', steering!.rod!),
  };
}

/** The tilt of a rod in a pose, by places and turn of the knuckle in the car's frame, from the picture of the axle. */
function tiltThere(
  { car }: StoodSetup,
  joint: JointDocument,
  axle: AxleName,
  side: SideName,
  at: { travel: number; rack: number },
  bolt: Vector = joint.bolt,
): number {
  const { standing } = car[axle]!;
  const placed = placeAxle(car, axle, {
    travel: { left: at.travel - standing.left, right: at.travel - standing.right },
    rack: at.rack,
  });
  if (!placed.ok) return NaN;
  const corner = placed.value[side];
  const rod = corner.rods.find(({ name }) => name === joint.rod)!;
  const r = corner.rotation;
  // the picture's turn is one of the car's frame
  const own = side === 'left' ? bolt : mirror(bolt);
  const turned: Vector =
    joint.boltOn === 'knuckle'
      ? [
          r[0] * own[0] + r[1] * own[1] + r[2] * own[2],
          r[3] * own[0] + r[4] * own[1] + r[5] * own[2],
          r[6] * own[0] + r[7] * own[1] + r[8] * own[2],
        ]
      : own;
  return Math.asin(Math.abs(dot(unit(turned), unit(subtract(rod.outer, rod.inner)))));
}

describe.each(CASES)('%s: against the angle of bolt and rod in the picture of every position', (_title, document, joints) => {
  const setups = stoodWith(document, joints);
  const rows = jointTilts(setups, BOTH);

  it('there is a row for every joint and side', () => {
    expect(rows.map(({ point, side }) => `${point} ${side}`).sort()).toEqual(
      Object.keys(joints)
        .flatMap((point) => [`${point} left`, `${point} right`])
        .sort(),
    );
  });

  it.each(rows.map((row) => [`${row.point} ${row.side}`, row] as const))('%s', (_name, row) => {
    const joint = joints[row.point];
    const axle = row.axle;
    const worstSetup = setups.find(({ name }) => name === row.at!.setup)!;
    expect(tiltThere(worstSetup, joint, axle, row.side, row.at!)).toBeCloseTo(row.tilt!, 9);
    let most = 0;
    let mostThen = 0;
    for (const setup of setups) {
      const envelope = envelopeOf(setup.car[axle]!.mechanism, setup.name, setup.car[axle]![row.side]);
      if ('missing' in envelope) throw new Error(envelope.missing);
      const { open, solid, rackMin, rackMax } = envelope;
      // not the grid of the program
      for (let i = 0; i <= 13; i++)
        for (let k = 0; k <= (rackMin === rackMax ? 0 : 13); k++) {
          const at = { travel: open + ((solid - open) * i) / 13, rack: rackMin + ((rackMax - rackMin) * k) / 13 };
          most = Math.max(most, tiltThere(setup, joint, axle, row.side, at) || 0);
          mostThen = Math.max(mostThen, tiltThere(setup, joint, axle, row.side, at, row.bestBolt!) || 0);
        }
    }
    expect(row.tilt).toBeGreaterThanOrEqual(most - 1e-9);
    expect(toDegrees(row.tilt! - most)).toBeLessThan(0.3);
    expect(row.tiltThen).toBeGreaterThanOrEqual(mostThen - 1e-9);
    expect(toDegrees(row.tiltThen! - mostThen)).toBeLessThan(0.3);
    expect(row.tiltThen).toBeLessThanOrEqual(row.tilt!);
    expect(row.spare).toBeCloseTo(toRadians(15) - row.tilt!, 12);
  });
});

describe('a joint with a bore', () => {
  it('is the angle of two axes, each carried by its body: the strut’s top bearing', () => {
    const document = sample('saltmarsh-hatch');
    const { strutTop, strutFoot } = document.front!.points;
    const axis = subtract(strutTop, strutFoot);
    const joints: Joints = { strutTop: { bolt: axis, boltOn: 'strut', bore: axis, boreOn: 'body', rated: 12 } };
    const setups = stoodWith(document, joints, ['Baseline']);
    const rows = jointTilts(setups, BOTH);
    for (const row of rows) {
      const placed = placeAxle(setups[0].car, 'front', { travel: row.at!.travel, rack: row.at!.rack });
      if (!placed.ok) throw new Error(placed.failure.message);
      const { top, foot } = placed.value[row.side].strut!;
      const now = unit(subtract(top, foot));
      const then = unit(row.side === 'left' ? axis : mirror(axis));
      expect(Math.asin(length(cross(now, then)))).toBeCloseTo(row.tilt!, 9);
      // to solid: the strut swings on
      expect(row.tilt).toBeGreaterThan(toRadians(1));
    }
  });

  it('counts modulo 180°: a bolt the other way round tilts the same', () => {
    const document = sample('saltmarsh-hatch');
    const joint = { bolt: [0, 0.2, 1] as const, boltOn: 'knuckle', bore: [0.1, 0.2, 1] as const, boreOn: 'arm', rated: 25 };
    const other = { ...joint, bolt: [0, -0.2, -1] as const };
    const rows = [joint, other].map((one) => jointTilts(stoodWith(document, { ballJoint: one }, ['Baseline']), ['front']));
    rows[0].forEach((row, i) => expect(rows[1][i].tilt).toBeCloseTo(row.tilt!, 12));
  });

  it('between two parts of one body never changes', () => {
    const joints: Joints = {
      wheelCentre: { axle: 'rear', bolt: [0, 1, 0], boltOn: 'knuckle', bore: [0, 1, 1], boreOn: 'trailingArm', rated: 50 },
    };
    for (const row of jointTilts(stoodWith(sample('saltmarsh-hatch'), joints), BOTH)) {
      expect(row.tilt).toBeCloseTo(Math.PI / 4, 12);
      expect(row.tiltThen).toBeLessThan(1e-9);
    }
  });

  // the arm of a wishbone whose axes lie along X turns about them: the angle by the law of sines
  it('of an arm that swings as a hinge is the angle of the swing', () => {
    const joints: Joints = {
      lowerFrontBody: { axle: 'front', bolt: [0, 0, 1], boltOn: 'body', bore: [0, 0, 1], boreOn: 'lowerFront', rated: 20 },
    };
    const setups = stoodWith(sample('chalkboard'), joints, ['As drawn']);
    for (const row of jointTilts(setups, BOTH)) {
      const placed = placeAxle(setups[0].car, 'front', { travel: row.at!.travel, rack: row.at!.rack });
      if (!placed.ok) throw new Error(placed.failure.message);
      const ball = placed.value[row.side].points['lowerBall'];
      expect(row.tilt).toBeCloseTo(Math.asin(Math.abs(ball[2] - 200) / 350), 9);
      expect(Math.abs(row.at!.travel)).toBeGreaterThan(60);
    }
  });
});

describe('rows', () => {
  it('the least spare first, over the setups that are asked for', () => {
    const joints = CASES[0][2];
    const all = jointTilts(stoodWith(sample('saltmarsh-hatch'), joints), BOTH);
    const spares = all.map(({ spare }) => spare!);
    expect(spares).toEqual([...spares].sort((a, b) => a - b));
    const one = jointTilts(stoodWith(sample('saltmarsh-hatch'), joints, ['Baseline']), ['front']);
    expect(new Set(one.map(({ axle }) => axle))).toEqual(new Set(['front']));
    for (const row of one) {
      expect(row.at!.setup).toBe('Baseline');
      expect(rowOf(all, row.point, row.side).tilt).toBeGreaterThanOrEqual(row.tilt! - 1e-12);
    }
  });

  it('left and right of a mirrored car tilt alike, with the rack the other way', () => {
    const joints = CASES[0][2];
    const rows = jointTilts(stoodWith(sample('saltmarsh-hatch'), joints, ['Baseline']), BOTH);
    for (const point of Object.keys(joints)) {
      const [left, right] = [rowOf(rows, point, 'left'), rowOf(rows, point, 'right')];
      expect(right.tilt).toBeCloseTo(left.tilt!, 9);
      expect(right.at!.rack).toBeCloseTo(0 - left.at!.rack, 2);
      expect(right.tiltThen).toBeCloseTo(left.tiltThen!, 5);
    }
  });

  it('a car in inches has the same', () => {
    const { questions: _, parts: __, spans: ___, loads: ____, limits: _____, ...document } = fitted('car-23');
    const [joints] = [CASES[2][2]];
    const rows = jointTilts(stoodWith(document, joints), BOTH);
    const inches = jointTilts(stoodWith(inInches(document), joints), BOTH);
    for (const row of rows) expect(rowOf(inches, row.point, row.side).tilt).toBeCloseTo(row.tilt!, 9);
  });

  it('without an envelope there is no tilt, and the reason', () => {
    const document = sample('chalkboard');
    const { damper: _, ...front } = document.front!;
    const joints: Joints = { tieRodEnd: rodJoint('front', [0, 0, 1], 'knuckle', 'tieRod') };
    const axle = { ...document, front: { ...front, points: { ...front.points, rackEnd: front.points['rackEnd'] } } };
    const [row] = jointTilts(stoodWith(axle, joints, ['As drawn']), ['front']);
    expect(row).toMatchObject({ tilt: null, at: null, bestBolt: null });
    expect(row.why['tilt']).toContain('front.damper');
  });

  it('a car without joints has no rows', () => {
    const { joints: _, ...document } = sample('chalkboard');
    expect(jointTilts([{ name: 'As drawn', car: stand(document) }], BOTH)).toEqual([]);
    expect(jointTilts([], BOTH)).toEqual([]);
  });
});
