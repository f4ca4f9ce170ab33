import { parseCar, parseCarBytes, setupNames, type Fault } from '../../../geometry/index';
import { failureWords } from '../../files/failureWords';
import type { FileService } from '../../files/fileService';
import { change, openBench, type BenchStore } from '../benchStore';

const STILL = { travel: 0, rollDeg: 0, rack: 0 };

const refuse = (store: BenchStore, title: string, message: string, faults: readonly Fault[]): void =>
  store.setState({ refused: { title, message, faults } });

const countOf = (faults: readonly Fault[]): string =>
  faults.length === 1 ? 'One fault was found in it.' : `${faults.length} faults were found in it.`;

const take = (store: BenchStore, title: string, sample: string | null, read: ReturnType<typeof parseCar>): boolean => {
  if (!read.ok) {
    refuse(store, title, countOf(read.failure.faults), read.failure.faults);
    return false;
  }
  const { document, warnings } = read.value;
  const file = { title: document.name || title, sample, asRead: document, warnings };
  const axle = document.front ? 'front' : 'rear';
  const held = Object.keys(document[axle]?.adjusters ?? {})[0] ?? null;
  change(store, { ...openBench(file, setupNames(document)), axle, held, position: STILL });
  return true;
};

/** Opens the text of a car file in place of what is open. A file with faults leaves all as it is and says which. */
export const openCarText = (store: BenchStore, title: string, sample: string | null, text: string): boolean =>
  take(store, title, sample, parseCar(text));

/** Opens a car file by its bytes, so that its encoding is judged too. */
export const openCarBytes = (store: BenchStore, title: string, bytes: Uint8Array): boolean =>
  take(store, title, null, parseCarBytes(bytes));

/** Opens one of the samples that came with the program. */
export const openSample = async (store: BenchStore, files: FileService, name: string): Promise<void> => {
  const answer = await files.readSample(name);
  if (answer.ok) openCarText(store, name, name, answer.value.text);
  else refuse(store, name, failureWords(answer.failure), []);
};

/** The sample that shows most: every kind of adjuster, both layouts, four setups. */
const FIRST_SAMPLE = 'saltmarsh-hatch';

/** First start: the list of samples, and one of them open. */
export const openFirstSample = async (store: BenchStore, files: FileService): Promise<void> => {
  const answer = await files.listSamples();
  if (!answer.ok) {
    refuse(store, 'Samples', failureWords(answer.failure), []);
    return;
  }
  store.setState({ samples: answer.value.map(({ name }) => name) });
  const first = answer.value.find(({ name }) => name === FIRST_SAMPLE) ?? answer.value[0];
  if (first) await openSample(store, files, first.name);
  else refuse(store, 'Samples', 'No sample came with this copy of the program. Open a car file of your own.', []);
};

/** Puts away the message about a file that was refused. */
export const dismissRefused = (store: BenchStore): void => store.setState({ refused: null });
