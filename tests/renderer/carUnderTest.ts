import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parseCar, type CarDocument } from '../../geometry/index';
import { openCarText } from '../../renderer/state/actions/openCar';
import { createBenchStore, type BenchStore } from '../../renderer/state/benchStore';

const GOLDEN = path.resolve(import.meta.dirname, '../golden/cars');

/** The text of one of the reference cars: 21 strut, 23 strut and three rods with a trailing arm. */
export const carText = (name: string): string => readFileSync(path.join(GOLDEN, `${name}.jounce.json`), 'utf8');

export const carDocument = (name: string): CarDocument => {
  const read = parseCar(carText(name));
  if (!read.ok) throw new Error(`${name} has faults`);
  return read.value.document;
};

/** A bench with a reference car open. */
export const openedBench = (name = 'car-23'): BenchStore => {
  const store = createBenchStore();
  openCarText(store, name, name, carText(name));
  return store;
};
