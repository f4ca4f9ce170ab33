import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { CATALOGUE, numbersOf, parseCar, setupNames, type CarDocument, type ReadingEntry } from '../../../geometry/index';
import { answerSetup } from '../../../renderer/compute/answerBench';
import { withNumbers, type NumbersQuestion } from '../../../renderer/readings/withNumbers';
import { shownReading } from '../../../renderer/units/shownQuantity';
import { STANDARD_UNITS, unitWords, type ShownUnits } from '../../../renderer/units/unitChoice';
import { evaluate, grainOf, printedNumber } from './evaluate';

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

type Asked = Omit<NumbersQuestion, 'side'>;

const judgeOne = (entry: ReadingEntry, asked: NumbersQuestion, found: Found) => {
  const { row, axleName, setup, position, side, units } = asked;
  const owner = entry.of === 'corner' ? side : entry.of === 'axle' ? 'both' : 'wholeCar';
  const values = numbersOf(entry, row[owner][entry.key] ?? null);
  if (values.some((value) => value === null)) return;
  const where = `${axleName} ${setup} ${JSON.stringify(position)} ${owner} ${unitWords(units)} ${entry.key}`;
  const written = withNumbers(entry.key, asked);
  if (!written) {
    found.missing.push(where);
    return;
  }
  found.count += 1;
  const shown = shownReading(entry, units);
  const printed = written.value.replace(/[()]/g, '').split('; ');
  const made = numbersIn(evaluate(written.expression));
  values.forEach((value, index) => {
    const reading = shown.toShown(value ?? NaN);
    expect(printed[index], where).toBe(shown.format(value ?? NaN));
    const off = Math.abs((made[index] ?? NaN) - reading) / grainOf(printed[index] ?? '');
    if (!(off < ROUNDING)) found.wrong.push(`${where}: ${written.expression} makes ${made.join('; ')}, not ${reading}`);
  });
  expect(written.unit, where).toBe(shown.unit);
  for (const { name, expression, value } of written.steps) {
    const step = numbersIn(evaluate(expression))[0] ?? NaN;
    const stated = printedNumber(value);
    // a step's own inputs are rounded too: as many digits as count for the result are compared
    const slack = Math.max(1.2 * grainOf(value), 2e-5 * Math.abs(stated));
    if (!(Math.abs(step - stated) <= slack)) found.wrong.push(`${where}, ${name}: ${expression} makes ${step}, not ${value}`);
  }
};

/** Every reading of a row: those of one wheel for either. */
const judge = (asked: Asked, found: Found) => {
  for (const entry of CATALOGUE)
    for (const side of entry.of === 'corner' ? (['left', 'right'] as const) : (['left'] as const))
      judgeOne(entry, { ...asked, side }, found);
};

const rowsOf = function* (document: CarDocument, setup: string, positions: typeof POSITIONS) {
  for (const axleName of ['front', 'rear'] as const) {
    if (!document[axleName]) continue;
    for (const position of positions) {
      const rack = document[axleName].steering ? position.rack : 0;
      const answer = answerSetup({ document, setup, axle: axleName, position: { ...position, rack } });
      if (answer.ok) yield { row: answer.value, axleName, setup, position: { ...position, rack } };
    }
  }
};

const nothing = (): Found => ({ missing: [], wrong: [], count: 0 });

describe.each(CARS)('%s: every formula with its numbers makes the reading', (file) => {
  const document = carAt(file);
  const found = nothing();
  const judgeAll = () => {
    for (const [place, setup] of setupNames(document).entries())
      for (const asked of rowsOf(document, setup, place < FULLY ? POSITIONS : SOME_POSITIONS))
        judge({ ...asked, units: STANDARD_UNITS }, found);
  };
  beforeAll(judgeAll, 60_000);
  test('every reading with a value has one', () => expect(found.missing.slice(0, 12)).toEqual([]));
  test('each makes what the table shows, and so does each step', () => expect(found.wrong.slice(0, 12)).toEqual([]));
  test('there were many', () => expect(found.count).toBeGreaterThan(300));
});

/** Every choice of units but the usual one, with a rim for toe. */
const CHOICES: readonly ShownUnits[] = (['mm', 'in'] as const)
  .flatMap((length) =>
    (['newton', 'pound'] as const).flatMap((force) =>
      (['degrees', 'minutes'] as const).flatMap((angle) =>
        (['angle', 'rim'] as const).map((toe) => ({ length, force, angle, toe, toeDiameter: toe === 'rim' ? 406.4 : null })),
      ),
    ),
  )
  .slice(1);

describe.each(CARS)('%s: in every choice of units too', (file) => {
  const document = carAt(file);
  test.each(CHOICES)(
    '$length, $force, $angle, toe as $toe',
    (units) => {
      const found = nothing();
      const [setup = ''] = setupNames(document);
      for (const asked of rowsOf(document, setup, SOME_POSITIONS)) judge({ ...asked, units }, found);
      expect(found.missing).toEqual([]);
      expect(found.wrong.slice(0, 12)).toEqual([]);
      expect(found.count).toBeGreaterThan(60);
    },
    60_000,
  );
});
