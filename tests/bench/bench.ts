import { readFileSync } from 'node:fs';
import path from 'node:path';
import {
  assembleCar,
  parseCar,
  solvePoses,
  sweepAxle,
  sweepCar,
  toMechanism,
  type AssembledCar,
  type CarDocument,
  type SetupDocument,
} from '../../geometry/index';
import { runBatch } from '../../electron/command/batch';
import { batchLines } from './batchLines';
import { handToPicture } from './handToPicture';
import { kernelFiveRods, kernelStrut, POINTS } from './speed/kernel.mjs';
import { matrixFiveRods, matrixStrut } from './speed/matrix.mjs';
import { referenceCar } from './referenceCar';
import { medianMicros } from './stopwatch';
import { clearanceBench } from './clearance';
import { keepOutBench } from './keepOut';
import { studyBenches } from './studies';

/** One row: the median time of one unit of work; `ratio` is the median of the row named by `against` ÷ this one. */
export interface BenchRow {
  readonly name: string;
  readonly medianMicros: number;
  readonly against?: string;
  readonly ratio?: number;
}

interface Bench {
  readonly name: string;
  /** units of work in one call */
  readonly units: number;
  readonly against?: string;
  readonly runs?: number;
  readonly work: () => unknown;
}

function assembled(document: CarDocument, setup: SetupDocument = {}): AssembledCar {
  const car = assembleCar(toMechanism(document), setup);
  if (!car.ok) throw new Error(car.failure.message);
  return car.value;
}

const sampleText = (name = 'saltmarsh-hatch'): string => readFileSync(path.resolve(`samples/${name}.jounce.json`), 'utf8');

function documentOf(text: string): CarDocument {
  const parsed = parseCar(text);
  if (!parsed.ok) throw new Error('the sample does not parse');
  return parsed.value.document;
}

async function runLines(lines: Uint8Array): Promise<number> {
  let written = 0;
  const input = (async function* () {
    yield lines;
  })();
  await runBatch({}, { input, write: async (line) => void (written += line.length), progress: async () => {} });
  return written;
}

function benches(): Bench[] {
  const reference = referenceCar();
  const car = assembled(reference);
  const strut = car.front!.left.corner;
  const fiveRods = car.rear!.left.corner;
  const out = new Float64Array(12 * POINTS.A.n);
  const bump = Array.from(POINTS.A.t, (travel) => ({ travel }));
  const sample = documentOf(sampleText());
  const mechanism = toMechanism(sample);
  const baseline = assembled(sample);
  const sixtyOne = Array.from({ length: 61 }, (_, i) => ({ travel: i - 30 }));
  const toe: SetupDocument = { front: { setToe: 0.05 } };
  const lines = batchLines(sample, 1000);
  const fastStrut = kernelStrut(true, false);
  const fastRods = kernelFiveRods(true, false);
  const { A, B } = POINTS;
  return [
    { name: 'kernel strut', units: A.n, work: () => fastStrut(A, out) },
    { name: 'kernel five rods', units: B.n, work: () => fastRods(B, out) },
    { name: 'matrix strut', units: A.n, work: () => matrixStrut(A, out) },
    { name: 'matrix five rods', units: B.n, work: () => matrixFiveRods(B, out) },
    {
      name: 'strut pose with rates',
      units: A.n,
      against: 'matrix strut',
      work: () => solvePoses(strut, { travel: A.t, rack: A.rk }),
    },
    {
      name: 'five-rod pose with rates',
      units: B.n,
      against: 'matrix five rods',
      work: () => solvePoses(fiveRods, { travel: B.t, rack: B.rk }),
    },
    { name: 'row of an axle (strut)', units: bump.length, work: () => sweepAxle(car, 'front', bump) },
    { name: 'row of an axle (five rods)', units: bump.length, work: () => sweepAxle(car, 'rear', bump) },
    { name: 'sweep 61, both axles', units: 1, work: () => sweepCar(baseline, sixtyOne) },
    { name: 'hand to picture', units: 1, work: handToPicture(sampleText()) },
    { name: 'setToe', units: 1, work: () => assembleCar(mechanism, toe) },
    { name: 'batch 1000 cars', units: 1, work: () => runLines(lines) },
    ...studyBenches(sample, documentOf(sampleText('marram-coupe'))),
    ...clearanceBench(sample),
    ...keepOutBench(sample),
  ];
}

/** Runs every row (or only those named) and prints the table, or with `json` one document. */
export async function runBench({
  json,
  only,
  more,
}: {
  readonly json: boolean;
  /** a text that names the rows to run; null: all. Names have commas of their own, so it is not taken apart. */
  readonly only: string | null;
  /** rows that are measured by other means */
  readonly more: () => Promise<readonly BenchRow[]>;
}): Promise<void> {
  const rows: BenchRow[] = [];
  for (const { name, units, against, runs, work } of benches()) {
    if (only !== null && !only.includes(name)) continue;
    const median = await medianMicros(work, units, runs);
    const base = rows.find((row) => row.name === against);
    rows.push(
      base === undefined
        ? { name, medianMicros: median }
        : { name, medianMicros: median, against: base.name, ratio: base.medianMicros / median },
    );
  }
  rows.push(...(await more()));
  if (json) {
    process.stdout.write(`${JSON.stringify({ rows })}\n`);
    return;
  }
  for (const row of rows) {
    const ratio = row.ratio === undefined ? '' : `${row.ratio.toFixed(1)} × faster than ${row.against}`;
    process.stdout.write(`${row.name.padEnd(28)} ${row.medianMicros.toFixed(3).padStart(14)} µs  ${ratio}\n`);
  }
}
