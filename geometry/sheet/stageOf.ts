import type { AdjusterDocument, AxleName, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { mattersOf } from '../car/tolerances';
import { findReading } from '../readings/catalogue';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import { sweepReadings } from '../readings/readings';
import { assembleCar } from '../setup/assembleCar';
import { settingOf, withAxleValue, withSetting } from '../setup/setupEdits';

/** When a part is turned: what comes later does not undo what came before. */
export type Stage = 'heights' | 'other' | 'caster' | 'camber' | 'bumpSteer' | 'toe';

/** What a part may be there for, in the order of the work. */
const EFFECTS = ['caster', 'camber', 'bumpSteer'] as const;
type Effect = (typeof EFFECTS)[number];

/** A part that moves none of them by a twentieth of what matters is turned for something else. */
const LEAST = 0.05;

const readEffects = (
  mechanism: CarMechanism,
  setup: SetupDocument,
  axle: AxleName,
): Readonly<Record<Effect, number>>[] | null => {
  const car = assembleCar(mechanism, setup, [axle]);
  if (!car.ok) return null;
  const row = sweepReadings(car.value, axle, [{}], EFFECTS, false)[0];
  if (!row?.ok) return null;
  return (['left', 'right'] as const).map((side) => {
    const read = (key: Effect): number => {
      const value = (row.value[side] as Readonly<Record<string, ReadingValue>>)[key] ?? null;
      const converted = valueInContractUnits(value, findReading(key)!.quantity);
      return typeof converted === 'number' ? converted : 0;
    };
    return { caster: read('caster'), camber: read('camber'), bumpSteer: read('bumpSteer') };
  });
};

/** A setup whose other parts stand as wanted and whose toe is left as it falls, with one part as it was. */
const withPartAsBefore = (to: SetupDocument, from: SetupDocument, axle: AxleName, key: string): SetupDocument =>
  (['left', 'right'] as const).reduce((setup, side) => withSetting(setup, axle, key, side, settingOf(from, axle, key, side)), to);

/**
 * When a part that differs between two setups is turned: by what it changes most, each change against what matters of that
 * reading. Perches go with the heights, what resets toe goes last.
 */
export const stageOf = (
  mechanism: CarMechanism,
  axle: AxleName,
  key: string,
  adjuster: AdjusterDocument,
  to: SetupDocument,
  from: SetupDocument,
): Stage => {
  const document = mechanism.document;
  if (adjuster.kind === 'perch') return 'heights';
  if (document[axle]?.toeAdjuster === key) return 'toe';
  const wanted = withAxleValue(to, axle, 'setToe', null);
  const after = readEffects(mechanism, wanted, axle);
  const before = readEffects(mechanism, withPartAsBefore(wanted, from, axle, key), axle);
  if (after === null || before === null) return 'other';
  const isSteered = document[axle]?.steering !== undefined;
  let stage: Stage = 'other';
  let most = LEAST;
  for (const effect of EFFECTS) {
    if (effect === 'caster' && !isSteered) continue;
    const change = Math.max(...after.map((side, index) => Math.abs(side[effect] - before[index]![effect])));
    const weight = change / (mattersOf(document, effect) ?? 1);
    if (weight <= most) continue;
    most = weight;
    stage = effect;
  }
  return stage;
};
