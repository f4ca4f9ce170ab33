import { readingsOf, type AxleName, type CarDocument } from '../../geometry/index';
import { settingOf, setupNamed, withAxleValue, withSetting, withSetup } from '../state/settings';
import { toFileLength } from '../units/fileLength';
import { stepSetting } from './adjusterSteps';
import { AXLE_SCALES, axleValueFrom, axleValueOf, heldAxleValue, steppedAxleValue, type AxleValueName } from './axleValues';
import { answerSetup, type SetupQuestion, type BenchRow } from './answerBench';
import { mattersOf } from './matters';
import { memoLast } from './memoLast';

/** The change that one more step of an adjuster makes to one reading, in contract units. */
export interface Effect {
  readonly key: string;
  readonly owner: 'corner' | 'axle';
  readonly name: string;
  readonly change: number;
  /** change ÷ what matters, without sign */
  readonly weight: number;
}

export type NextStep =
  | {
      readonly kind: 'step';
      /** the setting after the step, in the file's unit */
      readonly setting: number;
      /** every reading with a known weight, the heaviest first */
      readonly effects: readonly Effect[];
    }
  /** there is no step further */
  | { readonly kind: 'end' }
  /** the step has no answer at the position shown */
  | { readonly kind: 'unreachable' };

type BenchOnly = Pick<SetupQuestion, 'document' | 'setup'>;

/** Effects below this part of what matters are not worth their words. */
const WORTH_SAYING = 0.1;

/** What a move from one row to another does to the left-hand and axle readings, what matters most first. */
export const changesBetween = (
  document: CarDocument,
  now: Pick<BenchRow, 'left' | 'both'>,
  then: Pick<BenchRow, 'left' | 'both'>,
): readonly Effect[] => {
  const effects: Effect[] = [];
  for (const owner of ['corner', 'axle'] as const)
    for (const { key, name } of readingsOf(owner)) {
      const matters = mattersOf(document, key);
      const before = owner === 'corner' ? now.left[key] : now.both[key];
      const after = owner === 'corner' ? then.left[key] : then.both[key];
      if (matters === undefined || typeof before !== 'number' || typeof after !== 'number') continue;
      const difference = after - before;
      effects.push({ key, owner, name, change: difference, weight: Math.abs(difference) / matters });
    }
  return effects.filter(({ weight }) => weight >= WORTH_SAYING).sort((a, b) => b.weight - a.weight);
};

interface Trial {
  readonly document: CarDocument;
  readonly setting: number;
}

/** One more step of toe or of the ride height; 'end' where its range ends. */
const axleTrialOf = (document: CarDocument, setup: string, axle: AxleName, name: AxleValueName): Trial | 'end' => {
  const stepped = steppedAxleValue(axleValueFrom(document, setup, axle, name), 1, AXLE_SCALES[name]);
  if (stepped === axleValueOf(document, setup, axle, name)) return 'end';
  const setting = name === 'rideHeight' ? toFileLength(document, stepped) : stepped;
  return {
    document: withSetup(document, setup, withAxleValue(setupNamed(document, setup), axle, name, setting)),
    setting,
  };
};

/** The document with one more step of what is held; null for an adjuster that the axle has not. Kept while the car only moves. */
const trialOf = memoLast((document: CarDocument, setup: string, axle: AxleName, held: string): Trial | 'end' | null => {
  const axleValue = heldAxleValue(held);
  if (axleValue) return axleTrialOf(document, setup, axle, axleValue);
  const adjuster = document[axle]?.adjusters?.[held];
  if (!adjuster) return null;
  const settings = setupNamed(document, setup);
  const value = settingOf(settings, axle, held, 'left');
  const from = adjuster.kind === 'offset-bushing' ? value : (value ?? 0);
  const setting = stepSetting(adjuster, value, 1);
  if (setting === from) return 'end';
  return { document: withSetup(document, setup, withSetting(settings, axle, held, 'both', setting)), setting };
});

/**
 * What one more step of an adjuster, of toe or of the ride height does to the left-hand and axle readings at the position
 * shown, solved anew.
 * @param held - the adjuster's name, or that of a value of the axle
 * @returns null for an adjuster that the axle has not
 */
export const nextStepOf = memoLast(
  (bench: BenchOnly, axle: AxleName, position: SetupQuestion['position'], held: string, now: BenchRow): NextStep | null => {
    const { document, setup } = bench;
    const trial = trialOf(document, setup, axle, held);
    if (trial === null) return null;
    if (trial === 'end') return { kind: 'end' };
    const then = answerSetup({ document: trial.document, setup, axle, position });
    if (!then.ok) return { kind: 'unreachable' };
    return { kind: 'step', setting: trial.setting, effects: changesBetween(document, now, then.value) };
  },
);
