import { describe, expect, test } from 'vitest';
import {
  assembleCar,
  findSetup,
  pathCsv,
  placedPoints,
  pointPath,
  toMechanism,
  toRadians,
  type AssembledCar,
  type AxleName,
  type Vector,
} from '../../../geometry/index';
import { distance } from '../../../geometry/core/vector';
import { goldenDocument, goldenRows, positionOf } from '../../golden/goldenCars';

const assembledOf = (name: string, setup: string): AssembledCar => {
  const document = goldenDocument(name);
  const found = findSetup(document, setup);
  if (!found) throw new Error(`no setup ${setup}`);
  const car = assembleCar(toMechanism(document), found);
  if (!car.ok) throw new Error(car.failure.message);
  return car.value;
};

// The wheel centres of the golden rows are those of an independent solver: tests/golden/cars/README.md.
describe.each(['car-21', 'car-22', 'car-24'])('the way of the wheel centre of %s', (name) => {
  test('is the one that an independent solver finds, left and right, front and rear, in bump, steer and roll', () => {
    const rows = goldenRows(name);
    let compared = 0;
    for (const setup of new Set(rows.map((row) => row.setup)))
      for (const axle of ['front', 'rear'] as const) {
        const asked = rows.filter((row) => row.setup === setup && row.axle === axle);
        const places = pointPath(assembledOf(name, setup), axle, 'wheelCentre', asked.map(positionOf));
        expect(places).toHaveLength(2 * asked.length);
        for (const [index, { side, at }] of places.entries()) {
          const expected = asked[index % asked.length]?.[side]['wheelCentre'] as Vector | undefined;
          if (!expected || !at) throw new Error('a place without its expectation');
          expect(distance(at, expected)).toBeLessThan(1e-6);
          compared += 1;
        }
      }
    expect(compared).toBe(2 * rows.length);
  });
});

describe('the ways of other points', () => {
  const car = assembledOf('car-21', 'Trial');
  const BUMP = Array.from({ length: 13 }, (_, index) => ({ travel: -60 + 10 * index, rack: 8 }));
  const wayOf = (axle: AxleName, name: string, side: 'left' | 'right'): readonly Vector[] =>
    pointPath(car, axle, name, BUMP, [side]).map(({ at }) => at ?? [NaN, NaN, NaN]);

  test('an arm is rigid and turns about its own joints, which stand still; a tie rod keeps its length', () => {
    for (const side of ['left', 'right'] as const) {
      const joint = wayOf('front', 'ballJoint', side);
      for (const pivot of ['armFront', 'armRear']) {
        const body = wayOf('front', pivot, side);
        const lengths = joint.map((at, index) => distance(at, body[index] ?? [NaN, NaN, NaN]));
        for (const [index, at] of body.entries()) {
          expect(distance(at, body[0] ?? at)).toBeLessThan(1e-12);
          expect(lengths[index]).toBeCloseTo(lengths[0] ?? NaN, 9);
        }
      }
      const [outer, inner] = [wayOf('front', 'tieRodEnd', side), wayOf('front', 'rackEnd', side)];
      const rod = outer.map((at, index) => distance(at, inner[index] ?? [NaN, NaN, NaN]));
      for (const length of rod) expect(length).toBeCloseTo(rod[0] ?? NaN, 9);
      expect(distance(outer[0] ?? [0, 0, 0], outer.at(-1) ?? [0, 0, 0])).toBeGreaterThan(90);
    }
  });

  test('each place is where all points of the axle are at that position; travel apart is each side’s own', () => {
    const position = { travel: { left: 25, right: -15 }, rack: -4, roll: 0 };
    const placed = placedPoints(car, 'front', position);
    if (!placed.ok) throw new Error(placed.failure.message);
    for (const place of pointPath(car, 'front', 'tieRodEnd', [position]))
      expect(place).toMatchObject({
        travel: position.travel,
        rack: -4,
        at: placed.value.find(({ side, name }) => side === place.side && name === 'tieRodEnd')?.at,
      });
  });

  test('an axle that is not steered stands still when the rack moves, and says rack 0', () => {
    const [here, there] = pointPath(car, 'rear', 'wheelCentre', [{ rack: 0 }, { rack: 20 }], ['left']);
    expect(there).toEqual(here);
  });

  test('a position out of reach keeps its place and its reason; what is no point or axle is said', () => {
    const [near, far] = pointPath(car, 'front', 'ballJoint', [{}, { travel: 900 }], ['right']);
    expect(near?.failure).toBeNull();
    expect(far).toMatchObject({ at: null, side: 'right', travel: { left: 900, right: 900 } });
    expect(far?.failure?.kind).toBe('unreachable');
    expect(() => pointPath(car, 'front', 'toString', [{}])).toThrow('The front axle has no point "toString"');
  });
});

test('a path as CSV: names of a list of positions, coordinates in the unit that its head says, the reason of what is not reached', () => {
  const car = assembledOf('car-22', 'Baseline');
  const places = pointPath(
    car,
    'front',
    'ballJoint',
    [{ travel: 2, rack: 3 }, { roll: toRadians(1) }, { travel: 900 }],
    ['left'],
  );
  const lines = pathCsv(places, 'in').split('\r\n');
  expect(lines).toHaveLength(5);
  expect(lines[0]).toBe('axle,side,name,travelLeft [mm],travelRight [mm],rack [mm],roll [deg],x [in],y [in],z [in],error');
  const cells = lines[1]?.split(',') ?? [];
  expect(cells.slice(0, 7)).toEqual(['front', 'left', 'ballJoint', '2', '2', '3', '0']);
  for (const [axis, mm] of (places[0]?.at ?? []).entries()) expect(Number(cells[7 + axis]) * 25.4).toBeCloseTo(mm, 9);
  expect(Number(lines[2]?.split(',')[6])).toBeCloseTo(1, 12);
  expect(lines[3]).toMatch(/^front,left,ballJoint,900,900,0,0,,,,"?[A-Z]/);
});
