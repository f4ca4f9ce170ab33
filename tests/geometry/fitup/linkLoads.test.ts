import { describe, expect, it } from 'vitest';
import { toRadians, type AssembledCar, type AxleName, type Position, type SideName, type Vector } from '../../../geometry/index';
import { add, cross, dot, length, scale, subtract, unit } from '../../../geometry/core/vector';
import type { CarDocument } from '../../../geometry/car/document';
import { loadCaseOfG, loadCases } from '../../../geometry/fitup/loads/loadCase';
import type { LinkEnd } from '../../../geometry/fitup/loads/linkRow';
import { goldenDocument } from '../../golden/goldenCars';
import { inInches } from '../../golden/inInches';
import { answerOf, carriedOf, caseOf, forces, golden, loadsOf, placed, rowOf, sample, stand } from './loadedCars';
import { statics } from './statics';

const AXLES: readonly AxleName[] = ['front', 'rear'];
const SIDES: readonly SideName[] = ['left', 'right'];
const CARS = ['car-21', 'car-22', 'car-23', 'car-24'];
const SAMPLES = ['saltmarsh-hatch', 'marram-coupe', 'chalkboard'];
const POSITIONS: readonly Position[] = [
  {},
  { travel: { left: 30, right: -20 }, rack: 20 },
  { travel: -10, rack: -15, roll: toRadians(1.5) },
];
const GIVEN = { Fx: -3100, Fy: -5200, Fz: 6150, Mz: 85_000 };

const everyCar = (): [string, AssembledCar][] => [
  ...CARS.flatMap((name) =>
    Object.keys(goldenDocument(name).setups!).map((setup): [string, AssembledCar] => [`${name} ${setup}`, golden(name, setup)]),
  ),
  ...SAMPLES.flatMap((name) => {
    const document = sample(name);
    return Object.keys(document.setups!).map((setup): [string, AssembledCar] => [`${name} ${setup}`, stand(document, setup)]);
  }),
];

describe('balance', () => {
  // every body: what its ends put on others is what others put on it, forces and moments; 1e-9 of the load
  it.each(everyCar())('%s', (_name, car) => {
    for (const position of POSITIONS)
      for (const { case: one, residual } of answerOf(
        car,
        [...loadCases(car), caseOf(GIVEN), caseOf({ ...GIVEN, driven: true })],
        position,
      ).cases) {
        expect(residual, one.name).toBeLessThan(1e-9);
        expect(residual, one.name).toBeGreaterThan(0);
      }
  });

  it.each(everyCar())('%s: body, ground and shaft hold the whole corner', (_name, car) => {
    const loads = loadsOf(car, caseOf(GIVEN), POSITIONS[1]);
    for (const axle of AXLES)
      for (const side of SIDES) {
        const rows = loads.rows.filter((row) => row.axle === axle && row.side === side && row.kind !== 'joint');
        const onBody = rows.flatMap(({ ends }) => ends.filter(({ on }) => on === 'body'));
        const given = carriedOf(loads, axle, side).given;
        const torque = rows.flatMap(({ ends }) => ends.filter(({ on }) => on === 'otherArm'));
        const left = sum(
          [...onBody, ...torque],
          given.map(({ at, force, moment }) => ({ at, force: scale(force, -1), moment: scale(moment, -1) })),
        );
        expect(length(left.force)).toBeLessThan(1e-9 * 8000);
        expect(length(left.moment)).toBeLessThan(1e-9 * 8000 * 3000);
      }
  });
});

type Acting = Pick<LinkEnd, 'at' | 'force' | 'moment'>;
function sum(...lists: (readonly Acting[])[]): { force: Vector; moment: Vector } {
  let [force, moment]: [Vector, Vector] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (const one of lists.flat()) {
    force = add(force, one.force);
    moment = add(moment, add(cross(one.at, one.force), one.moment ?? [0, 0, 0]));
  }
  return { force, moment };
}

