import { sweptSpaceSteps, type KeepOut, type SideName } from '../../geometry/index';
import type { Call } from './answer';
import type { LoadedCar } from './carSource';
import { setupsInUse } from './clearance';
import { CommandError, errorOfFailure, usageError } from './commandError';
import { meshesOf } from './meshFiles';
import type { Options } from './options';
import { axlesAsked } from './question';

const DEFAULT_BOUND = 2;
const LEAST_BOUND = 0.1;
const MOST_MM = 1000;

/** What is asked of the space that parts sweep, looked at before any work. */
export interface SweptQuestion {
  readonly of: readonly string[] | 'all-moving';
  readonly grow: number;
  readonly bound: number;
}

/** @throws CommandError for what is no question */
export function sweptQuestion({ of, grow = 0, bound = DEFAULT_BOUND }: Options): SweptQuestion {
  if (of === undefined) throw usageError('--of is needed: names of parts with commas between them, or all-moving');
  if (!(grow >= 0 && grow <= MOST_MM)) throw usageError(`--grow: ${grow} is not from 0 to ${MOST_MM} mm`);
  if (!(bound >= LEAST_BOUND && bound <= MOST_MM))
    throw usageError(`--bound: ${bound} is not from ${LEAST_BOUND} to ${MOST_MM} mm`);
  const names = [...new Set((typeof of === 'string' ? of.split(',') : of).map((name) => name.trim()))];
  if (names.some((name) => name === '')) throw usageError(`--of: "${String(of)}" has a name that is empty`);
  if (names.includes('all-moving') && names.length > 1) throw usageError('--of: all-moving stands alone');
  return { of: names[0] === 'all-moving' ? 'all-moving' : names, grow, bound };
}

export const sidesAsked = ({ side }: Options): readonly SideName[] =>
  side === undefined || side === 'both' ? ['left', 'right'] : [side];

/** The space that parts sweep. @throws CommandError where there is none to be had */
export async function sweptOf(car: LoadedCar, { of, grow, bound }: SweptQuestion, { options, progress }: Call): Promise<KeepOut> {
  const setups = setupsInUse(car, options);
  const meshes = await meshesOf(car);
  // the library that searches meshes is large: it is read for cars that have one
  const library = Object.keys(meshes).length === 0 ? null : (await import('../../geometry/meshes/meshSearch')).searchMesh;
  const question = { axles: axlesAsked(car, options), sides: sidesAsked(options), setups, of, grow, bound, meshes };
  const steps = sweptSpaceSteps(car.mechanism, question, library);
  for (;;) {
    const step = steps.next();
    if (step.done !== true) {
      await progress(Math.round(100 * step.value), 100);
      continue;
    }
    const made = step.value;
    if ('failure' in made) throw new CommandError(errorOfFailure(made.failure));
    if ('refused' in made && made.refused === 'no-envelope')
      throw new CommandError({ kind: 'unreachable', message: made.message });
    if ('refused' in made) throw usageError(`${made.refused === 'unknown-part' ? '--of: ' : ''}${made.message}`);
    return made;
  }
}
