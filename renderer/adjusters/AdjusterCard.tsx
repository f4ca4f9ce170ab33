import { useRef, type FocusEvent } from 'react';
import type { AdjusterDocument } from '../../geometry/index';
import { useBench, useWindow } from '../shell/benchContext';
import { holdAdjuster } from '../state/actions/lookAt';
import { AdjusterFields } from './AdjusterFields';
import { useUnits } from '../look/units';
import { fitterWordsOfSides } from './fitterWords';
import { HeldCard } from './HeldCard';
import { LockShape } from './LockShape';
import { PartDrawing } from './parts/PartDrawing';
import { formatShort } from '../units/format';
import { shownQuantity, withUnit } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import { useAdjuster, type AdjusterInHand } from './useAdjuster';

const toeWords = (toeDeg: number, units: ShownUnits): string => {
  const toe = shownQuantity({ quantity: 'angle', decimals: 2, isToe: true }, units);
  // in decimal degrees as it was typed
  return toe.unit === '°' ? `${formatShort(toeDeg)}°` : withUnit(toe.format(toeDeg), toe.unit);
};

const wordsOf = (adjuster: AdjusterDocument, hand: AdjusterInHand, units: ShownUnits): string => {
  if (adjuster.locked !== undefined) return `locked: ${adjuster.locked}`;
  const words = fitterWordsOfSides(adjuster, hand.value, hand.mm, units, hand.pivotToBolt, hand.apart).short;
  if (hand.toeDeg === null) return words;
  return `${words}; ${hand.outOfRange ? 'past its range' : `sets toe to ${toeWords(hand.toeDeg, units)}`}`;
};

export interface AdjusterCardProps {
  readonly name: string;
  readonly adjuster: AdjusterDocument;
  readonly dense: boolean;
}

/** One adjuster: at rest a line with its part, in hand a blued card with its dial. */
export const AdjusterCard = ({ name, adjuster, dense }: AdjusterCardProps) => {
  const { store } = useWindow();
  const held = useBench((state) => state.held === name);
  const hand = useAdjuster(name, adjuster);
  const units = useUnits();
  // The card in hand is another tree: the focus is handed over to the same field of it.
  const focusField = useRef<number | null>(null);
  const hold = (field: number) => {
    focusField.current = field;
    holdAdjuster(store, name);
  };
  const holdFocused = (event: FocusEvent<HTMLElement>) =>
    hold([...event.currentTarget.querySelectorAll('input')].indexOf(event.target as HTMLInputElement));
  if (held)
    return (
      <HeldCard
        name={name}
        adjuster={adjuster}
        hand={hand}
        dense={dense}
        words={wordsOf(adjuster, hand, units)}
        focusField={focusField.current}
      />
    );
  return (
    <div
      className={`card${adjuster.locked === undefined ? '' : ' lockedcard'}`}
      role="group"
      aria-label={hand.label}
      onClick={() => hold(0)}
      onFocus={holdFocused}
    >
      {hand.differs && <i className="changed" title="differs from the compared setup" />}
      <PartDrawing
        adjuster={adjuster}
        value={hand.value.left}
        mm={hand.mm}
        pivotToBolt={hand.pivotToBolt}
        size={dense ? 40 : 64}
        className="mini"
      />
      <span className="cardtext">
        <span className="cardname">
          {adjuster.locked !== undefined && <LockShape />}
          {hand.label}
        </span>
        <span className="cardwords" title={wordsOf(adjuster, hand, units)}>
          {wordsOf(adjuster, hand, units)}
        </span>
      </span>
      <AdjusterFields adjuster={adjuster} hand={hand} />
    </div>
  );
};
