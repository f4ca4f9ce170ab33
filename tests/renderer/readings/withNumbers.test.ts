import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { CATALOGUE, numbersOf, parseCar, setupNames, type AxleName, type CarDocument } from '../../../geometry/index';
import { answerSetup, type BenchRow } from '../../../renderer/compute/answerBench';
import { withNumbers } from '../../../renderer/readings/withNumbers';
import { formatNumber } from '../../../renderer/units/format';
import { shownReading } from '../../../renderer/units/shownQuantity';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { evaluate } from './evaluate';

const ROOT = path.resolve(import.meta.dirname, '../../..');
const carAt = (file: string): CarDocument => {
  const read = parseCar(readFileSync(path.join(ROOT, file), 'utf8'));
  if (!read.ok) throw new Error(`${file} has faults`);
  return read.value.document;
};

const CARS = [
  'samples/saltmarsh-hatch.jounce.json',
  'samples/marram-coupe.jounce.json',
  'samples/chalkboard.jounce.json',
  'tests/golden/cars/car-22.jounce.json',
];
const POSITIONS = [
  { travel: 0, rollDeg: 0, rack: 0 },
  { travel: 25, rollDeg: 0, rack: 12 },
  { travel: -30, rollDeg: 0, rack: -20 },
  { travel: 5, rollDeg: 1.5, rack: 0 },
  { travel: -10, rollDeg: -2, rack: 15 },
];

/** The first setups are looked at everywhere, the others, which have other parts fitted, at two positions. */
const FULLY = 2;
const SOME_POSITIONS = [POSITIONS[1], POSITIONS[4]].filter((position) => position !== undefined);

/** How far a result may lie from the reading, in units of the last decimal shown: half of it, and what the printed inputs were rounded by. */
const ROUNDING = 0.6;

const numbersIn = (value: number | readonly number[]): readonly number[] => (typeof value === 'number' ? [value] : value);

interface Found {
  readonly missing: string[];
  readonly wrong: string[];
  count: number;
}

const judge = (row: BenchRow, axleName: AxleName, setup: string, position: (typeof POSITIONS)[number], found: Found) => {
  for (const entry of CATALOGUE) {
    const owner = entry.of === 'corner' ? 'left' : entry.of === 'axle' ? 'both' : 'wholeCar';
    const values = numbersOf(entry, row[owner][entry.key] ?? null);
    if (values.some((value) => value === null)) continue;
    const where = `${axleName} ${setup} ${JSON.stringify(position)} ${entry.key}`;
    const written = withNumbers(entry.key, { row, axleName, setup, position });
    if (!written) {
      found.missing.push(where);
      continue;
    }
    found.count += 1;
    const shown = shownReading(entry, STANDARD_UNITS);
    const printed = written.value.replace(/[()]/g, '').split('; ');
    const decimals = printed[0]?.split('.')[1]?.length ?? 0;
    const made = numbersIn(evaluate(written.expression));
    values.forEach((value, index) => {
      const reading = shown.toShown(value ?? NaN);
      expect(printed[index], where).toBe(shown.format(value ?? NaN));
      const off = Math.abs((made[index] ?? NaN) - reading) * Number(`1e${decimals}`);
      if (!(off < ROUNDING)) found.wrong.push(`${where}: ${written.expression} makes ${made.join('; ')}, not ${reading}`);
    });
    for (const { name, expression, value } of written.steps) {
      const places = value.split('.')[1]?.length ?? 0;
      const step = numbersIn(evaluate(expression))[0] ?? NaN;
      const stated = Number(value.replaceAll(',', '').replace('−', '-'));
      // a step's own inputs are rounded too: as many digits as count for the result are compared
      const slack = Math.max(1.2 * Number(`1e-${places}`), 2e-5 * Math.abs(stated));
      if (!(Math.abs(step - stated) <= slack))
        found.wrong.push(`${where}, ${name}: ${expression} makes ${formatNumber(step, places)}, not ${value}`);
    }
  }
};

describe.each(CARS)('%s: every formula with its numbers makes the reading', (file) => {
  const document = carAt(file);
  const found: Found = { missing: [], wrong: [], count: 0 };
  const setups = setupNames(document);
  const judgeAll = () => {
    for (const axleName of ['front', 'rear'] as const)
      for (const [place, setup] of setups.entries())
        for (const position of place < FULLY ? POSITIONS : SOME_POSITIONS) {
          if (!document[axleName]) continue;
          const rack = document[axleName].steering ? position.rack : 0;
          const answer = answerSetup({ document, setup, axle: axleName, position: { ...position, rack } });
          if (answer.ok) judge(answer.value, axleName, setup, { ...position, rack }, found);
        }
  };
  beforeAll(judgeAll, 60_000);
  test('every reading with a value has one', () => expect(found.missing.slice(0, 12)).toEqual([]));
  test('each makes what the table shows, and so does each step', () => expect(found.wrong.slice(0, 12)).toEqual([]));
  test('there were many', () => expect(found.count).toBeGreaterThan(300));
});