// An independent solve in the car's frame: six equations by moments about the contact centre, from the places of the points.
describe('against six equations written out', () => {
  const cases: [string, CarDocument][] = [
    ...CARS.map((name): [string, CarDocument] => [name, goldenDocument(name)]),
    ...SAMPLES.map((name): [string, CarDocument] => [name, sample(name)]),
  ];
  it.each(cases)('%s', (_name, document) => {
    const car = stand(document);
    for (const position of POSITIONS)
      for (const driven of [false, true]) {
        const loads = loadsOf(car, caseOf({ ...GIVEN, driven }), position);
        for (const axle of AXLES)
          for (const side of SIDES) {
            const what = `${axle} ${side} ${JSON.stringify(position)}`;
            const other = statics(document, car, axle, side, position, forces({ ...GIVEN, driven }));
            const near = (found: number, wanted: number, of: string): void =>
              expect(Math.abs(found - wanted), `${what} ${of}: ${found}, ${wanted}`).toBeLessThan(1e-6 * 10_000);
            near(carriedOf(loads, axle, side).total, other.push, 'push');
            if (document[axle]!.antiRollBar !== undefined)
              near(rowOf(loads, axle, side, 'barLink').axial!, other.barLink, 'bar link');
            const mechanism = car[axle]!.mechanism;
            mechanism.rods.forEach(({ name }, i) => {
              const row = loads.rows.find((one) => one.axle === axle && one.side === side && one.link === name);
              if (row !== undefined && row.kind !== 'beam') near(row.axial!, other.rods[i], name);
              if (row?.kind === 'beam') {
                const { inner, outer } = placed(car, axle, side, position).rods[i];
                near(-dot(row.ends[1].force, unit(subtract(outer, inner))), other.rods[i], name);
              }
            });
            if (mechanism.trailingArm !== null) {
              const { force } = rowOf(loads, axle, side, 'trailingArm').ends[0];
              expect(length(add(force, other.pivot!)), `${what} pivot`).toBeLessThan(0.01);
            }
            if (mechanism.layout === 'strut') {
              const { force } = rowOf(loads, axle, side, 'strut').ends[0];
              const { top, foot } = placed(car, axle, side, position).strut!;
              const axis = unit(subtract(top, foot));
              const sideways = subtract(force, scale(axis, dot(force, axis)));
              expect(length(add(sideways, other.pivot!)), `${what} strut top`).toBeLessThan(0.01);
            }
          }
      }
  });
});

// Virtual work: 1 mm of travel lifts the contact by v_n and shortens the spring by its ratio; both by differences of placed points.
describe('virtual work', () => {
  const H = 0.01;
  const cars: [string, AssembledCar][] = [
    ['car-23', golden('car-23')],
    ['car-23 turned', golden('car-23', 'Turns')],
    ['car-24', golden('car-24')],
    ['car-24 turned', golden('car-24', 'Turns')],
    ...SAMPLES.map((name): [string, AssembledCar] => [name, stand(sample(name))]),
  ];
  it.each(cars)('%s: spring force × spring ratio = vertical force × rise of the contact', (_name, car) => {
    for (const travel of [0, 25, -30]) {
      const loads = loadsOf(car, caseOf({ Fz: 5000 }), { travel });
      for (const axle of AXLES)
        for (const side of SIDES) {
          const at = (by: number) => placed(car, axle, side, { travel: travel + by });
          const [now, more, less] = [at(0), at(H), at(-H)];
          const size = (corner: typeof now): number => {
            const { upper, lower } = corner.spring!;
            return length(subtract(upper, lower));
          };
          const strut = (corner: typeof now): number => length(subtract(corner.strut!.top, corner.strut!.foot));
          // a spring on the strut runs along its axis: the foot lies on it
          const ratio =
            car[axle]!.mechanism.spring!.points === null
              ? (strut(less) - strut(more)) / (2 * H)
              : (size(less) - size(more)) / (2 * H);
          const { total, ratio: told } = carriedOf(loads, axle, side);
          expect(Math.abs(told - ratio)).toBeLessThan(1e-6);
          // the contact centre as a point of the knuckle
          const fixed = (corner: typeof now): Vector =>
            add(corner.wheelCentre, turned(corner.rotation, back(now.rotation, subtract(now.contactCentre, now.wheelCentre))));
          const c = Math.cos(car.pitch);
          const rise = dot(subtract(fixed(more), fixed(less)), [-Math.sin(car.pitch), 0, c]) / (2 * H);
          const bar = barWork(car, axle, side, travel, H, loads);
          expect(Math.abs(total * ratio - 5000 * rise - bar) / 5000, `${axle} ${side} ${travel}`).toBeLessThan(1e-6);
        }
    }
  });

  const turned = (m: readonly number[], v: Vector): Vector =>
    [0, 1, 2].map((i) => m[3 * i] * v[0] + m[3 * i + 1] * v[1] + m[3 * i + 2] * v[2]) as unknown as Vector;
  const back = (m: readonly number[], v: Vector): Vector =>
    [0, 1, 2].map((i) => m[i] * v[0] + m[3 + i] * v[1] + m[6 + i] * v[2]) as unknown as Vector;

  /** Work of the bar's link per mm on what carries it. */
  function barWork(
    car: AssembledCar,
    axle: AxleName,
    side: SideName,
    travel: number,
    h: number,
    loads: ReturnType<typeof loadsOf>,
  ): number {
    if (car[axle]!.mechanism.bar === null) return 0;
    const end = (by: number): Vector => placed(car, axle, side, { travel: travel + by }).bar!.linkEnd;
    return dot(rowOf(loads, axle, side, 'barLink').ends[1].force, subtract(end(h), end(-h))) / (2 * h);
  }
});

