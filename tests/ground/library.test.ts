import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { createContext, runInContext } from 'node:vm';
import { expect, test } from 'vitest';
import { installLibrary, sampleText } from './installedLibrary';

/** What a program that uses the library looks like. `carText` and `answer` stand for where it has its text from and to. */
const EXAMPLE = `
import { assembleCar, findSetup, parseCar, readingsOfAxle, setupNames, toMechanism } from 'jounce/geometry';
declare const carText: string;
declare let answer: unknown;

const parsed = parseCar(carText);
if (!parsed.ok) throw new Error(parsed.failure.faults.map((fault) => fault.code).join());
const { document } = parsed.value;
const [firstSetup = 'Baseline'] = setupNames(document);
const car = assembleCar(toMechanism(document), findSetup(document, firstSetup));
if (!car.ok) throw new Error(car.failure.message);

const bump = readingsOfAxle(car.value, 'front', { travel: 10 });
if (!bump.ok) throw new Error(bump.failure.message);
const camber: number | null = bump.value.left.camber; // radians
answer = { camber, travel: bump.value.travelFromStanding };
`;

test('a program that installed the package has its types, and runs where there is no Node and no browser', async () => {
  const { complaintsOf, bundle } = await installLibrary();
  expect(await complaintsOf(EXAMPLE)).toEqual([]);
  const wrong = EXAMPLE.replace('const camber: number | null', 'const camber: string');
  expect((await complaintsOf(wrong)).join()).toContain("not assignable to type 'string'");

  const script = await bundle(EXAMPLE);
  const samples = path.resolve(import.meta.dirname, '../../samples');
  const cars = (await readdir(samples)).filter((name) => name.endsWith('.jounce.json')).map((name) => name.slice(0, -12));
  expect(cars.length).toBeGreaterThan(0);
  for (const name of cars) {
    const bare = createContext({ carText: await sampleText(name), answer: null }); // the language itself and not a thing more
    const answer = runInContext(`${script}\nanswer`, bare) as { camber: number; travel: unknown };
    expect(Number.isFinite(answer.camber)).toBe(true);
    expect(JSON.stringify(answer.travel)).toBe('{"left":10,"right":10}');
  }
});
