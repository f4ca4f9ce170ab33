import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import {
  assembleCar,
  findSetup,
  inContractUnits,
  parseCar,
  readingsOfAxle,
  toMechanism,
  type AssembledCar,
  type AxleName,
  type AxleRow,
  type CarDocument,
  type Position,
  type SetupDocument,
  type Warning,
} from '../../geometry/index';

const FOLDER = path.resolve(import.meta.dirname, '../../samples');
const SUFFIX = '.jounce.json';
export const AXLES: readonly AxleName[] = ['front', 'rear'];

export interface Sample {
  readonly name: string;
  readonly text: string;
  readonly document: CarDocument;
  readonly warnings: readonly Warning[];
}

function readSample(name: string): Sample {
  const text = readFileSync(path.join(FOLDER, name + SUFFIX), 'utf8');
  const parsed = parseCar(text);
  if (!parsed.ok) throw new Error(`${name}: ${JSON.stringify(parsed.failure)}`);
  return { name, text, document: parsed.value.document, warnings: parsed.value.warnings };
}

/** Every car in `samples/`, by file name. */
export const SAMPLES: readonly Sample[] = readdirSync(FOLDER)
  .filter((file) => file.endsWith(SUFFIX))
  .sort()
  .map((file) => readSample(file.slice(0, -SUFFIX.length)));

export function sampleNamed(name: string): Sample {
  const sample = SAMPLES.find((candidate) => candidate.name === name);
  if (sample === undefined) throw new Error(`no sample ${name}`);
  return sample;
}

/** The car with a setup on it: one of the file's by name, or any. */
export function standing({ name, document }: Sample, setup: string | SetupDocument): AssembledCar {
  const car = assembleCar(toMechanism(document), typeof setup === 'string' ? findSetup(document, setup) : setup);
  if (!car.ok) throw new Error(`${name} with ${JSON.stringify(setup)}: ${car.failure.message}`);
  return car.value;
}

/** A row of readings in mm and degrees, as the command line prints them. */
type DegreeRow = ReturnType<typeof inContractUnits<AxleRow>>;

export function readAt(car: AssembledCar, axle: AxleName, position: Position = {}): DegreeRow {
  const row = readingsOfAxle(car, axle, position);
  if (!row.ok) throw new Error(`${axle} at ${JSON.stringify(position)}: ${row.failure.message}`);
  return inContractUnits(row.value);
}

/** A reading that is one number and is there. */
export function numberOf(row: DegreeRow, owner: 'left' | 'right' | 'both', key: string): number {
  const value = row[owner][key];
  if (typeof value !== 'number') throw new Error(`${row.axle}.${owner}.${key} is ${JSON.stringify(value)}: ${row.why[`${owner}.${key}`] ?? 'no reason given'}`);
  return value;
}
