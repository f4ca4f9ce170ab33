import type { SetupAxleDocument, SetupDocument } from '../car/document';
import type { AxleMechanism, CarMechanism } from '../car/mechanism';
import type { Failure } from '../corner/failure';

const NUMBERS = ['setToe', 'rideHeight', 'springRate', 'barRate'] as const;
const SIDES = ['both', 'left', 'right'] as const;
const KEYS: readonly string[] = [...SIDES, ...NUMBERS, 'barHole', 'wheel'];

/**
 * What of a setup cannot be meant: an axle or an adjuster that the car has not, a key that no setup has, a number that is not
 * finite. Whatever is laid on a car is laid on it whole, or refused. Ranges and steps are not judged here: they are
 * `parseCar`'s, for a setting past its range is a fault of a file and still a question to be answered.
 */
export function refusedSetting(mechanism: CarMechanism, setup: SetupDocument): Failure | null {
  for (const name of ['front', 'rear'] as const) {
    const given = setup[name];
    if (given === undefined) continue;
    const axle = mechanism[name];
    const reason = axle === null ? `this car has no ${name} axle` : refusedOnAxle(axle, given);
    if (reason !== null)
      return { kind: 'setup', axle: name, message: `The setup cannot be laid on the ${name} axle: ${reason}.` };
  }
  return null;
}

function refusedOnAxle(axle: AxleMechanism, setup: SetupAxleDocument): string | null {
  for (const key of Object.keys(setup)) if (!KEYS.includes(key)) return `a setup has no "${key}"`;
  for (const key of NUMBERS) if (isNotFinite(setup[key])) return `${key} is ${setup[key]}, which is no finite number`;
  for (const side of SIDES) {
    const settings = setup[side];
    if (settings === undefined) continue;
    for (const name of Object.keys(settings)) {
      if (!axle.adjusters.some((adjuster) => adjuster.name === name)) return `it has no adjuster "${name}"`;
      if (isNotFinite(settings[name])) return `${side}.${name} is ${settings[name]}, which is no finite number`;
    }
  }
  const wheel: Readonly<Record<string, unknown>> = setup.wheel ?? {};
  for (const key of Object.keys(wheel)) if (isNotFinite(wheel[key])) return `wheel.${key} is no finite number`;
  return null;
}

/** Absent, and `null` for a concentric bushing, are settings; what is there has to be finite. */
const isNotFinite = (value: unknown): boolean => typeof value === 'number' && !Number.isFinite(value);
