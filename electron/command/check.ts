import {
  assembleCar,
  findSetup,
  formatPath,
  inContractUnits,
  kindWarnings,
  openEdges,
  openMeshWarning,
  readingsOfCar,
  setupNames,
  threadsOf,
  threadWarning,
  type AssembledCar,
  type AxleName,
  type SetupDocument,
  type Warning,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { countOf, type LoadedCar } from './carSource';
import type { CheckWarningCode } from './codes';
import { usageError } from './commandError';
import { readMeshes } from './meshFiles';
import { assemble, changedSetup } from './question';
import { formatPlain, harmless, heading, wrap } from './textTable';

const AXLES = ['front', 'rear'] as const;

/** `check`: reads and judges the file. A setup that cannot be put together is a warning: the file itself is sound. */
export async function answer(call: Call): Promise<Answer> {
  const { car, options } = call;
  if (!car) throw usageError('a car is needed');
  // a setup that is named, or changed for this call, has to stand
  const changed = options.setup !== undefined || options.set !== undefined ? changedSetup(car, options.setup, options.set) : null;
  if (changed !== null) assemble(car, changed.setup);
  const { document } = car;
  const axles = AXLES.filter((axle) => document[axle] !== undefined);
  const setups = setupNames(document);
  const version = car.olderVersion ?? document.version;
  const idle = new Set(axles.filter((axle) => hasIdleToeAdjuster(car, axle)));
  const warnings = [
    ...car.warnings,
    ...(await meshWarnings(car)),
    ...kindWarnings(document).map((warning) => ({ ...warning, code: warning.code as CheckWarningCode })),
    ...axles.filter((axle) => idle.has(axle)).map((axle) => idleToeAdjuster(car, axle)),
    ...setups.flatMap((name) =>
      warningsOfSetup(car, name, changed?.name === name ? changed.setup : findSetup(document, name), idle),
    ),
  ];
  return {
    document: { ok: true, name: document.name, version, axles, setups, warnings },
    words: (style) =>
      [
        ...wrap(
          `${document.name}: ${warnings.length === 0 ? 'no faults' : `no faults, ${countOf(warnings.length, 'warning')}`}`,
          '  ',
        ).map((line) => heading(line, style)),
        `  version ${version}; ${axles.map((axle) => `${axle} ${document[axle]?.layout}`).join(', ')}`,
        ...wrap(`  setups: ${setups.join(', ')}`, '    ').map(harmless),
        ...warnings.flatMap(({ path, message, code }) =>
          wrap(`  ${path === null ? '' : `${path}: `}${message} [${code}]`, '    ').map(harmless),
        ),
      ].join('\n'),
  };
}

/** Parts whose mesh is not closed, or cannot be read: the file itself is sound, what needs the mesh refuses. */
async function meshWarnings(car: LoadedCar): Promise<SetupWarning[]> {
  const { meshes, bad } = await readMeshes(car);
  const open = Object.entries(meshes).flatMap(([name, triangles]): SetupWarning[] => {
    const count = openEdges(triangles);
    return count === 0 ? [] : [{ ...openMeshWarning(name, count), code: 'mesh-open' }];
  });
  const unread = bad.map(({ path, found, hint }): SetupWarning => ({
    code: 'mesh-unreadable',
    path: formatPath(path),
    message: `No mesh: ${found}; ${hint}.`,
  }));
  return [...unread, ...open];
}

type SetupWarning = Warning & { readonly code: CheckWarningCode };

function warningsOfSetup(car: LoadedCar, name: string, setup: SetupDocument, idle: ReadonlySet<AxleName>): SetupWarning[] {
  const assembled = assembleCar(car.mechanism, setup);
  const path = formatPath(['setups', name]);
  const { axle: failed } = assembled.ok ? {} : assembled.failure;
  // said once, of the axle
  if (failed !== undefined && idle.has(failed) && setup[failed]?.setToe !== undefined) return [];
  if (!assembled.ok) return [{ code: 'setup-unreachable', path, message: assembled.failure.message }];
  return [...toeWarnings(car, assembled.value, name), ...threadWarnings(assembled.value, name)];
}

function toeWarnings(car: LoadedCar, assembled: AssembledCar, name: string): SetupWarning[] {
  return AXLES.flatMap((axle): SetupWarning[] => {
    const { toeReset } = assembled[axle] ?? {};
    if (!toeReset || toeReset.inRange) return [];
    const { adjuster, left, right } = toeReset;
    const reached = `${formatPlain(left)} left, ${formatPlain(right)} right`;
    const message = `The toe ${assembled.setup[axle]?.setToe}° needs ${adjuster} at ${reached}${rangeInWords(car, axle, adjuster)}.`;
    return [{ code: 'setup-toe-out-of-range', path: formatPath(['setups', name, axle, 'setToe']), message }];
  });
}

/** Threads that hold by little as the setup leaves them; what is so on both sides alike is said once. */
function threadWarnings(assembled: AssembledCar, name: string): SetupWarning[] {
  return AXLES.flatMap((axle): SetupWarning[] => {
    const own = assembled[axle];
    if (own === null) return [];
    const of = (side: 'left' | 'right') =>
      threadsOf(own.mechanism, own[side], assembled.mechanism.mmPerUnit).map((thread) => threadWarning(axle, thread));
    const [left, right] = [of('left'), of('right')];
    return left.flatMap((one, i): SetupWarning[] => {
      const other = right[i] ?? null;
      const isSame = one !== null && other !== null && one.message === other.message;
      const said = isSame
        ? [['', one] as const]
        : ([
            ['left', one],
            ['right', other],
          ] as const);
      return said.flatMap(([side, found]) => {
        if (found === null) return [];
        const where = side === '' ? axle : `${axle} ${side}`;
        const code = found.code as CheckWarningCode;
        return [{ code, path: formatPath(['setups', name]), message: `${where}: ${found.message}` }];
      });
    });
  });
}

/** Less toe than this is none that an adjuster makes [deg]. */
const NO_TOE = 1e-9;
/** A setting that every kind of adjuster can have, in mm, turns or degrees. */
const SMALL_SETTING = 0.5;

/** Whether the adjuster that is to set toe leaves it as it is. */
function hasIdleToeAdjuster({ document, mechanism }: LoadedCar, axle: AxleName): boolean {
  const name = document[axle]?.toeAdjuster;
  if (name === undefined) return false;
  const toe = (setting: number): number | null => {
    const assembled = assembleCar(mechanism, { [axle]: { both: { [name]: setting } } });
    const row = assembled.ok ? readingsOfCar(assembled.value, { travel: 0 })[axle] : null;
    return row?.ok ? (inContractUnits(row.value).left['toe'] as number) : null;
  };
  const [one, other] = [toe(SMALL_SETTING), toe(2 * SMALL_SETTING)];
  return one !== null && other !== null && Math.abs(one - other) < NO_TOE;
}

function idleToeAdjuster({ document }: LoadedCar, axle: AxleName): SetupWarning {
  const name = document[axle]?.toeAdjuster ?? '';
  const kind = document[axle]?.adjusters?.[name]?.kind ?? '';
  const message = `${name} (${kind}) does not change toe: setToe cannot be reached by it, and no setup that asks for one can be put together.`;
  return { code: 'toe-adjuster-idle', path: formatPath([axle, 'toeAdjuster']), message };
}

/** What an adjuster's range is, where the file gives it as one: the clocks of bolts have theirs by their kind. */
function rangeInWords({ document }: LoadedCar, axle: AxleName, name: string): string {
  const adjuster = document[axle]?.adjusters?.[name];
  if (adjuster === undefined || !('range' in adjuster)) return ', outside its range';
  const [least, most] = adjuster.range;
  return `, outside its range from ${formatPlain(least)} to ${formatPlain(most)}`;
}
