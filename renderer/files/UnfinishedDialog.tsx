import { useEffect, useRef } from 'react';
import { VerdictShape } from '../look/controls/VerdictShape';
import { countGiven } from '../points/newCar/unfinishedCar';
import { useBench, useWindow } from '../shell/benchContext';
import { putOfferOff, takeUnfinished } from '../state/actions/recoverCar';
import type { UnfinishedOffer } from '../state/filesState';
import { ThrowCopyAway } from './ThrowCopyAway';
import { clockTime, clockTimeExact } from './times';

/** Points of a new car that a window left behind, or that were put aside: it is no car yet. Nothing is thrown away unasked. */
export const UnfinishedDialog = ({ offer }: { readonly offer: UnfinishedOffer }) => {
  const { store } = useWindow();
  const { note } = offer.copy;
  const { name } = offer.unfinished.choice;
  const { given, of } = countGiven(offer.unfinished);
  const others = useBench((state) => state.unfinished?.choice.name ?? null);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    dialog.current?.querySelector<HTMLElement>('.primary')?.focus();
  }, []);
  const title = note.isParked
    ? `The points of ${name} were put aside`
    : `Jounce ended${note.endedAt === null ? '' : ` at ${clockTime(note.endedAt)}`} while the points of a new car were given`;
  return (
    <dialog ref={dialog} className="filedialog small" aria-labelledby="unfinished-title" onClose={() => putOfferOff(store)}>
      <div className="head">
        <VerdictShape verdict="close" />
        <div>
          <h2 id="unfinished-title">{title}</h2>
          <p>
            Of <b>{name}</b>, {given} of {of} points were kept at {clockTimeExact(note.keptAt)}. It is no car yet and in no file:
            this copy is all there is of it.
          </p>
          {others !== null && <p className="quiet">The points of {others} that are being given here are put aside in a copy.</p>}
        </div>
      </div>
      <div className="ways">
        <button type="button" className="button primary" onClick={() => takeUnfinished(store, offer)}>
          Go on giving its points
        </button>
        <button type="button" className="button" onClick={() => putOfferOff(store)}>
          Later
        </button>
        <span className="spread" />
        <ThrowCopyAway id={note.id} />
        <span className="quiet">Later, it stays in the File menu.</span>
      </div>
    </dialog>
  );
};
