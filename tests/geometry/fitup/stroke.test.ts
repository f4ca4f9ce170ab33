import { describe, expect, it } from 'vitest';
import {
  placeAxle,
  readingsOfAxle,
  toDegrees,
  toRadians,
  type AssembledCar,
  type AxleName,
  type CornerReadings,
  type SideName,
  type Vector,
} from '../../../geometry/index';
import type { CarDocument } from '../../../geometry/car/document';
import { distance, dot, mirror, subtract, unit } from '../../../geometry/core/vector';
import { fitUpCorners } from '../../../geometry/fitup/corners';
import { envelopeOf } from '../../../geometry/fitup/envelope';
import { shaftBetween } from '../../../geometry/fitup/stroke/shaft';
import { strokeRows, type StrokeRow } from '../../../geometry/fitup/stroke/stroke';
import { inInches } from '../../golden/inInches';
import { AXLES, fitted, SIDES } from './envelopes';
import { sample, stand } from './loadedCars';

const strokes = (
  document: CarDocument,
  setups = Object.keys(document.setups ?? { Baseline: {} }),
): [AssembledCar, StrokeRow[]][] =>
  setups.map((name) => {
    const car = stand(document, name);
    return [car, strokeRows(fitUpCorners([{ name, car }], AXLES))];
  });

/** Readings of one wheel at a travel from design, the other wheel where it stands or at its own travel. */
function at(car: AssembledCar, axle: AxleName, side: SideName, travel: number, rack = 0, other?: number): CornerReadings {
  const { standing } = car[axle]!;
  const both = { left: other ?? travel, right: other ?? travel, [side]: travel };
  const row = readingsOfAxle(car, axle, {
    travel: { left: both.left - standing.left, right: both.right - standing.right },
    rack: car[axle]!.mechanism.steering === null ? 0 : rack,
  });
  if (!row.ok) throw new Error(row.failure.message);
  return row.value[side];
}

const CARS: [string, CarDocument][] = [
  ...['saltmarsh-hatch', 'marram-coupe', 'chalkboard'].map((name): [string, CarDocument] => [name, sample(name)]),
  ...['car-22', 'car-23', 'car-24'].map((name): [string, CarDocument] => [name, fitted(name)]),
];

describe.each(CARS)('%s', (_name, document) => {
  const answered = strokes(document);

  it('has a row for each wheel of each setup', () => {
    for (const [, rows] of answered)
      expect(rows.map(({ axle, side }) => `${axle} ${side}`)).toEqual(['front left', 'front right', 'rear left', 'rear right']);
  });

  it('what is left of the damper is what the readings say where the car stands', () => {
    for (const [car, rows] of answered)
      for (const row of rows) {
        const standing = car[row.axle]!.standing[row.side];
        expect(row.standing).toBe(standing);
        const there = at(car, row.axle, row.side, standing, 0, car[row.axle]!.standing[row.side === 'left' ? 'right' : 'left']);
        for (const key of ['bumpLeft', 'solidLeft', 'droopLeft'] as const) {
          if (there[key] === null) expect(row.why[key], `${row.axle} ${key}`).toBeTypeOf('string');
          if (there[key] === null) expect(row[key]).toBeNull();
          else expect(row[key]).toBeCloseTo(there[key], 9);
        }
      }
  });

  it('the bar is twisted as the readings say there, and nowhere more', () => {
    for (const [car, rows] of answered)
      for (const row of rows) {
        if (car[row.axle]!.mechanism.bar === null) {
          expect(row.barTwist).toBeNull();
          expect(row.why['barTwist']).toContain('no anti-roll bar');
          continue;
        }
        const { least, greatest, at: places } = row.barTwist!;
        const twist = (place: { travel: number; other: number; rack: number }): number | null =>
          at(car, row.axle, row.side, place.travel, place.rack, place.other).barTwist;
        expect(twist(places.greatest)).toBeCloseTo(greatest, 8);
        expect(twist(places.least)).toBeCloseTo(least, 8);
        expect(greatest).toBeGreaterThan(0);
        expect(least).toBeLessThan(0);
        const ends = (side: SideName): readonly number[] => {
          const envelope = envelopeOf(car[row.axle]!.mechanism, row.setup, car[row.axle]![side]);
          if ('missing' in envelope) throw new Error(envelope.missing);
          const { open, solid } = envelope;
          return [open, 0.4 * open, 0.6 * solid, solid];
        };
        const [minRack, maxRack] = car[row.axle]!.mechanism.steering?.travel ?? [0, 0];
        for (const travel of ends(row.side))
          for (const other of ends(row.side === 'left' ? 'right' : 'left'))
            for (const rack of [minRack, 0.37 * maxRack, maxRack]) {
              let there: number | null = null;
              try {
                there = twist({ travel, other, rack });
              } catch {
                // past the links
              }
              if (there === null) continue;
              expect(there).toBeLessThanOrEqual(greatest + 1e-9);
              expect(there).toBeGreaterThanOrEqual(least - 1e-9);
            }
      }
  });
});

