import {
  judgeLimits,
  sweepCar,
  sweepCsvLines,
  type AssembledCar,
  type AxleName,
  type CsvAxle,
  type CsvWholeCar,
} from '../../geometry/index';
import type { Answer, Call, Tell } from './answer';
import { usageError } from './commandError';
import { axlesAsked, titleOf } from './question';
import { assembledFor, refuseAllFailed, rowAt, UNITS, warnedOfRack, wholeCarAt, type Comparison } from './readings';
import type { Row } from './rows';
import { sweepQuestion, type SweepQuestion } from './sweepPositions';
import { sweepInWords } from './sweepTable';
import { refuseUnwritable, writeWholeFile } from './wholeFile';

/** Positions between two looks at the clock and at Ctrl-C. */
const CHUNK = 250;

/** In the place of a file's name. */
const STANDARD_OUTPUT = '-';

/** `sweep`: readings over a motion or a list of positions. */
export async function answer(call: Call): Promise<Answer> {
  const { options, progress, reads } = call;
  const force = options.force === true;
  if (force && options.csv === undefined) throw usageError('--force goes with --csv');
  if (options.csv !== undefined && options.against !== undefined)
    throw usageError('--csv holds the readings of one setup: with --against, use --json');
  const toOutput = options.csv === STANDARD_OUTPUT;
  if (toOutput && options.json) throw usageError('--csv - and --json both print the answer: give one of them');
  if (toOutput && force) throw usageError('--force replaces a file; --csv - writes none');
  const question = await sweepQuestion(options);
  const { car, setup, assembled, against } = assembledFor(call);
  if (options.csv !== undefined && !toOutput) await refuseUnwritable(options.csv, force, reads);
  const swept = await sweepPositions(question, assembled, against, axlesAsked(car, options), progress);
  const { axles } = swept;
  for (const { rows } of axles)
    for (const [i, row] of rows.entries()) rows[i] = warnedOfRack(row, car, options.axle, question.positions[i]?.rack);
  refuseAllFailed(axles.flatMap(({ rows }) => rows));

  const alone = options.axle !== undefined;
  let text: string | null = null;
  if (options.csv !== undefined) {
    const columns = axles.map(({ axle, rows }) => ({ axle, rows, prefix: alone ? '' : `${axle}.` }));
    text = await csvText(question, columns, alone ? null : swept.wholeCar, progress);
    if (!toOutput) await writeWholeFile(options.csv, text, force, reads);
  }
  const printed = toOutput && text !== null ? { text } : {};
  const head = { car: car.document.name, setup };
  const title = titleOf(car, setup, options);
  const words: Answer['words'] = (style) => sweepInWords({ title, setup, question, axles, csv: options.csv ?? null }, style);
  const [first] = axles;
  if (alone && first)
    return {
      document: { ...head, axle: first.axle, units: UNITS, motion: question.motion, rows: first.rows },
      words,
      ...printed,
    };
  const ofAxle = (axle: AxleName) => axles.find((candidate) => candidate.axle === axle) ?? null;
  const wholeCar = { rows: swept.wholeCar };
  return {
    document: { ...head, units: UNITS, motion: question.motion, front: ofAxle('front'), rear: ofAxle('rear'), wholeCar },
    words,
    ...printed,
  };
}

interface Swept {
  readonly axles: readonly { readonly axle: AxleName; readonly rows: Row[] }[];
  readonly wholeCar: readonly CsvWholeCar[];
}

async function sweepPositions(
  question: SweepQuestion,
  assembled: AssembledCar,
  against: Comparison | null,
  asked: readonly AxleName[],
  progress: Tell,
): Promise<Swept> {
  const limits = judgeLimits(assembled);
  const axles = asked.map((axle) => ({ axle, rows: [] as Row[] }));
  const wholeCar: CsvWholeCar[] = [];
  const total = question.positions.length;
  for (let start = 0; start < total; start += CHUNK) {
    const positions = question.positions.slice(start, start + CHUNK);
    const others = against ? sweepCar(against.car, positions) : [];
    for (const [index, here] of sweepCar(assembled, positions).entries()) {
      const input = question.inputs[start + index];
      const there = others[index] ?? null;
      for (const { axle, rows } of axles) rows.push(rowAt(axle, input, here, limits, against, there));
      wholeCar.push({ input, ...wholeCarAt(here, against, there) });
    }
    await progress(Math.min(start + CHUNK, total), total);
  }
  return { axles, wholeCar };
}

async function csvText(
  question: SweepQuestion,
  columns: readonly CsvAxle[],
  wholeCar: readonly CsvWholeCar[] | null,
  progress: Tell,
): Promise<string> {
  const lines: string[] = [];
  for (const line of sweepCsvLines(question.inputs, question.unit, columns, wholeCar)) {
    lines.push(line);
    if (lines.length % CHUNK === 0) await progress(lines.length, question.inputs.length + 1);
  }
  return lines.join('');
}
