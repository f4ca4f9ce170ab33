import { assembleCar, findSetup, setupNames, type Warning } from '../../geometry/index';
import type { Answer, Call } from './answer';
import { countOf, type LoadedCar } from './carSource';
import { usageError } from './commandError';
import { assemble, changedSetup } from './question';
import { heading } from './textTable';

/** `check`: reads and judges the file. A setup that cannot be put together is a warning: the file itself is sound. */
export async function answer(call: Call): Promise<Answer> {
  const { car, options } = call;
  if (!car) throw usageError('a car is needed');
  // a setup that is named, or changed for this call, has to stand
  if (options.setup !== undefined || options.set !== undefined)
    assemble(car, changedSetup(car, options.setup, options.set).setup);
  const { document } = car;
  const axles = (['front', 'rear'] as const).filter((axle) => document[axle] !== undefined);
  const setups = setupNames(document);
  const version = car.olderVersion ?? document.version;
  const warnings = [...car.warnings, ...setups.flatMap((name) => warningsOfSetup(car, name))];
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

function warningsOfSetup(car: LoadedCar, name: string): Warning[] {
  const assembled = assembleCar(car.mechanism, findSetup(car.document, name));
  if (assembled.ok) return [];
  return [{ code: 'setup-unreachable', path: `setups.${name}`, message: assembled.failure.message }];
}