describe('what is told apart', () => {
  it('a driven wheel from a braked one: the same force, the torque through the knuckle or not', () => {
    const car = stand(sample('saltmarsh-hatch'));
    const fx = 2500;
    const braked = loadsOf(car, caseOf({ Fx: fx, Fz: 4000 }));
    const driven = loadsOf(car, caseOf({ Fx: fx, Fz: 4000, driven: true }));
    const { contactCentre, wheelCentre } = placed(car, 'front', 'left');
    // the difference is the couple of the force between its two places, and nothing else: it lifts no net force
    const onKnuckle = (loads: typeof braked): Acting[] =>
      loads.rows
        .filter((row) => row.axle === 'front' && row.side === 'left' && row.kind !== 'joint')
        .flatMap(({ ends }) => ends.filter(({ on }) => on === 'knuckle'));
    const [a, b] = [sum(onKnuckle(braked)), sum(onKnuckle(driven))];
    const couple = cross(subtract(contactCentre, wheelCentre), [fx, 0, 0]);
    expect(length(subtract(a.force, b.force))).toBeLessThan(1e-6);
    expect(length(add(subtract(a.moment, b.moment), couple))).toBeLessThan(1e-9 * 4000 * 1000);
    expect(length(couple)).toBeGreaterThan(fx * 300);
    expect(rowOf(braked, 'front', 'left', 'armRear').axial).not.toBeCloseTo(rowOf(driven, 'front', 'left', 'armRear').axial!, -1);
  });

  it('a rod that carries a spring from a straight one', () => {
    const loads = loadsOf(stand(sample('marram-coupe')), caseOf({ Fz: 4000 }));
    const track = rowOf(loads, 'front', 'left', 'track');
    expect(track.kind).toBe('beam');
    expect(track.buckling).toBeNull();
    expect(track.why['buckling']).toContain('beam');
    expect(track.bending!.place).toBe('spring');
    const tieRod = rowOf(loads, 'front', 'left', 'tieRod');
    expect(tieRod.kind).toBe('rod');
    expect(tieRod.bending).toBeNull();
    expect(tieRod.buckling!.governs).toBe('euler');
  });

  it('two rods with one outer point: one body where they carry something, else two rods', () => {
    const loads = loadsOf(stand(sample('chalkboard')), caseOf({ Fz: 4000 }));
    const arm = rowOf(loads, 'front', 'left', 'lowerFront+lowerRear');
    expect(arm.ends.map(({ point, on }) => `${point} ${on}`)).toEqual([
      'lowerFrontBody body',
      'lowerRearBody body',
      'lowerBall knuckle',
    ]);
    expect(arm.bending!.moment).toBeGreaterThan(0);
    expect(rowOf(loads, 'front', 'left', 'upperFront').kind).toBe('rod');
    expect(rowOf(loads, 'front', 'left', 'upperBall').kind).toBe('joint');
    expect(() => rowOf(loads, 'front', 'left', 'lowerFront')).toThrow();
  });

  it('what the spring carries from what must be carried beyond it', () => {
    const car = stand(sample('saltmarsh-hatch'));
    const { total, own, beyond, ratio } = carriedOf(loadsOf(car, caseOf({ Fz: 9000 })), 'rear', 'left');
    // length at design 200, free 215 and a helper of 60, 18 solid, 8 N/mm: solid before 33 mm; 90 × (215 + 60 − 42 − 200)
    expect(own).toBeCloseTo(90 * 33, 6);
    expect(total - own!).toBeCloseTo(beyond!, 9);
    expect(total * ratio).toBeGreaterThan(8500);
    const answer = answerOf(car, [caseOf({ Fz: -500 })]);
    expect(answer.warnings.map(({ code }) => code)).toContain('spring-pulls');
  });

  it('a corner without spring and damper: held at the wheel centre, and said so', () => {
    const answer = answerOf(golden('car-21'), [caseOf({ Fz: 4000 })]);
    const { by, own, beyond } = carriedOf(answer.cases[0], 'rear', 'left');
    expect([by, own, beyond]).toEqual(['held', null, null]);
    expect(answer.warnings.filter(({ code }) => code === 'nothing-holds').map(({ path }) => path)).toEqual(['rear']);
    // a strut holds along its axis, spring or not
    expect(carriedOf(answer.cases[0], 'front', 'left').by).toBe('strut');
  });

  it('a place that no wheel gets to: past the end of the damper, past the stop of the rack, on its own side', () => {
    const car = stand(sample('saltmarsh-hatch'), 'Baseline');
    const codes = (position: Position) =>
      answerOf(car, [caseOf(GIVEN)], position)
        .warnings.filter(({ code }) => code.startsWith('past'))
        .map(({ code, path, message }) => `${code} ${path} ${/[\d.]+ mm past (its stop|solid|fully open)/.exec(message)?.[0]}`);
    expect(codes({})).toEqual([]);
    expect(codes({ travel: 60, rack: 70 })).toEqual([]);
    expect(codes({ rack: 72.5 })).toEqual(['past-lock front.steering 2.5 mm past its stop']);
    expect(codes({ rack: -71 })).toEqual(['past-lock front.steering 1.0 mm past its stop']);
    expect(codes({ travel: { left: 120, right: 0 } })).toEqual([
      expect.stringMatching(/^past-stop front\.left \d+\.\d mm past solid$/),
      expect.stringMatching(/^past-stop rear\.left \d+\.\d mm past solid$/),
    ]);
    expect(codes({ travel: { left: 0, right: -120 } }).map((one) => one.replace(/[\d.]+ mm/, 'mm'))).toEqual([
      'past-stop front.right mm past fully open',
      'past-stop rear.right mm past fully open',
    ]);
  });

  it('a link that carries nothing has no factor of buckling', () => {
    const car = stand(sample('saltmarsh-hatch'), 'Trial 3');
    const cornering = loadCaseOfG(car, 'Given', [-1.5, 0]);
    for (const { rows } of answerOf(car, [cornering]).cases)
      for (const { axial, buckling, link } of rows)
        if (axial !== null && buckling !== null && Math.abs(axial) < 1e-6) expect(buckling.times, link).toBeNull();
        else if (buckling !== null) expect(buckling.times === null || buckling.times < 1e9, link).toBe(true);
  });

  it('an unhooked bar', () => {
    const document = sample('saltmarsh-hatch');
    const unhooked = { ...document, setups: { ...document.setups, Free: { front: { barRate: 0 }, rear: { barRate: 0 } } } };
    const position: Position = { travel: { left: 20, right: -20 } };
    const free = loadsOf(stand(unhooked, 'Free'), caseOf({ Fz: 4000 }), position);
    const hooked = loadsOf(stand(document), caseOf({ Fz: 4000 }), position);
    for (const axle of AXLES) {
      expect(rowOf(free, axle, 'left', 'barLink').axial).toBe(0);
      expect(Math.abs(rowOf(hooked, axle, 'left', 'barLink').axial!)).toBeGreaterThan(50);
      // the bar pushes the bumped wheel down: the spring has less to carry
      expect(carriedOf(hooked, axle, 'left').total).toBeLessThan(carriedOf(free, axle, 'left').total);
      expect(carriedOf(hooked, axle, 'right').total).toBeGreaterThan(carriedOf(free, axle, 'right').total);
    }
  });
});