describe('where a spring comes loose and where it binds', () => {
  const hatch = (spring: object, setup: object = {}): [AssembledCar, StrokeRow] => {
    const { questions: _, onCar: __, limits: ___, ...document } = sample('saltmarsh-hatch');
    const front = { ...document.front!, spring: { ...document.front!.spring!, ...spring } };
    const [[car, rows]] = strokes({ ...document, front, setups: { One: { front: setup } } });
    return [car, rows[0]];
  };

  it('its force ends there', () => {
    for (const setup of [{}, { both: { perch: 2 } }, { rideHeight: -10, both: { perch: -3 } }]) {
      const [car, row] = hatch({ helper: undefined, freeLength: 210, installed: 175 }, setup);
      expect(row.looseAt).toBeLessThan(-25);
      expect(at(car, 'front', 'left', row.looseAt! - 1e-6).springForce).toBe(0);
      const above = at(car, 'front', 'left', row.looseAt! + 1e-6).springForce!;
      expect(above).toBeGreaterThan(0);
      expect(above).toBeLessThan(0.001);
    }
  });

  it('a helper holds it longer', () => {
    const [car, row] = hatch({ freeLength: 200, installed: 175, helper: { rate: 8, freeLength: 60, solidLength: 20 } });
    // 25 + 60 mm and the envelope ends before it
    expect(row.looseAt).toBeNull();
    expect(row.why['looseAt']).toContain('left with the damper open');
    const [, shorter] = hatch({ freeLength: 200, installed: 200, helper: { rate: 8, freeLength: 60, solidLength: 20 } });
    expect(at(car, 'front', 'left', shorter.looseAt!).springTravel).toBeCloseTo(-60, 7);
  });

  it('coils touch where installed − travel − perch is the solid length, with a solid helper in it', () => {
    const [car, row] = hatch(
      { installed: 175, solidLength: 90, helper: { rate: 8, freeLength: 60, solidLength: 18 } },
      { both: { perch: 4 } },
    );
    const { springTravel } = at(car, 'front', 'left', row.bindAt!);
    expect(175 - springTravel! - 4 * 1.5).toBeCloseTo(108, 7);
    const [, free] = hatch({ solidLength: 40 });
    expect(free.bindAt).toBeNull();
    expect(free.why['bindAt']).toContain('left with the damper solid');
  });

  it('is null with what is missing', () => {
    const [, row] = hatch({ installed: undefined, freeLength: undefined, solidLength: undefined });
    expect(row.bindAt).toBeNull();
    expect(row.why['bindAt']).toContain('front.spring');
    expect(row.isByWeight).toBe(true);
    const { spring: _, ...front } = sample('chalkboard').front!;
    const [[, [none]]] = strokes({ ...sample('chalkboard'), front }, ['As drawn']);
    expect(none.looseAt).toBeNull();
    expect(none.why['looseAt']).toBe('the file gives no spring');
  });

  it('a spring known by the weight that it carries ends where its force does', () => {
    const { questions: _, onCar: __, ...document } = sample('marram-coupe');
    const front = { ...document.front!, spring: { ...document.front!.spring!, rate: 130, rates: [130] } };
    const setups = { One: {} };
    const [[car, rows]] = strokes({ ...document, front, setups });
    const row = rows[0];
    expect(row.isByWeight).toBe(true);
    if (row.looseAt === null) expect(at(car, 'front', 'left', -60).springForce).toBeGreaterThan(0);
    else {
      expect(at(car, 'front', 'left', row.looseAt + 1e-6).springForce).toBeGreaterThan(0);
      expect(at(car, 'front', 'left', row.looseAt - 1e-6).springForce).toBe(0);
    }
  });
});

