import { expect, test } from 'vitest';
import {
  assembleCar,
  findReading,
  findSetup,
  inContractUnits,
  map,
  readingsOfAxle,
  toMechanism,
  toRadians,
  withSetting,
  type MapAnswer,
  type MapQuestion,
} from '../../../geometry/index';
import { mapStudy } from '../../../geometry/studies/map';
import { sampleNamed } from '../../samples/samples';

const hatch = sampleNamed('saltmarsh-hatch').document;
const mechanism = toMechanism(hatch);
const camber = findReading('camber');
if (!camber) throw new Error('camber is a reading');

const QUESTION: MapQuestion = {
  setup: findSetup(hatch, 'Baseline'),
  x: { kind: 'adjuster', axle: 'front', side: 'both', name: 'plateAcross' },
  y: { kind: 'adjuster', axle: 'front', side: 'right', name: 'clampBolt' },
  nx: 5,
  ny: 3,
  entry: camber,
  axle: 'front',
  owner: 'right',
  at: { travel: 10, rack: 5, roll: 0 },
};

function mapped(question: MapQuestion): MapAnswer {
  const made = map(mechanism, question);
  if (!made.ok) throw new Error(made.failure.message);
  return made.value;
}

test('every value is that of readings there, over two adjusters', () => {
  const made = mapped(QUESTION);
  expect(made.x).toEqual([-12, -7, -2, 3, 8]);
  expect(made.y).toEqual([-90, 0, 90]);
  made.y.forEach((clock, row) =>
    made.x.forEach((across, column) => {
      const setup = withSetting(
        withSetting(QUESTION.setup, 'front', 'plateAcross', 'both', across),
        'front',
        'clampBolt',
        'right',
        clock,
      );
      const car = assembleCar(mechanism, setup);
      const read = car.ok ? readingsOfAxle(car.value, 'front', { travel: 10, rack: 5, roll: 0 }) : null;
      expect(made.z[row][column]).toBe(read?.ok ? inContractUnits(read.value).right['camber'] : null);
    }),
  );
  expect(made.steps.x).toHaveLength(21);
  expect(made.steps.y?.[0]).toBe(-90);
  expect(made.now).toMatchObject({ x: null, y: null });
});

test('over a motion; what cannot be reached is null with its reason', () => {
  const made = mapped({
    ...QUESTION,
    y: { kind: 'travel', from: -400, to: 60 },
    ny: 2,
    at: { travel: 0, rack: 0, roll: 1 },
  });
  expect(made.z[0].every((value) => value === null)).toBe(true);
  expect(Object.keys(made.why)).toEqual(['0,0', '0,1', '0,2', '0,3', '0,4']);
  const car = assembleCar(mechanism, withSetting(QUESTION.setup, 'front', 'plateAcross', 'both', 8));
  const read = car.ok ? readingsOfAxle(car.value, 'front', { travel: 60, rack: 0, roll: toRadians(1) }) : null;
  expect(made.z[1][4]).toBe(read?.ok ? inContractUnits(read.value).right['camber'] : null);
  expect(made.steps.y).toBeNull();
});

test('the same however its chunks are run', () => {
  const question = { ...QUESTION, nx: 11 };
  const round = mapStudy(mechanism, question).round();
  expect(round.chunks).toBeGreaterThan(1);
  const parts = Array.from({ length: round.chunks }, (_, chunk) => chunk)
    .reverse()
    .map((chunk) => structuredClone(mapStudy(mechanism, question).round().run(chunk)));
  expect(round.merge(parts.reverse())).toEqual({ answer: mapped(question) });
});
