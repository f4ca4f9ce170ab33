import { useMemo, useState, type FocusEvent } from 'react';
import { isOffMark } from '../compute/adjusterSteps';
import { Segments } from '../look/controls/Segments';
import { useUnits } from '../look/units';
import { formatShort } from '../units/format';
import { lengthWords } from '../units/lengthWords';
import type { UnitChoice } from '../units/unitChoice';
import { fieldClockWords } from './clockWords';
import { AdjusterFields } from './AdjusterFields';
import type { AdjusterCardProps } from './AdjusterCard';
import { fitterWordsOfSides, partSize } from './fitterWords';
import { HeldFrame } from './HeldFrame';
import { PartDrawing } from './parts/PartDrawing';
import type { AdjusterInHand } from './useAdjuster';
import { StepButtons } from './StepButtons';
import { useTurning } from './useTurning';

const SIDES = [
  { name: 'together', label: 'L = R' },
  { name: 'apart', label: 'apart' },
] as const;
const stepWord = (hand: AdjusterInHand, units: UnitChoice): string => {
  if (hand.scale.stepName === 'mark') return '1 mark';
  const size = hand.scale.step * hand.factor;
  return hand.unit === 'mm' ? lengthWords(size, 3, units) : `${formatShort(size)} ${hand.unit}`;
};

interface HeldCardProps {
  readonly hand: AdjusterInHand;
  readonly words: string;
  /** which of its fields had the focus, or was asked for, when the card was taken in hand */
  readonly focusField: number | null;
}

/** The adjuster under the hand. */
export const HeldCard = (props: AdjusterCardProps & HeldCardProps) => {
  const { adjuster, hand, dense, focusField } = props;
  const units = useUnits();
  const { left, right } = hand.value;
  const words = useMemo(
    () => fitterWordsOfSides(adjuster, { left, right }, hand.mm, units, hand.pivotToBolt, hand.apart),
    [adjuster, left, right, hand.mm, units, hand.pivotToBolt, hand.apart],
  );
  const locked = adjuster.locked !== undefined || hand.toeDeg !== null;
  const why =
    adjuster.locked !== undefined
      ? `Locked: ${adjuster.locked}`
      : hand.toeDeg !== null
        ? 'Not turned by hand while the axle’s toe is set: clear “Set toe” first.'
        : undefined;
  // Apart, the dial is the part of the side whose number was last in hand.
  const [chosen, setChosen] = useState<'left' | 'right'>('left');
  const side = hand.apart ? chosen : 'left';
  const sides = hand.apart ? side : 'both';
  const value = hand.value[side];
  const turning = useTurning({ adjuster, side, value, locked, onSet: (next) => hand.set(sides, next) });
  const takeSide = (event: FocusEvent<HTMLElement>) => {
    if (!(event.target instanceof HTMLInputElement)) return;
    const fields = [...event.currentTarget.querySelectorAll('input')];
    setChosen(fields.indexOf(event.target) === 1 ? 'right' : 'left');
  };
  return (
    <HeldFrame
      label={hand.label}
      name={hand.label}
      note={partSize(adjuster, hand.mm, units)}
      locked={locked}
      why={why}
      dense={dense}
      focusField={focusField}
      tools={
        <Segments
          label={`${hand.label}: sides`}
          className="sides"
          options={SIDES}
          chosen={hand.apart ? 'apart' : 'together'}
          onChoose={(name) => {
            // what is pressed already changes nothing
            if (name === 'apart' && !hand.apart) hand.separate();
            if (name === 'together' && hand.apart) hand.join();
          }}
        />
      }
      hand={turning}
      dialField={side === 'right' ? 1 : 0}
      drawing={
        <PartDrawing
          adjuster={adjuster}
          value={value}
          side={side}
          mm={hand.mm}
          pivotToBolt={hand.pivotToBolt}
          size={dense ? 104 : 154}
        />
      }
    >
      <span className="fieldsinhand" onFocus={takeSide}>
        <AdjusterFields adjuster={adjuster} hand={hand} />
      </span>
      {!locked && (
        <StepButtons
          of={hand.label}
          words={stepWord(hand, units)}
          side={hand.apart ? `${side}: ` : undefined}
          onStep={(steps) => hand.step(sides, steps)}
        />
      )}
      <span className="say">{locked ? props.words : words.short}</span>
      <span className="sub">
        {adjuster.locked === undefined && why !== undefined ? why : words.detail}
        {fieldClockWords(adjuster, { left, right }, hand.apart)}
        {(isOffMark(adjuster, left) || isOffMark(adjuster, right)) && hand.toeDeg === null ? '; between marks' : ''}
      </span>
    </HeldFrame>
  );
};
