import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parseCar, type CarDocument, type QuestionDocument } from '../../../geometry/index';
import { openCarText } from '../../../renderer/state/actions/openCar';
import { createBenchStore, type BenchStore } from '../../../renderer/state/benchStore';

const SAMPLE = path.resolve(import.meta.dirname, '../../../samples/saltmarsh-hatch.jounce.json');

const text = readFileSync(SAMPLE, 'utf8');

/** The hatch of the samples: both axles, adjusters of every kind, limits, two questions kept. */
export const sampleCar = (): CarDocument => {
  const read = parseCar(text);
  if (!read.ok) throw new Error('the sample has faults');
  return read.value.document;
};

/** The questions of reach that a car keeps, by name. */
export const reachKept = ({ questions = {} }: CarDocument): readonly (readonly [string, QuestionDocument])[] =>
  Object.entries(questions).flatMap(([name, question]) => ('wanted' in question ? [[name, question] as const] : []));

export const sampleBench = (): BenchStore => {
  const store = createBenchStore();
  openCarText(store, 'saltmarsh-hatch', 'saltmarsh-hatch', text);
  return store;
};

export const benchNow = (store: BenchStore) => {
  const { history } = store.getState();
  if (!history) throw new Error('a car is open');
  return history.present;
};