describe('mirror and units', () => {
  it.each(['car-22', 'saltmarsh-hatch', 'marram-coupe', 'chalkboard'])(
    '%s: the right is the left’s mirror image to the last bit',
    (name) => {
      const car = name.startsWith('car') ? golden(name) : stand(sample(name));
      const loads = loadsOf(car, caseOf(GIVEN, { ...GIVEN, Fy: -GIVEN.Fy, Mz: -GIVEN.Mz }), { travel: 12 });
      const isTwin = (axle: AxleName): boolean => car[axle]!.areTwins;
      expect(AXLES.some(isTwin)).toBe(true);
      for (const axle of AXLES.filter(isTwin)) {
        const of = (side: SideName) => loads.rows.filter((row) => row.axle === axle && row.side === side);
        for (const [i, left] of of('left').entries()) {
          const right = of('right')[i];
          expect(right.link).toBe(left.link);
          if (left.axial !== null) expect(right.axial! - left.axial).toBe(0);
          for (const [j, end] of left.ends.entries()) {
            const [x, y, z] = right.ends[j].force;
            expect(length(subtract(end.force, [x, -y, z]))).toBe(0);
            expect(end.moment === null).toBe(right.ends[j].moment === null);
          }
          expect(right.bending?.moment).toBe(left.bending?.moment);
        }
      }
    },
  );

  it.each(['car-23', 'car-24'])('%s in inches', (name) => {
    const document = goldenDocument(name);
    const mm = loadsOf(stand(document), caseOf(GIVEN), POSITIONS[1]);
    const inches = loadsOf(stand(inInches(document)), caseOf(GIVEN), POSITIONS[1]);
    expect(inches.rows.length).toBe(mm.rows.length);
    for (const [i, row] of mm.rows.entries())
      for (const [j, end] of row.ends.entries())
        expect(length(subtract(end.force, inches.rows[i].ends[j].force))).toBeLessThan(1e-4);
  });

  it('a section in inches', () => {
    const document = goldenDocument('car-24');
    const withSection = (car: CarDocument, inch: number): CarDocument => ({
      ...car,
      front: { ...car.front!, sections: { tieRod: { diameter: 18 / inch, wall: 2 / inch, modulus: 205_000, yield: 600 } } },
    });
    const of = (car: CarDocument) => rowOf(loadsOf(stand(car), caseOf(GIVEN)), 'front', 'left', 'tieRod').buckling!;
    const [mm, inches] = [of(withSection(document, 1)), of(withSection(inInches(document), 25.4))];
    expect(inches.euler! / mm.euler!).toBeCloseTo(1, 6);
    expect(inches.yields! / mm.yields!).toBeCloseTo(1, 9);
  });
});

