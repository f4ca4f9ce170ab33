import { setupNames, type AxleName, type ClearanceAnswer, type SetupDocument, type SideName } from '../../geometry/index';
import type { Answer, Call } from './answer';
import type { LoadedCar } from './carSource';
import { CLEARANCE_CAUTIONS } from './cautions';
import { clearanceInWords } from './clearanceTable';
import { CommandError, usageError } from './commandError';
import { meshesOf } from './meshFiles';
import type { Options } from './options';
import { axlesAsked, changedSetup, namesIn } from './question';
import { UNITS } from './readings';

/** `clearance`: the least distance of every two parts that move against each other, over everything that the wheels can do. */
export async function answer({ car, options, study }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const { document } = car;
  const setups = setupsInUse(car, options);
  const sides: readonly SideName[] = options.side === undefined || options.side === 'both' ? ['left', 'right'] : [options.side];
  const axles: readonly AxleName[] = axlesAsked(car, options);
  const meshes = await meshesOf(car);
  const answered = await study({
    study: 'clearance',
    document,
    question: { axles, sides, setups, meshes, ground: options.ground === true },
  });
  refuseNothingKnown(answered);
  const names = setups.map(([name]) => name);
  return {
    document: { car: document.name, setups: names, units: UNITS, ...answered, notes: CLEARANCE_CAUTIONS },
    words: (style) => clearanceInWords(document, names, answered, style),
  };
}

/** Where no wheel that is asked about has an envelope nothing is answered but how high parts are over the ground. */
function refuseNothingKnown({ envelope, missing, warnings, ground }: ClearanceAnswer): void {
  if (envelope.length > 0 || (ground !== undefined && ground.rows.length > 0)) return;
  const lacking = warnings.filter(({ code }) => code === 'no-envelope').map(({ message }) => message);
  throw new CommandError({ kind: 'unreachable', message: (lacking.length === 0 ? missing : lacking).join('\n') });
}

/** The setups that the envelope is taken over: those of `--setups`, the one of `--setup` with its changes, else all. */
export function setupsInUse(car: LoadedCar, options: Options): readonly (readonly [string, SetupDocument])[] {
  const { setup, set, setups } = options;
  if (setups !== undefined && (setup !== undefined || set !== undefined))
    throw usageError('--setups and --setup or --set say two things: ask for setups as they are, or for one with changes');
  if (setup !== undefined || set !== undefined) {
    const { name, setup: changed } = changedSetup(car, setup, set);
    return [[name, changed]];
  }
  const known = setupNames(car.document);
  const names = setups === undefined ? known : typeof setups === 'string' ? namesIn(setups, known) : setups;
  const distinct = [...new Set(names.length === 0 ? [undefined] : names)];
  return distinct.map((name) => {
    const chosen = changedSetup(car, name);
    return [chosen.name, chosen.setup];
  });
}
