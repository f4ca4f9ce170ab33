import { readPositionList as readList } from '../../geometry/index';
import { CommandError } from './commandError';

/**
 * The positions of a list, as `geometry` reads them, and how they were read.
 * @throws CommandError of kind file with every fault found
 */
export function readPositionList(bytes: Uint8Array, name: string) {
  const read = readList(bytes);
  if (read.ok) return read.value;
  const { message, faults } = read.failure;
  throw new CommandError({ kind: 'file', message: `${name} is no list of positions: ${message}`, faults });
}
