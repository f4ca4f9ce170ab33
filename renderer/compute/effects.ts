import { readingsOf, type AxleName, type CarDocument } from '../../geometry/index';
import { settingOf, setupNamed, withSetting, withSetup } from '../state/settings';
import { stepSetting } from './adjusterSteps';
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

export interface NextStep {
  /** the setting after the step, in the file's unit */
  readonly setting: number;
  /** every reading with a known weight, the heaviest first */
  readonly effects: readonly Effect[];
}

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

/** The document with one more step of an adjuster; null at the end of its range. Kept while the car only moves. */
const trialOf = memoLast((document: CarDocument, setup: string, axle: AxleName, adjusterName: string): Trial | null => {
  const adjuster = document[axle]?.adjusters?.[adjusterName];
  if (!adjuster) return null;
  const settings = setupNamed(document, setup);
  const value = settingOf(settings, axle, adjusterName, 'left');
  const setting = stepSetting(adjuster, value, 1);
  if (setting === value) return null;
  return { document: withSetup(document, setup, withSetting(settings, axle, adjusterName, 'both', setting)), setting };
});

/**
 * What one more step of an adjuster does to the left-hand and axle readings at the position shown, solved anew.
 * @returns null at the end of the range, for an adjuster that the axle has not, or where the step cannot be reached
 */
export const nextStepOf = memoLast(
  (
    bench: BenchOnly,
    axle: AxleName,
    position: SetupQuestion['position'],
    adjusterName: string,
    now: BenchRow,
  ): NextStep | null => {
    const { document, setup } = bench;
    const trial = trialOf(document, setup, axle, adjusterName);
    if (!trial) return null;
    const then = answerSetup({ document: trial.document, setup, axle, position });
    return then.ok ? { setting: trial.setting, effects: changesBetween(document, now, then.value) } : null;
  },
);
