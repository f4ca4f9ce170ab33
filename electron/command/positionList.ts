import { readPositionList as readList, type AskedPosition } from '../../geometry/index';
import { CommandError } from './commandError';

/**
 * The positions of a list, as `geometry` reads them.
 * @throws CommandError of kind file with every fault found
 */
export function readPositionList(bytes: Uint8Array, name: string): readonly AskedPosition[] {
  const read = readList(bytes);
  if (read.ok) return read.value;
  const { message, faults } = read.failure;
  throw new CommandError({ kind: 'file', message: `${name} is no list of positions: ${message}`, faults });
}
