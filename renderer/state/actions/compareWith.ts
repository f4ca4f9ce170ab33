import { parseCarBytes, setupNames, type CarDocument } from '../../../geometry/index';
import { benchOf, type BenchStore } from '../benchStore';
import type { AgainstCar } from '../compared';
import { chooseAgainst } from './editSetup';

/** The setup of another car to begin with: of the same name, the one that is on that car, or its first. */
const firstSetupOf = (document: CarDocument, wanted: string): string => {
  const names = setupNames(document);
  return [wanted, document.onCar].find((name) => name !== undefined && names.includes(name)) ?? names[0] ?? wanted;
};

/** What the other car is called: as its file says, and by its file too where the car on the bench has the same name. */
const titleOf = ({ name }: CarDocument, file: string, own: CarDocument): string =>
  name === '' || name === undefined ? file : name === own.name ? `${name} in ${file}` : name;

/**
 * Opens the bytes of another car file to be compared with; what is on the bench stays.
 * @returns false for a file with faults, which is refused with them
 */
export const compareWithFile = (store: BenchStore, name: string, bytes: Uint8Array): boolean => {
  const bench = benchOf(store.getState());
  if (!bench) return false;
  const read = parseCarBytes(bytes);
  if (!read.ok) {
    const { faults } = read.failure;
    const message = `It has ${faults.length === 1 ? 'a fault' : `${faults.length} faults`}, so nothing is compared with it.`;
    store.setState({ refused: { title: name, message, faults, text: new TextDecoder().decode(bytes) } });
    return false;
  }
  const { document } = read.value;
  const car: AgainstCar = { kind: 'file', title: titleOf(document, name, bench.document), document };
  chooseAgainst(store, firstSetupOf(document, bench.setup), car);
  return true;
};
