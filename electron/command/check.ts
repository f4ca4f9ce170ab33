import {
  assembleCar,
  findSetup,
  formatPath,
  setupNames,
  type AxleName,
  type SetupDocument,
  type Warning,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { countOf, type LoadedCar } from './carSource';
import type { CheckWarningCode } from './codes';
import { usageError } from './commandError';
import { assemble, changedSetup } from './question';
import { formatPlain, heading } from './textTable';

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
  const warnings = [
    ...car.warnings,
    ...setups.flatMap((name) => warningsOfSetup(car, name, changed?.name === name ? changed.setup : findSetup(document, name))),
  ];
  return {
    document: { ok: true, name: document.name, version, axles, setups, warnings },
    words: (style) =>
      [
        heading(
          `${document.name}: ${warnings.length === 0 ? 'no faults' : `no faults, ${countOf(warnings.length, 'warning')}`}`,
          style,
        ),
        `  version ${version}; ${axles.map((axle) => `${axle} ${document[axle]?.layout}`).join(', ')}`,
        `  setups: ${setups.join(', ')}`,
        ...warnings.map((warning) => `  ${warning.path === null ? '' : `${warning.path}: `}${warning.message} [${warning.code}]`),
      ].join('\n'),
  };
}

type SetupWarning = Warning & { readonly code: CheckWarningCode };

function warningsOfSetup(car: LoadedCar, name: string, setup: SetupDocument): SetupWarning[] {
  const assembled = assembleCar(car.mechanism, setup);
  const path = formatPath(['setups', name]);
  if (!assembled.ok) return [{ code: 'setup-unreachable', path, message: assembled.failure.message }];
  return AXLES.flatMap((axle): SetupWarning[] => {
    const { toeReset } = assembled.value[axle] ?? {};
    if (!toeReset || toeReset.inRange) return [];
    const { adjuster, left, right } = toeReset;
    const reached = `${formatPlain(left)} left, ${formatPlain(right)} right`;
    const message = `The toe ${setup[axle]?.setToe}° needs ${adjuster} at ${reached}${rangeInWords(car, axle, adjuster)}.`;
    return [{ code: 'setup-toe-out-of-range', path: formatPath(['setups', name, axle, 'setToe']), message }];
  });
}

/** What an adjuster's range is, where the file gives it as one: the clocks of bolts have theirs by their kind. */
function rangeInWords({ document }: LoadedCar, axle: AxleName, name: string): string {
  const adjuster = document[axle]?.adjusters?.[name];
  if (adjuster === undefined || !('range' in adjuster)) return ', outside its range';
  const [least, most] = adjuster.range;
  return `, outside its range from ${formatPlain(least)} to ${formatPlain(most)}`;
}