describe('bending by hand', () => {
  it('the rod of a strut between top and guide', () => {
    const document = sample('saltmarsh-hatch');
    const row = rowOf(loadsOf(stand(document), caseOf(GIVEN)), 'front', 'left', 'strut');
    const { top, foot } = placed(stand(document), 'front', 'left').strut!;
    const axis = unit(subtract(top, foot));
    const sideways = length(subtract(row.ends[0].force, scale(axis, dot(row.ends[0].force, axis))));
    const guide = length(subtract(top, foot)) - document.front!.strutTube!.to;
    expect(row.bending!.moment).toBeCloseTo(sideways * guide, 3);
    expect(row.bending!.place).toBe('guide');
  });

  it('a rod with a spring between its ends: a simple beam, P a b / L across its line', () => {
    const car = stand(sample('saltmarsh-hatch'));
    const loads = loadsOf(car, caseOf({ Fz: 4000 }));
    const row = rowOf(loads, 'rear', 'left', 'springArm');
    const { inner, outer } = placed(car, 'rear', 'left').rods.find(({ name }) => name === 'springArm')!;
    const spring = rowOf(loads, 'rear', 'left', 'spring').ends[1];
    const along = unit(subtract(outer, inner));
    const a = dot(subtract(spring.at, inner), along);
    const size = length(subtract(outer, inner));
    const across = subtract(spring.force, scale(along, dot(spring.force, along)));
    // the spring's foot lies a little off the line: its part along the rod bends as well, up to force × offset
    const off = length(subtract(subtract(spring.at, inner), scale(along, a)));
    const simple = (length(across) * a * (size - a)) / size;
    expect(Math.abs(row.bending!.moment - simple)).toBeLessThan(off * length(spring.force) + 1e-6);
    expect(off).toBeLessThan(50);
    expect(row.bending!.moment).toBeGreaterThan(0.8 * simple);
  });
});
