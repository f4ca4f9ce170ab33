import { describe, expect, it } from 'vitest';
import {
  findSetup,
  parseCar,
  toMechanism,
  type AxleName,
  type CarDocument,
  type SideName,
  type Vector,
} from '../../../geometry/index';
import { CENTRE, SOLVED } from '../../../geometry/corner/motion';
import { trackCorner } from '../../../geometry/corner/solveCorner';
import { distance } from '../../../geometry/core/vector';
import { clearanceStudy, type ClearanceAnswer } from '../../../geometry/fitup/clearance/clearance';
import type { ClearanceRow } from '../../../geometry/fitup/clearance/pairRow';
import { fieldOf, withPieces, type PairField } from '../../../geometry/fitup/clearance/pairCorner';
import { fitUpCorners } from '../../../geometry/fitup/corners';
import { trackAt } from '../../../geometry/fitup/envelope';
import { atDesign, writeRelative, writeTurn } from '../../../geometry/fitup/placement';
import type { Follow } from '../../../geometry/fitup/carriers';
import { GridPlacements } from '../../../geometry/fitup/clearance/placements';
import { findWorst } from '../../../geometry/fitup/clearance/search';
import { pointCore } from '../../../geometry/fitup/distance/core';
import type { Piece } from '../../../geometry/fitup/pieces';
import { roundSolid } from '../../../geometry/fitup/shapes/solids';
import { gapBetween } from '../../../geometry/fitup/shapes/gapBetween';
import { assembleCar } from '../../../geometry/setup/assembleCar';
import { answerStudy } from '../../../geometry/studies/study';
import type { PartDocument } from '../../../geometry/car/fitUpDocument';
import { drawFrom } from '../../laws/draw';
import { fitted } from './envelopes';
import { sample } from './loadedCars';

