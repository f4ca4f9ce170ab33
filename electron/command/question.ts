import {
  assembleCar,
  findSetup,
  parseCar,
  positionOf,
  setupNames,
  suggest,
  type AskedPosition,
  type AssembledCar,
  type AxleName,
  type Position,
  type SetupDocument,
  type StoodSetup,
} from '../../geometry/index';
import { withoutPlace, type LoadedCar } from './carSource';
import { CommandError, errorOfFailure, usageError } from './commandError';
import type { Options, Setting } from './options';
import { applySettings } from './settings';

/** A setup of the car by its name; the first when no name is given. */
export function chooseSetup(car: LoadedCar, name: string | undefined): { readonly name: string; readonly setup: SetupDocument } {
  const names = setupNames(car.document);
  const wanted = name ?? names[0] ?? 'Baseline';
  if (!names.includes(wanted)) {
    throw new CommandError({
      kind: 'setup',
      message: `the car has no setup "${wanted}"`,
      faults: [
        {
          code: 'unknown-setup',
          path: 'setups',
          line: null,
          column: null,
          found: JSON.stringify(wanted),
          expected: names.map((known) => JSON.stringify(known)).join(', '),
          hint: suggest(wanted, names),
        },
      ],
    });
  }
  return { name: wanted, setup: findSetup(car.document, wanted) };
}

/** The setup with `--set` applied; what the file's rules say against it is a fault of the setup. */
export function changedSetup(car: LoadedCar, name: string | undefined, settings: readonly Setting[] = []) {
  const chosen = chooseSetup(car, name);
  if (settings.length === 0) return chosen;
  const setup = applySettings(car.document, chosen.setup, settings);
  const judged = parseCar(JSON.stringify({ ...car.document, setups: { ...car.document.setups, [chosen.name]: setup } }));
  if (judged.ok) return { name: chosen.name, setup };
  throw new CommandError({
    kind: 'setup',
    message: `setup "${chosen.name}" cannot be changed so`,
    faults: judged.failure.faults.map(withoutPlace),
  });
}

/** The car put together in a setup; a setup whose toe or ride height cannot be reached answers nothing. */
export function assemble(car: LoadedCar, setup: SetupDocument): AssembledCar {
  const assembled = assembleCar(car.mechanism, setup);
  if (assembled.ok) return assembled.value;
  throw new CommandError(errorOfFailure(assembled.failure));
}

/** Setups that stay put together per car: a batch asks the same ones again and again. */
const MOST_KEPT = 32;
const KEPT = new WeakMap<LoadedCar, Map<string, { readonly name: string; readonly assembled: AssembledCar }>>();

/** The car put together in a setup changed by `--set`, by the setup's name. */
export function assembledSetup(car: LoadedCar, name: string | undefined, settings: readonly Setting[] = []) {
  const kept = KEPT.get(car) ?? new Map<string, { readonly name: string; readonly assembled: AssembledCar }>();
  KEPT.set(car, kept);
  const key = JSON.stringify([name, settings]);
  const before = kept.get(key);
  if (before) return before;
  const chosen = changedSetup(car, name, settings);
  const made = { name: chosen.name, assembled: assemble(car, chosen.setup) };
  const [oldest] = kept.keys();
  if (kept.size >= MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  kept.set(key, made);
  return made;
}

/** The setups in use, put together, and those that cannot be. */
export interface SetupsAsked {
  readonly setups: readonly StoodSetup[];
  readonly left: readonly { readonly name: string; readonly message: string }[];
}

/**
 * Those of `--setups`; without it the one of `--setup`, changed by `--set`; without either all of the file.
 * @throws CommandError where none of them can be put together
 */
export function setupsAsked(car: LoadedCar, { setups, setup, set }: Options): SetupsAsked {
  if (setup !== undefined || set !== undefined) {
    if (setups !== undefined)
      throw usageError('--setups and --setup or --set say two things: ask for setups as they are, or for one with changes');
    const { name, assembled } = assembledSetup(car, setup, set);
    return { setups: [{ name, car: assembled }], left: [] };
  }
  const known = setupNames(car.document);
  const names = setups === undefined ? known : typeof setups === 'string' ? namesIn(setups, known) : setups;
  const stood: StoodSetup[] = [];
  const left: { name: string; message: string }[] = [];
  let failed: unknown = null;
  for (const name of new Set(names)) {
    const chosen = chooseSetup(car, name);
    try {
      stood.push({ name, car: assemble(car, chosen.setup) });
    } catch (error) {
      if (!(error instanceof CommandError)) throw error;
      failed ??= error;
      left.push({ name, message: error.message });
    }
  }
  if (stood.length === 0) throw failed;
  return { setups: stood, left };
}

/** Names with commas between them; a name of the file may hold a comma itself. */
export function namesIn(text: string, known: readonly string[]): string[] {
  if (known.includes(text)) return [text];
  for (const name of known) {
    if (!text.startsWith(`${name},`)) continue;
    const rest = namesIn(text.slice(name.length + 1).trimStart(), known);
    if (rest.every((one) => known.includes(one))) return [name, ...rest];
  }
  return text.split(',').map((name) => name.trim());
}

/** What an answer in words is of: the car, its setup with the changes of this call, and the setup it is compared with. */
export function titleOf(car: LoadedCar, setup: string, { set = [], against }: Pick<Options, 'set' | 'against'>): string {
  const changes = set.map(({ name, value }) => `${name}=${value ?? 'none'}`).join(', ');
  const changed = changes === '' ? '' : ` with ${changes}`;
  return `${car.document.name}, setup ${setup}${changed}${against === undefined ? '' : `, against ${against}`}`;
}

/** The same of several setups. */
export const titleOfSetups = (car: LoadedCar, setups: readonly StoodSetup[], options: Options): string =>
  options.setup !== undefined || options.set !== undefined
    ? titleOf(car, setups[0]?.name ?? '', options)
    : `${car.document.name}, ${setups.length === 1 ? 'setup' : 'setups'} ${setups.map(({ name }) => name).join(', ')}`;

const AXLES: readonly AxleName[] = ['front', 'rear'];

/** The axles asked for: the one of `--axle`, which must exist, or those that the car has. */
export function axlesAsked(car: LoadedCar, options: Options): readonly AxleName[] {
  if (options.axle === undefined) return AXLES.filter((axle) => car.document[axle] !== undefined);
  if (car.document[options.axle] === undefined) throw usageError(`this car has no ${options.axle} axle`);
  return [options.axle];
}

/** The position of a call's flags. */
export function askedPosition(options: AskedPosition): Position {
  const position = positionOf(options);
  if ('fault' in position) throw usageError(position.fault);
  return position;
}
