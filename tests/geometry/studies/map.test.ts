import { expect, test } from 'vitest';
import {
  assembleCar,
  findReading,
  findSetup,
  inContractUnits,
  judgeLimits,
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
  expect(made.now).toMatchObject({ x: 0, y: 0 });
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
  const question = { ...QUESTION, nx: 30, ny: 40 };
  const round = mapStudy(mechanism, question).round();
  expect(round.chunks).toBeGreaterThan(1);
  const parts = Array.from({ length: round.chunks }, (_, chunk) => chunk)
    .reverse()
    .map((chunk) => structuredClone(mapStudy(mechanism, question).round().run(chunk)));
  expect(round.merge(parts.reverse())).toEqual({ answer: mapped(question) });
});

test('with a second reading, what every limit has to spare, and all of it at the real steps', () => {
  const centre = findReading('rollCentreHeight');
  if (!centre) throw new Error('roll centre height is a reading');
  const limits = [
    { reading: 'camber', axle: 'front' as const, min: -3, max: 0 },
    { setting: 'plateAcross', axle: 'front' as const, min: -9 },
  ];
  const limited = { ...hatch, limits };
  const y = { kind: 'adjuster', axle: 'front', side: 'both', name: 'clampBolt' } as const;
  const question: MapQuestion = {
    ...QUESTION,
    y,
    second: { entry: centre, axle: 'front', owner: 'both' },
    withLimits: true,
    onSteps: true,
  };
  const made = map(toMechanism(limited), question);
  if (!made.ok) throw new Error(made.failure.message);
  const { onSteps, limits: judged, second, steps } = made.value;
  expect(second).toHaveLength(3);
  expect(judged?.map(({ name }) => name)).toEqual([
    'front.left.camber',
    'front.right.camber',
    'front.left.plateAcross',
    'front.right.plateAcross',
  ]);
  expect(onSteps?.x).toEqual(steps.x);
  expect(onSteps?.y).toEqual(steps.y);
  // a real step, put together by itself
  const column = onSteps?.x.indexOf(-10) ?? -1;
  const row = onSteps?.y.indexOf(30) ?? -1;
  const setup = withSetting(withSetting(QUESTION.setup, 'front', 'plateAcross', 'both', -10), 'front', 'clampBolt', 'both', 30);
  const car = assembleCar(toMechanism(limited), setup);
  if (!car.ok) throw new Error(car.failure.message);
  const read = readingsOfAxle(car.value, 'front', { travel: 10, rack: 5, roll: 0 });
  if (!read.ok) throw new Error(read.failure.message);
  expect(onSteps?.z[row][column]).toBe(inContractUnits(read.value).right['camber']);
  // where the setup stands, of both
  const before = assembleCar(toMechanism(limited), QUESTION.setup);
  const now = before.ok ? readingsOfAxle(before.value, 'front', QUESTION.at) : null;
  if (!now?.ok) throw new Error('it stands');
  expect(made.value.now.z).toBe(inContractUnits(now.value).right['camber']);
  expect(made.value.now.second).toBe(inContractUnits(now.value).both['rollCentreHeight']);
  expect(onSteps?.second?.[row][column]).toBe(inContractUnits(read.value).both['rollCentreHeight']);
  expect(onSteps?.limits?.map(({ spare }) => spare[row][column])).toEqual(judgeLimits(car.value).map(({ spare }) => spare));
  expect(onSteps?.limits?.[2].spare[row][column]).toBe(-1);
});

test('the steps of an adjuster over a motion stand where the car is held in it', () => {
  const made = mapped({ ...QUESTION, y: { kind: 'travel', from: -20, to: 20 }, onSteps: true });
  expect(made.onSteps?.y).toEqual([10]);
  expect(made.onSteps?.z[0]).toHaveLength(21);
  expect(made.limits).toBeUndefined();
});

test('where the parts stand: zero where nothing is set, nowhere where left and right differ', () => {
  const now = (setup: MapQuestion['setup'], side: 'both' | 'left' | 'right') =>
    mapped({ ...QUESTION, setup, y: { kind: 'adjuster', axle: 'front', side, name: 'clampBolt' }, nx: 1, ny: 1 }).now.y;
  expect([now({}, 'both'), now({}, 'right')]).toEqual([0, 0]);
  const unlike = { front: { left: { clampBolt: 15 } } };
  expect([now(unlike, 'both'), now(unlike, 'left'), now(unlike, 'right')]).toEqual([null, 15, 0]);
});