/** A car with parts, read as a file would be. */
function withParts(document: CarDocument, parts: Readonly<Record<string, PartDocument>>): CarDocument {
  const parsed = parseCar(JSON.stringify({ ...document, parts }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  return parsed.value.document;
}

function answerOf(
  document: CarDocument,
  axles: readonly AxleName[] = ['front', 'rear'],
  sides: readonly SideName[] = ['left', 'right'],
  names: readonly string[] = Object.keys(document.setups ?? { Baseline: {} }),
): ClearanceAnswer {
  const setups = names.map((name) => [name, findSetup(document, name)] as const);
  const answered = answerStudy(clearanceStudy(toMechanism(document), { axles, sides, setups }));
  if (!answered.ok) throw new Error(answered.failure.message);
  return answered.value;
}

/** The pair of a row again, in every setup asked for, as the search was given it. */
function fieldsOf(
  document: CarDocument,
  { pair, axle, side }: ClearanceRow,
  names = Object.keys(document.setups ?? { Baseline: {} }),
): PairField[] {
  const mechanism = toMechanism(document);
  return names.flatMap((name) => {
    const car = assembleCar(mechanism, findSetup(document, name));
    if (!car.ok) throw new Error(car.failure.message);
    return fitUpCorners([{ name, car: car.value }], [axle])
      .filter((corner) => corner.side.mechanism.side === side)
      .map((corner) => fieldOf(mechanism, withPieces(mechanism, corner, corner.envelope!, new Map()), pair)!);
  });
}

/** The least over a dense grid of travel and rack, every position solved by itself and every distance worked out: nothing is left out. */
function byBruteForce(fields: readonly PairField[], travelStep: number, rackStep: number): number {
  let least = Infinity;
  const [a, b, relative] = [atDesign(), atDesign(), atDesign()];
  for (const { side, envelope, first, second, solids, counts } of fields) {
    const { travels, racks } = envelope;
    const rackCount = racks.length === 1 ? 0 : Math.ceil((envelope.rackMax - envelope.rackMin) / rackStep);
    const travelCount = Math.ceil((envelope.solid - envelope.open) / travelStep);
    for (let c = 0; c <= rackCount; c++) {
      const rack = rackCount === 0 ? racks[0] : envelope.rackMin + ((envelope.rackMax - envelope.rackMin) * c) / rackCount;
      const column = rackCount === 0 ? 0 : Math.round((c / rackCount) * (racks.length - 1));
      const track = trackAt(envelope, Math.floor(travels.length / 2), column);
      const middle = travels[Math.floor(travels.length / 2)];
      for (const end of [envelope.open, envelope.solid]) {
        const there = { ...track, motion: track.motion.slice(), travel: middle };
        const steps = Math.max(1, Math.round((travelCount * Math.abs(end - middle)) / (envelope.solid - envelope.open)));
        for (let i = 0; i <= steps; i++) {
          if (trackCorner(side.corner, there, middle + ((end - middle) * i) / steps, rack) !== SOLVED) break;
          if (!first.follow(there.motion, rack, a) || !second.follow(there.motion, rack, b)) continue;
          writeRelative(a, b, relative);
          const gap = gapBetween(solids[0], solids[1], relative);
          if (counts(gap) && gap.distance < least) least = gap.distance;
        }
      }
    }
  }
  return least;
}

/** Parts of all simple shapes on several carriers, at random places around the wheel. */
function anyParts(seed: number, axle: AxleName, wheelCentre: readonly [number, number, number]): Record<string, PartDocument> {
  const draw = drawFrom(seed);
  const near = (by: number): [number, number, number] => [
    wheelCentre[0] + draw.between(-by, by),
    wheelCentre[1] - draw.between(30, 260),
    wheelCentre[2] + draw.between(-by, by),
  ];
  return {
    ball: { axle, on: 'knuckle', shape: { kind: 'sphere', at: near(150), radius: draw.between(5, 40) } },
    duct: { axle, on: 'body', shape: { kind: 'capsule', from: near(250), to: near(250), radius: draw.between(10, 40) } },
    block: {
      axle,
      on: 'body',
      shape: { kind: 'box', centre: near(300), size: [draw.between(20, 90), draw.between(20, 90), draw.between(20, 90)] },
    },
    can: { axle, on: 'knuckle', shape: { kind: 'cylinder', from: near(150), to: near(150), radius: draw.between(10, 40) } },
  };
}

const CENTRES: Readonly<Record<AxleName, (document: CarDocument) => readonly [number, number, number]>> = {
  front: (document) => document.front!.points['wheelCentre'] as [number, number, number],
  rear: (document) => document.rear!.points['wheelCentre'] as [number, number, number],
};

describe('the least clearance over an envelope', () => {
  it.each([
    ['front', 'left', 31],
    ['front', 'right', 32],
    ['rear', 'left', 33],
    ['rear', 'right', 34],
    ['front', 'left', 35],
    ['rear', 'right', 36],
  ] as const)(
    'is that of a dense grid of positions: %s %s, parts %i',
    (axle, side, seed) => {
      const plain = sample('saltmarsh-hatch');
      const document = withParts(plain, anyParts(seed, axle, CENTRES[axle](plain)));
      const { rows } = answerOf(document, [axle], [side]);
      const own = rows.filter(({ pair }) => pair.every((name) => ['ball', 'duct', 'block', 'can'].includes(name)));
      expect(own.length).toBeGreaterThan(2);
      for (const row of own) {
        const dense = byBruteForce(fieldsOf(document, row), 2, 4);
        expect(row.clearance, row.pair.join(' – ')).toBeLessThan(dense + 0.05);
        // the search looks between the positions of the grid: it finds less, by no more than lies between two of them
        expect(row.clearance, row.pair.join(' – ')).toBeGreaterThan(dense - 0.6);
        expect(row.clearance - row.bound).toBeLessThan(dense + 1e-9);
      }
    },
    120_000,
  );

  it.each(['car-21', 'car-22', 'car-23', 'car-24'])(
    'of cars with points of their own on the right and racks off the middle: %s',
    (name) => {
      const plain = fitted(name);
      const document = withParts(plain, anyParts(51, 'front', CENTRES.front(plain)));
      const { rows } = answerOf(document, ['front']);
      for (const row of rows.slice(0, 8)) {
        const dense = byBruteForce(fieldsOf(document, row), 3, 5);
        expect(row.clearance, row.pair.join(' – ')).toBeLessThan(dense + 0.05);
        expect(row.clearance, row.pair.join(' – ')).toBeGreaterThan(dense - 2.5);
      }
    },
    120_000,
  );

  it.each([
    ['car-21', 'front', 'left', 71],
    ['car-22', 'front', 'right', 72],
    ['car-23', 'rear', 'left', 73],
    ['car-24', 'front', 'right', 74],
    ['car-24', 'rear', 'right', 75],
  ] as const)(
    'is that of a grid of a quarter millimetre of travel by half a millimetre of rack, to 0.05 mm: %s %s %s',
    (name, axle, side, seed) => {
      const plain = fitted(name);
      const [setup] = Object.keys(plain.setups ?? { Baseline: {} });
      const document = withParts(plain, anyParts(seed, axle, CENTRES[axle](plain)));
      const { rows } = answerOf(document, [axle], [side], [setup]);
      const simple = rows.filter(({ pair }) => pair.every((piece) => ['ball', 'duct', 'block', 'can'].includes(piece)));
      expect(simple.length).toBeGreaterThan(2);
      for (const row of simple) {
        const dense = byBruteForce(fieldsOf(document, row, [setup]), 0.25, 0.5);
        expect(row.clearance, row.pair.join(' – ')).toBeLessThan(dense + 0.05);
        expect(row.clearance, row.pair.join(' – ')).toBeGreaterThan(dense - 0.05);
        expect(row.clearance - row.bound).toBeLessThan(dense + 1e-9);
      }
    },
    120_000,
  );

  it('lies between the two points that are given with it', () => {
    const plain = sample('saltmarsh-hatch');
    const document = withParts(plain, anyParts(61, 'front', CENTRES.front(plain)));
    const { rows } = answerOf(document, ['front']);
    for (const { points, clearance, cuts } of rows) {
      if (cuts) continue;
      expect(distance(points[0], points[1])).toBeCloseTo(clearance, 6);
    }
  });
});

describe('both sides of a symmetric axle', () => {
  const plain = sample('saltmarsh-hatch');
  const symmetric = { ...plain, setups: { Baseline: {} }, onCar: 'Baseline', questions: undefined } as CarDocument;
  const twin = withParts(symmetric, anyParts(61, 'front', CENTRES.front(plain)));
  const of = (rows: readonly ClearanceRow[], side: SideName, pair: readonly string[]): ClearanceRow | undefined =>
    rows.find((row) => row.side === side && row.pair.join() === pair.join());

  it.each(['front', 'rear'] as const)('are what a search of each of them finds: %s', (axle) => {
    const document = withParts(twin, anyParts(62, axle, CENTRES[axle](plain)));
    const { rows } = answerOf(document, [axle]);
    const alone = { left: answerOf(document, [axle], ['left']).rows, right: answerOf(document, [axle], ['right']).rows };
    expect(rows).toHaveLength(alone.left.length + alone.right.length);
    for (const row of rows) {
      const own = of(alone[row.side], row.side, row.pair)!;
      expect(row.needs).toBe(own.needs);
      expect(row.verdict, row.pair.join(' – ')).toBe(own.verdict);
      expect(Math.abs(row.clearance - own.clearance), row.pair.join(' – ')).toBeLessThan(0.05);
      // what clears the one clears the other, by the same stop of its own rack end
      expect(row.wouldClear.map(({ by, adjuster }) => [by, adjuster])).toEqual(
        own.wouldClear.map(({ by, adjuster }) => [by, adjuster]),
      );
      row.wouldClear.forEach((remedy, i) => {
        const same = own.wouldClear[i];
        if (remedy.by === 'adjuster') expect(remedy.to).toBe(same.to);
        else expect(Math.abs(remedy.to - same.to), remedy.by).toBeLessThanOrEqual(0.5);
        expect(Object.keys(remedy.changes)).toEqual(Object.keys(same.changes));
        for (const [name, change] of Object.entries(remedy.changes))
          if (remedy.to === same.to) expect(change, name).toBeCloseTo(same.changes[name]!, 6);
      });
    }
  });

  it('are each searched where a setting, a point or the rack differs', () => {
    const setups = { Baseline: { front: { left: { plateAcross: -6 }, right: { plateAcross: 6 } } } };
    const apart = withParts({ ...twin, setups } as CarDocument, anyParts(61, 'front', CENTRES.front(plain)));
    const { rows } = answerOf(apart, ['front']);
    const right = answerOf(apart, ['front'], ['right']).rows;
    let differ = 0;
    for (const row of rows.filter(({ side }) => side === 'right')) {
      expect(row.clearance).toBe(of(right, 'right', row.pair)!.clearance);
      if (Math.abs(row.clearance - (of(rows, 'left', row.pair)?.clearance ?? row.clearance)) > 0.5) differ += 1;
    }
    expect(differ).toBeGreaterThan(0);
    const front = { ...twin.front!, steering: { ...twin.front!.steering!, travel: [-70, 60] as const } };
    const offCentre = withParts({ ...twin, front } as CarDocument, anyParts(61, 'front', CENTRES.front(plain)));
    const skewed = answerOf(offCentre, ['front']).rows;
    for (const row of skewed) expect(row.at.rack).toBeGreaterThanOrEqual(-70);
    for (const row of skewed) expect(row.at.rack).toBeLessThanOrEqual(60);
  });
});

describe('verdicts and margins', () => {
  const plain = sample('saltmarsh-hatch');
  const [x, y, z] = CENTRES.front(plain);
  const ball = (offset: number, more: object = {}, inboard = 400): Record<string, PartDocument> => ({
    fixed: { axle: 'front', on: 'body', shape: { kind: 'sphere', at: [x, y - inboard, z + offset], radius: 10 }, ...more },
    moving: { axle: 'front', on: 'knuckle', shape: { kind: 'sphere', at: [x, y - 60, z], radius: 10 } },
  });
  const of = (document: CarDocument): ClearanceRow =>
    answerOf(document, ['front'], ['left'], ['Baseline']).rows.find(({ pair }) => pair[0] === 'fixed' && pair[1] === 'moving')!;

  it('a margin of the part comes before that of its kind, and that before the default', () => {
    const bare = withParts(plain, ball(0));
    expect(of(bare).needs).toBe(plain.margins?.['default'] ?? 8);
    const byKind = withParts({ ...plain, margins: { ...plain.margins, hose: 21 } }, ball(0, { kind: 'hose' }));
    expect(of(byKind).needs).toBe(21);
    expect(of(withParts(plain, ball(0, { margin: 33 }))).needs).toBe(33);
  });

  it('parts on one carrier, and those that are said to touch, are no pair', () => {
    const parts: Record<string, PartDocument> = {
      ...ball(0),
      mate: { axle: 'front', on: 'knuckle', shape: { kind: 'sphere', at: [x, y - 60, z], radius: 12 }, touches: ['fixed'] },
    };
    const { rows } = answerOf(withParts(plain, parts), ['front'], ['left'], ['Baseline']);
    const pairs = rows.map(({ pair }) => pair.join(' '));
    expect(pairs).toContain('fixed moving');
    expect(pairs).not.toContain('moving mate');
    expect(pairs).not.toContain('fixed mate');
  });

  it('is mirrored to the other side, but for a part of one side only', () => {
    const own = answerOf(withParts(plain, ball(0)), ['front'], ['left', 'right'], ['Baseline']).rows;
    const [left, right] = (['left', 'right'] as const).map((name) =>
      own.find(({ pair, side }) => side === name && pair[0] === 'fixed' && pair[1] === 'moving'),
    );
    expect(left!.clearance).toBeCloseTo(right!.clearance, 1);
    expect(left!.points[0][1]).toBeGreaterThan(0);
    expect(right!.points[0][1]).toBeLessThan(0);
    const only: Record<string, PartDocument> = Object.fromEntries(
      Object.entries(ball(0)).map(([name, part]) => [name, name === 'moving' ? { ...part, only: true, side: 'right' } : part]),
    );
    const one = answerOf(withParts(plain, only), ['front'], ['left', 'right'], ['Baseline']).rows;
    const sides = one.filter(({ pair }) => pair.includes('moving') && pair.includes('fixed')).map(({ side }) => side);
    expect(sides).toEqual(['right']);
  });

  it('what would clear it does, and is on a real step or a half millimetre of a stop', () => {
    // above the middle, so that the least is in bump
    const near = of(withParts(plain, ball(150, {}, 90)));
    const document = withParts(plain, ball(150, { margin: near.clearance + 5 }, 90));
    const row = of(document);
    expect(row.verdict).toBe('short');
    expect(row.wouldClear.length).toBeGreaterThan(0);
    for (const remedy of row.wouldClear) {
      expect(remedy.clearance).toBeGreaterThanOrEqual(row.needs);
      if (remedy.by !== 'adjuster') {
        expect(Number.isInteger(2 * remedy.to)).toBe(true);
        continue;
      }
      const setups = { ...document.setups };
      const baseline = setups['Baseline'] ?? {};
      const changed = {
        ...document,
        setups: {
          ...setups,
          Baseline: {
            ...baseline,
            front: { ...baseline.front, both: { ...baseline.front?.both, [remedy.adjuster!]: remedy.to } },
          },
        },
      } as CarDocument;
      expect(of(changed).clearance).toBeCloseTo(remedy.clearance, 1);
    }
  });

  it('a cam at its end is turned back no farther than it has to be: the next mark towards it does not clear', () => {
    // at 90° a mark more or less moves the bolt by next to nothing; in the middle it moves most
    const hatch = sample('saltmarsh-hatch');
    const parts = { tyre: hatch.parts!['tyreFront'] };
    const stood = (clampBolt: number): CarDocument => {
      const sprint = hatch.setups!['Sprint'];
      const front = { ...sprint.front, both: { ...sprint.front?.both, clampBolt } };
      return withParts(
        { ...hatch, questions: undefined, onCar: undefined, setups: { Steep: { ...sprint, front } } } as CarDocument,
        parts,
      );
    };
    const tube = (document: CarDocument): ClearanceRow =>
      answerOf(document, ['front'], ['right'], ['Steep']).rows.find(({ pair }) => pair.join() === 'tyre,strutTube')!;
    const row = tube(stood(90));
    const remedy = row.wouldClear.find(({ adjuster }) => adjuster === 'clampBolt')!;
    const { mark } = hatch.front!.adjusters!['clampBolt'] as { readonly mark: number };
    expect(tube(stood(remedy.to)).clearance).toBeGreaterThanOrEqual(row.needs);
    expect(tube(stood(remedy.to + mark)).clearance).toBeLessThan(row.needs);
  });

  it('says what a part lacks, and what an axle has no end of', () => {
    const { wheel, ...front } = plain.front!;
    const bare = { ...plain, front: { ...front, wheel: { ...wheel, tyreWidth: undefined } } } as CarDocument;
    const document = withParts(bare, { tread: { axle: 'front', on: 'wheel', shape: { kind: 'tyre' } } });
    expect(answerOf(document, ['front'], ['left'], ['Baseline']).missing.join()).toContain('tyreWidth');
  });
});

describe('a worst position between those of the grid', () => {
  /** A tip on a radius of 300 mm that the travel of a wheel swings from −90° to 90°, past a point 325 mm out in 16.26°. */
  it('is found: a tip that swings past a point', () => {
    const document = sample('saltmarsh-hatch');
    const mechanism = toMechanism(document);
    const car = assembleCar(mechanism, findSetup(document, 'Baseline'));
    if (!car.ok) throw new Error(car.failure.message);
    const corner = fitUpCorners([{ name: 'Baseline', car: car.value }], ['rear'])[0];
    const { side } = corner;
    const envelope = corner.envelope!;
    const swung = ({ [CENTRE + 2]: height }: Float64Array): number =>
      -90 + (180 * (height - side.corner.home[CENTRE + 2] - envelope.open)) / (envelope.solid - envelope.open);
    const piece = (name: string, at: Vector, follow: Follow): Piece => ({
      name,
      carrier: name,
      body: name,
      follow,
      solid: roundSolid([pointCore(at)], 0),
      kind: null,
      margin: null,
      touches: [],
      part: null,
    });
    const obstacle = piece('obstacle', [312, 91, 0], (_motion, _rack, out) => {
      out.set(atDesign());
      return true;
    });
    const tip = piece('tip', [300, 0, 0], (motion, _rack, out) => {
      writeTurn([0, 0, 1], (swung(motion) * Math.PI) / 180, out);
      out.fill(0, 9);
      return true;
    });
    const field = { side, envelope, placements: new GridPlacements(envelope), first: obstacle, second: tip };
    const worst = findWorst([{ ...field, solids: [obstacle.solid, tip.solid], counts: () => true }], 20)!;
    // 325 − 300 where the tip points at it; a grid of 9° alone says 25.3 at best
    expect(worst.gap.distance).toBeGreaterThanOrEqual(25 - 1e-9);
    expect(worst.gap.distance).toBeLessThan(25.05);
    expect(worst.gap.distance - worst.bound).toBeLessThanOrEqual(25);
    const angle = -90 + (180 * (worst.travel - envelope.open)) / (envelope.solid - envelope.open);
    expect(Math.abs(angle - 16.260204708)).toBeLessThan(1);
  });
});
