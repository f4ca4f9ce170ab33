import { expect, test } from 'vitest';
import {
  assembleCar,
  carFileSchema,
  findSetup,
  parseCar,
  readingsOfAxle,
  setupNames,
  toMechanism,
  type CarDocument,
} from '../../geometry/index';
import { documentText } from './documents';
import { blocksOf } from './markdown';

const GUIDE = 'geometry/car/CAR-FILE.md';
const examples = async (remark: string): Promise<string[]> =>
  blocksOf(await documentText(GUIDE))
    .filter((block) => block.language === 'json' && block.remark === remark)
    .map(({ text }) => text);

/** What a car answers standing in each of its setups; throws with the first fault or failure. */
function answersOf(text: string): number[] {
  const parsed = parseCar(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  expect(parsed.value.warnings).toEqual([]);
  const { document } = parsed.value;
  return setupNames(document).map((name) => {
    const car = assembleCar(toMechanism(document), findSetup(document, name));
    const row = car.ok ? readingsOfAxle(car.value, 'front', {}) : car;
    if (!row.ok) throw new Error(row.failure.message);
    return row.value.left.camber;
  });
}

const exampleCar = async (): Promise<CarDocument> => JSON.parse((await examples('car'))[0]!) as CarDocument;

test('the car of the guide is sound and answers in all its setups', async () => {
  const [text] = await examples('car');
  const camber = answersOf(text!);
  expect(camber).toHaveLength(2);
  expect(camber[1]).toBeLessThan(camber[0]!);
});

test('every adjuster of the guide fits that car', async () => {
  const car = await exampleCar();
  const adjusters = await examples('adjuster');
  const kinds = adjusters.map((text) => {
    const adjuster = JSON.parse(text) as { kind: string };
    answersOf(JSON.stringify({ ...car, front: { ...car.front, adjusters: { ...car.front?.adjusters, other: adjuster } } }));
    return adjuster.kind;
  });
  expect(kinds.sort()).toEqual(['clamp-eccentric', 'eccentric-bolt', 'offset-bushing', 'perch', 'slide', 'turnbuckle']);
});

test('the setup of the guide fits that car', async () => {
  const car = await exampleCar();
  const [setup] = await examples('setup');
  const half = { plate: { ...car.front?.adjusters?.['plate'], step: 0.5 } };
  const front = { ...car.front, adjusters: { ...car.front?.adjusters, ...half } };
  expect(answersOf(JSON.stringify({ ...car, front, setups: { Wet: JSON.parse(setup!) as object } }))).toHaveLength(1);
});

test('the guide names every key of the file', async () => {
  const keys = new Set<string>();
  const collect = (part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    for (const [key, value] of Object.entries(part)) {
      if (key === 'properties') for (const name of Object.keys(value as object)) keys.add(name);
      collect(value);
    }
  };
  collect(carFileSchema());
  const guide = await documentText(GUIDE);
  expect([...keys].filter((key) => !guide.includes(`\`${key}\``) && !guide.includes(`"${key}"`))).toEqual([]);
  expect(keys.size).toBeGreaterThan(150);
});