describe('the drive shaft', () => {
  // D38: exact
  it.each([
    [[0, 600, 300], 450, 0],
    [[0, 600, 360], 453.982378513, 7.594643369],
    [[0, 590, 240], 444.072066223, 7.765166018],
    [[40, 600, 300], 451.774279923, 5.07960786],
    [[0, 570, 390], 429.534631898, 12.094757077],
  ] as [Vector, number, number][])('outer joint at %j: %d mm, %d°', (outer, size, angle) => {
    const state = shaftBetween([0, 150, 300], outer, [0, 1, 0], [0, 1, 0], 450);
    expect(450 + state.plunge).toBeCloseTo(size, 8);
    expect(toDegrees(state.inner!)).toBeCloseTo(angle, 8);
    expect(toDegrees(state.outer)).toBeCloseTo(angle, 8);
    // whichever way the axis points
    expect(shaftBetween([0, 150, 300], outer, [0, -1, 0], [0, 1, 0], 450).inner).toBeCloseTo(state.inner!, 12);
  });

  /** Length and angles of the hatch's shaft in the picture of a position. */
  function drawn(car: AssembledCar, side: SideName, travel: number, rack: number) {
    const { standing } = car.front!;
    const answer = placeAxle(car, 'front', { travel: { left: travel - standing.left, right: travel - standing.right }, rack });
    if (!answer.ok) throw new Error(answer.failure.message);
    const { inner, outer } = car.mechanism.document.front!.driveShaft!;
    const turn = side === 'left' ? (v: Vector): Vector => v : mirror;
    const { wheelCentre, rotation: r, spindle } = answer.value[side];
    const arm = subtract(turn(outer), turn(car.mechanism.document.front!.points['wheelCentre']));
    const end = [0, 3, 6].map(
      (row, i) => wheelCentre[i] + r[row] * arm[0] + r[row + 1] * arm[1] + r[row + 2] * arm[2],
    ) as unknown as Vector;
    const line = subtract(end, turn(inner));
    const angle = (axis: Vector): number => Math.acos(Math.abs(dot(unit(line), axis)));
    return {
      plunge: distance(end, turn(inner)) - distance(outer, inner),
      angleInner: angle([0, 1, 0]),
      angleOuter: angle(spindle),
    };
  }

  it.each(['Baseline', 'Sprint', 'Trial 3'])('%s: as in the picture, and nowhere more', (setup) => {
    const [[car, rows]] = strokes(sample('saltmarsh-hatch'), [setup]);
    for (const side of SIDES) {
      const { shaft } = rows.find((row) => row.axle === 'front' && row.side === side)!;
      const { at: places, allowed } = shaft!;
      expect(allowed).toEqual({ plungeIn: 25, plungeOut: 25, angleInner: toRadians(23), angleOuter: toRadians(47) });
      expect(drawn(car, side, places.plungeIn!.travel, places.plungeIn!.rack).plunge).toBeCloseTo(-shaft!.plungeIn, 8);
      if (places.plungeOut !== null)
        expect(drawn(car, side, places.plungeOut.travel, places.plungeOut.rack).plunge).toBeCloseTo(shaft!.plungeOut, 8);
      else expect(shaft!.plungeOut).toBe(0);
      expect(drawn(car, side, places.angleInner!.travel, places.angleInner!.rack).angleInner).toBeCloseTo(shaft!.angleInner!, 8);
      expect(drawn(car, side, places.angleOuter!.travel, places.angleOuter!.rack).angleOuter).toBeCloseTo(shaft!.angleOuter, 8);
      for (const travel of [-62, -31, 0, 27, 55, 71])
        for (const rack of [-70, -41, 0, 13, 62, 70]) {
          const there = drawn(car, side, travel, rack);
          expect(there.plunge).toBeGreaterThanOrEqual(-shaft!.plungeIn - 1e-9);
          expect(there.plunge).toBeLessThanOrEqual(shaft!.plungeOut + 1e-9);
          expect(there.angleInner).toBeLessThanOrEqual(shaft!.angleInner! + 1e-9);
          expect(there.angleOuter).toBeLessThanOrEqual(shaft!.angleOuter + 1e-9);
        }
    }
    // steered, the outer joint bends by about the steer angle
    expect(toDegrees(rows[0].shaft!.angleOuter)).toBeGreaterThan(25);
  });

  it('without an axis of the inner joint its angle is not known; a rear axle without a shaft has none', () => {
    const document = sample('saltmarsh-hatch');
    const { innerAxis: _, plunge: __, ...driveShaft } = document.front!.driveShaft!;
    const [[, rows]] = strokes({ ...document, front: { ...document.front!, driveShaft } }, ['Baseline']);
    expect(rows[0].shaft).toMatchObject({ angleInner: null, allowed: { plungeIn: null, plungeOut: null } });
    expect(rows[0].why['shaft.angleInner']).toContain('innerAxis');
    expect(rows[2].shaft).toBeNull();
    expect(rows[2].why['shaft']).toContain('no rear.driveShaft');
  });
});

