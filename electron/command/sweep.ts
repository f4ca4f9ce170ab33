import { judgeLimits, sweepAxle, type AssembledCar, type AxleName } from '../../geometry/index';
import type { Answer, Call, Tell } from './answer';
import { CommandError, usageError } from './commandError';
import { sweepCsvLines, type CsvAxle } from './csv';
import { axlesAsked } from './question';
import { assembledFor, UNITS, wholeCarAt, type Comparison } from './readings';
import { isFailed, limitsOf, rowOf, type LimitDocumentRow, type Row } from './rows';
import { sweepQuestion, type SweepQuestion } from './sweepPositions';
import { sweepInWords } from './sweepTable';
import { refuseExisting, writeWholeFile } from './wholeFile';

/** Positions between two looks at the clock and at Ctrl-C. */
const CHUNK = 250;

/** `sweep`: readings over a motion or a list of positions. */
export async function answer(call: Call): Promise<Answer> {
  const { options, progress } = call;
  const force = options.force === true;
  if (force && options.csv === undefined) throw usageError('--force goes with --csv');
  const question = await sweepQuestion(options);
  const { car, setup, assembled, against } = assembledFor(call);
  if (options.csv !== undefined) await refuseExisting(options.csv, force);
  const limits = judgeLimits(assembled, car.document);
  const asked = axlesAsked(car, options);
  const total = question.positions.length * asked.length;
  const axles: { axle: AxleName; rows: Row[] }[] = [];
  for (const axle of asked) {
    const done = axles.length * question.positions.length;
    const rows = await sweepRows(question, assembled, against, axle, limitsOf(limits, axle), (rowsDone) =>
      progress(done + rowsDone, total),
    );
    axles.push({ axle, rows });
  }
  refuseAllFailed(axles.flatMap(({ rows }) => rows));

  const alone = options.axle !== undefined;
  if (options.csv !== undefined) {
    const columns = axles.map(({ axle, rows }) => ({ axle, rows, prefix: alone ? '' : `${axle}.` }));
    await writeWholeFile(options.csv, await csvText(question, columns, progress), force);
  }
  const head = { car: car.document.name, setup };
  const words: Answer['words'] = (style) => sweepInWords({ ...head, question, axles, csv: options.csv ?? null }, style);
  const [first] = axles;
  if (alone && first)
    return { document: { ...head, axle: first.axle, units: UNITS, motion: question.motion, rows: first.rows }, words };
  const ofAxle = (axle: AxleName) => axles.find((candidate) => candidate.axle === axle) ?? null;
  const wholeCar = { rows: await wholeCarRows(question, assembled, against, progress) };
  return {
    document: { ...head, units: UNITS, motion: question.motion, front: ofAxle('front'), rear: ofAxle('rear'), wholeCar },
    words,
  };
}

async function sweepRows(
  question: SweepQuestion,
  assembled: AssembledCar,
  against: Comparison | null,
  axle: AxleName,
  limits: readonly LimitDocumentRow[],
  report: (done: number) => Promise<void>,
): Promise<Row[]> {
  const rows: Row[] = [];
  for (let start = 0; start < question.positions.length; start += CHUNK) {
    const positions = question.positions.slice(start, start + CHUNK);
    const others = against ? sweepAxle(against.car, axle, positions) : [];
    for (const [index, result] of sweepAxle(assembled, axle, positions).entries()) {
      const other = others[index];
      rows.push(
        rowOf(result, {
          input: question.inputs[start + index],
          limits,
          ...(against && other ? { against: { setup: against.setup, result: other } } : {}),
        }),
      );
    }
    await report(Math.min(start + CHUNK, question.positions.length));
  }
  return rows;
}

async function wholeCarRows(question: SweepQuestion, assembled: AssembledCar, against: Comparison | null, progress: Tell) {
  const rows: object[] = [];
  for (const [index, position] of question.positions.entries()) {
    rows.push({ input: question.inputs[index], ...wholeCarAt(assembled, position, against) });
    if (index % CHUNK === 0) await progress(index, question.positions.length);
  }
  return rows;
}

async function csvText(question: SweepQuestion, columns: readonly CsvAxle[], progress: Tell): Promise<string> {
  const lines: string[] = [];
  for (const line of sweepCsvLines(question.inputs, question.unit, columns)) {
    lines.push(line);
    if (lines.length % CHUNK === 0) await progress(lines.length, question.inputs.length + 1);
  }
  return lines.join('');
}

/** A sweep of which nothing was reached answers nothing: it is the failure of its first row. */
function refuseAllFailed(rows: readonly Row[]): void {
  const failed = rows.filter(isFailed);
  const first = failed[0];
  if (!first || failed.length < rows.length) return;
  const message =
    rows.length === 1
      ? first.error.message
      : `none of ${rows.length} positions can be reached; the first: ${first.error.message}`;
  throw new CommandError({ ...first.error, message });
}
