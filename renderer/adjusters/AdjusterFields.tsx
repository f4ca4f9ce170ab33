import type { AdjusterDocument } from '../../geometry/index';
import { NumberField } from '../look/controls/NumberField';
import { hoursTyped } from './hoursTyped';
import type { Sides } from '../state/settings';
import type { AdjusterInHand } from './useAdjuster';

const SPOKEN = { both: 'left and right', left: 'left', right: 'right' } as const;
const MARKS = { both: '=', left: 'L', right: 'R' } as const;

/** Why a number cannot be typed into an adjuster's field; undefined where it can. */
const reasonOf = (adjuster: AdjusterDocument, hand: AdjusterInHand): string | undefined => {
  if (hand.toeDeg !== null) return `Set by toe: the adjuster is turned until toe is ${hand.toeDeg}°.`;
  return adjuster.locked === undefined ? undefined : `Locked: ${adjuster.locked}`;
};

const Field = ({ adjuster, hand, sides }: { adjuster: AdjusterDocument; hand: AdjusterInHand; sides: Sides }) => {
  const setting = hand.value[sides === 'right' ? 'right' : 'left'];
  const bushing = adjuster.kind === 'offset-bushing';
  const shown = setting === null ? (bushing ? null : 0) : setting * hand.factor;
  return (
    <NumberField
      label={`${hand.label}, ${SPOKEN[sides]}, ${hand.unit === '°' ? 'degrees' : hand.unit}`}
      value={shown}
      absent={bushing ? 'none' : ''}
      unit={hand.unit}
      measures={hand.unit === 'mm' ? 'length' : undefined}
      moreUnits={hoursTyped(adjuster, sides)}
      hint={bushing ? '10h: the hole as it is seen at 10 o’clock; emptied: concentric' : undefined}
      min={hand.scale.min * hand.factor}
      max={hand.scale.max * hand.factor}
      className={hand.toeDeg !== null ? 'derived' : adjuster.locked !== undefined ? 'locked' : ''}
      lockedBy={reasonOf(adjuster, hand)}
      before={
        <span className={`side ${sides}`} aria-hidden="true">
          {MARKS[sides]}
        </span>
      }
      onSet={(value) => hand.set(sides, Number((value / hand.factor).toFixed(9)))}
      onClear={bushing ? () => hand.set(sides, null) : undefined}
      onStep={(steps) => hand.step(sides, steps)}
      onHome={() => hand.set(sides, 0)}
    />
  );
};

/** One field where left and right are one number, two where they are not. */
export const AdjusterFields = ({ adjuster, hand }: { adjuster: AdjusterDocument; hand: AdjusterInHand }) => (
  <span className="fields">
    {hand.apart ? (
      <>
        <Field adjuster={adjuster} hand={hand} sides="left" />
        <Field adjuster={adjuster} hand={hand} sides="right" />
      </>
    ) : (
      <Field adjuster={adjuster} hand={hand} sides="both" />
    )}
  </span>
);
