import { positionOf, positionsOfList, stepsBetween, type Position } from '../../geometry/index';
import { readFileCapped, readStandardInput } from './carSource';
import { CommandError, usageError } from './commandError';
import type { Motion, Options } from './options';
import { readPositionList } from './positionList';

/** What a sweep goes through. */
export interface SweepQuestion {
  readonly motion: Motion | 'list';
  /** unit of the inputs: mm, deg, or 1 for the rows of a list */
  readonly unit: string;
  readonly inputs: readonly number[];
  readonly positions: readonly Position[];
  /** how a list was read, in words, where its fields are not separated by commas */
  readonly readAs?: string | null;
}

/** The flag that a motion sweeps, which then cannot be fixed too. */
const SWEPT = { bump: 'travel', roll: 'roll', steer: 'rack' } as const;

/** The positions of `sweep`, from a motion or from a list. */
export async function sweepQuestion(options: Options): Promise<SweepQuestion> {
  return options.list === undefined ? motionQuestion(options) : listQuestion(options, options.list);
}

function motionQuestion(options: Options): SweepQuestion {
  const { motion, from, to, steps } = options;
  if (motion === undefined || from === undefined || to === undefined || steps === undefined)
    throw usageError('a sweep needs --motion, --from, --to and --steps, or --list');
  const swept = SWEPT[motion];
  if (options[swept] !== undefined) throw usageError(`${motion} sweeps ${swept}: it cannot be fixed by "${swept}" too`);
  if (steps === 1 && from !== to) throw usageError('one step cannot include both ends: give at least 2');
  const inputs = stepsBetween(from, to, steps);
  const positions = inputs.map((input) => {
    const position = positionOf({ travel: options.travel, rack: options.rack, roll: options.roll, [swept]: input });
    if ('fault' in position) throw usageError(position.fault);
    return position;
  });
  // unequal travel on a roll sweep is no question, even where one of its inputs happens to be zero
  if (motion === 'roll' && typeof options.travel === 'object' && options.travel.left !== options.travel.right)
    throw usageError('with roll, travel is heave: left and right cannot differ');
  return { motion, unit: motion === 'roll' ? 'deg' : 'mm', inputs, positions };
}

async function listQuestion(options: Options, path: string): Promise<SweepQuestion> {
  for (const name of ['motion', 'from', 'to', 'steps', 'travel', 'rack', 'roll'] as const)
    if (options[name] !== undefined) throw usageError(`"list" gives the positions: it cannot be used with "${name}"`);
  const bytes = path === '-' ? await readStandardInput() : await readFileCapped(path);
  const read = readPositionList(bytes, path === '-' ? 'standard input' : path);
  const listed = positionsOfList(read.positions);
  if (!listed.ok) throw new CommandError({ kind: 'file', message: listed.failure });
  const positions = listed.value;
  return { motion: 'list', unit: '1', inputs: positions.map((_, index) => index + 1), positions, readAs: read.readAs };
}
