import { useEffect } from 'react';
import { nameOfKey } from '../adjusters/fitterWords';
import { useBench, useWindow } from '../shell/benchContext';
import { askPick, layTape } from '../state/actions/viewing';
import type { PointRef } from '../state/viewing';

const sayFrom = ({ point, side }: PointRef): string =>
  `Pick where the tape from ${nameOfKey(point).toLowerCase()}, ${side}, goes to; Esc gives up`;

/** Whether the other end of a tape from this point is being picked. */
export const useTapeFrom = (from: PointRef | null): boolean =>
  useBench(({ viewing }) => from !== null && viewing.pick?.say === sayFrom(from));

/** Lays the tape from a point to the next one that is picked in the view. What it reads stands under Lengths. */
export const TapeFrom = ({ from }: { readonly from: PointRef }) => {
  const { store } = useWindow();
  const name = nameOfKey(from.point);
  const isAsking = useTapeFrom(from);
  useEffect(() => {
    if (!isAsking) return;
    const giveUp = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      askPick(store, null);
    };
    window.addEventListener('keydown', giveUp, true);
    return () => {
      window.removeEventListener('keydown', giveUp, true);
      askPick(store, null);
    };
  }, [isAsking, store]);
  const ask = () =>
    askPick(store, {
      kind: 'point',
      say: sayFrom(from),
      onPicked: (to) => {
        // lengths are read of the axle on the bench, and a tape has two ends
        if (to.axle !== from.axle || (to.side === from.side && to.point === from.point)) return;
        askPick(store, null);
        layTape(store, [from, to]);
      },
    });
  return (
    <button
      type="button"
      className="button"
      aria-pressed={isAsking}
      aria-label={`Tape from ${name}, ${from.side}`}
      onClick={() => (isAsking ? askPick(store, null) : ask())}
    >
      Tape…
    </button>
  );
};