describe('spans', () => {
  // the lower arm of the teaching car is a hinge of 350 mm about x at y 350, z 200
  it('a hose from the body to an arm that swings as a hinge is as long as the law of cosines says', () => {
    const hose = {
      axle: 'front' as const,
      from: [0, 400, 380] as const,
      fromOn: 'body',
      to: [0, 600, 210] as const,
      toOn: 'lowerFront',
      length: 300,
    };
    const document = { ...sample('chalkboard'), spans: { brakeHose: hose } };
    const [[car, rows]] = strokes(document, ['As drawn']);
    for (const row of rows.slice(0, 2)) {
      const span = row.spans['brakeHose']!;
      // from the pivot: 50 out and 180 up to the one end, 250 out and 10 up to the other
      const [a, b] = [Math.hypot(50, 180), Math.hypot(250, 10)];
      const between = Math.atan2(180, 50) - Math.atan2(10, 250);
      const by = ({ travel, rack }: { travel: number; rack: number }): number => {
        const answer = placeAxle(car, 'front', { travel, rack });
        if (!answer.ok) throw new Error(answer.failure.message);
        const swing = Math.asin((answer.value[row.side].points['lowerBall'][2] - 200) / 350);
        return Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(between - swing));
      };
      expect(span.greatest).toBeCloseTo(by(span.at.greatest), 8);
      expect(span.least).toBeCloseTo(by(span.at.least), 8);
      // longest hanging, shortest in bump
      expect(span.at.greatest.travel).toBeLessThan(-60);
      expect(span.at.least.travel).toBeGreaterThan(45);
      expect(span.spare).toBeCloseTo(300 - span.greatest, 12);
    }
    expect(rows[2].spans).toEqual({});
  });

  it('a point by its name goes where its adjuster takes it; given for the right side, it is mirrored', () => {
    const { questions: _, onCar: __, limits: ___, ...document } = sample('saltmarsh-hatch');
    const named = {
      axle: 'front' as const,
      from: 'strutTop',
      fromOn: 'body',
      to: [100, 500, 600] as const,
      toOn: 'body',
      length: 300,
    };
    const right = { ...named, side: 'right' as const, to: [100, -500, 600] as const };
    const setups = { One: {}, Out: { front: { both: { plateAcross: -10 } } } };
    const all = strokes({ ...document, setups, spans: { named, right } });
    const top = (y: number): number => distance([-38, y, 830], [100, 500, 600]);
    for (const name of ['named', 'right'])
      for (const side of [0, 1]) {
        expect(all[0][1][side].spans[name]!.greatest).toBeCloseTo(top(577), 9);
        expect(all[1][1][side].spans[name]!.greatest).toBeCloseTo(top(567), 9);
        expect(all[1][1][side].spans[name]!.least).toBeCloseTo(top(567), 9);
      }
  });

  it('between knuckle and body over travel and lock: nowhere longer or shorter than said', () => {
    const hose = {
      axle: 'front' as const,
      from: [-60, 480, 420] as const,
      fromOn: 'body',
      to: [-90, 690, 330] as const,
      toOn: 'knuckle',
      length: 420,
    };
    const document = { ...fitted('car-23'), spans: { hose } };
    const [[car, rows]] = strokes(document, ['Baseline']);
    for (const side of SIDES) {
      const span = rows.find((row) => row.axle === 'front' && row.side === side)!.spans['hose']!;
      const long = (travel: number, rack: number): number => {
        const { standing } = car.front!;
        const answer = placeAxle(car, 'front', {
          travel: { left: travel - standing.left, right: travel - standing.right },
          rack,
        });
        if (!answer.ok) return NaN;
        const turn = side === 'left' ? (v: Vector): Vector => v : mirror;
        const { wheelCentre, rotation: r } = answer.value[side];
        // the knuckle's own centre, which a spacer moves: car-23's baseline has none
        const centre = turn(car.front!.mechanism[side].points['wheelCentre']);
        const arm = subtract(turn(hose.to), centre);
        const end = [0, 3, 6].map((row, i) => wheelCentre[i] + r[row] * arm[0] + r[row + 1] * arm[1] + r[row + 2] * arm[2]);
        return distance(end as unknown as Vector, turn(hose.from));
      };
      expect(long(span.at.greatest.travel, span.at.greatest.rack)).toBeCloseTo(span.greatest, 7);
      expect(long(span.at.least.travel, span.at.least.rack)).toBeCloseTo(span.least, 7);
      for (const travel of [-50, -20, 0, 25, 45])
        for (const rack of [-48, -20, 7, 51]) {
          const there = long(travel, rack);
          if (Number.isNaN(there)) continue;
          expect(there).toBeLessThanOrEqual(span.greatest + 1e-8);
          expect(there).toBeGreaterThanOrEqual(span.least - 1e-8);
        }
    }
  });
});

it('a car in inches has the same', () => {
  const { parts: _, joints: __, spans: ___, loads: ____, questions: _____, ...document } = fitted('car-23');
  const [mm, inch] = [document, inInches(document)].map((one) => strokes(one, ['Baseline'])[0][1]);
  mm.forEach((row, i) => {
    for (const key of ['bumpLeft', 'solidLeft', 'droopLeft'] as const) {
      if (row[key] === null) expect(inch[i][key]).toBeNull();
      else expect(inch[i][key]).toBeCloseTo(row[key], 7);
    }
    expect(inch[i].barTwist?.greatest).toBeCloseTo(row.barTwist!.greatest, 8);
  });
});

it('without ends of travel what needs them is null, with what is missing, and the rest is there', () => {
  const document = sample('chalkboard');
  const { damper: _, ...front } = document.front!;
  const [[, [row]]] = strokes({ ...document, front }, ['As drawn']);
  expect(row).toMatchObject({ bumpLeft: null, solidLeft: null, droopLeft: null, looseAt: null, bindAt: null, barTwist: null });
  expect(row.why['solidLeft']).toBe('the file gives no damper');
  expect(row.why['barTwist']).toContain('front.damper');
  expect(row.why['looseAt']).toContain('front.damper');
});
