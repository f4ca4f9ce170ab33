import type { Answer, Call } from './answer';
import { usageError } from './commandError';
import { pathOut } from './pathOut';
import { pointsIn } from './pointsIn';
import { pointsOut } from './pointsOut';

/** Options that say how a list is to be understood, and those that say where the car is: no call has both. */
const OF_A_LIST = ['axes', 'units', 'datum', 'mirror', 'average', 'map', 'out'] as const;
const OF_A_POSITION = ['setup', 'set', 'travel', 'rack', 'roll', 'csv', 'path'] as const;
const OF_A_PATH = ['motion', 'from', 'to', 'steps', 'list'] as const;

/** `points`: a list of coordinates brought to the car, the car's points at a position, or the path of one. */
export async function answer(call: Call): Promise<Answer> {
  const { car, options } = call;
  if (!car) throw usageError('a car is needed');
  const list = options.in !== undefined;
  for (const name of list ? OF_A_POSITION : OF_A_LIST)
    if (options[name] !== undefined)
      throw usageError(
        list
          ? `--${name} is of the car's own points: it goes without a list`
          : `--${name} says how a list is to be read: name the list`,
      );
  if (options.side !== undefined && !list && options.path === undefined)
    throw usageError('--side goes with a list, or with --path');
  for (const name of OF_A_PATH)
    if (options[name] !== undefined && options.path === undefined)
      throw usageError(`--${name} goes with --path: name the point that goes along`);
  if (options.force && options.out === undefined && options.csv === undefined)
    throw usageError('--force goes with --out or --csv');
  if (options.in !== undefined) return pointsIn(call, car, options.in);
  return options.path === undefined ? pointsOut(call, car) : pathOut(call, car, options.path);
}
