import { useEffect, useMemo, useRef } from 'react';
import { PartDrawing } from '../adjusters/parts/PartDrawing';
import { useUnits } from '../look/units';
import { VerdictShape } from '../look/controls/VerdictShape';
import { useBench, useWindow } from '../shell/benchContext';
import { putOfferOff, takeBoth, takeCopy, takeSaved, wasNeverSaved } from '../state/actions/recoverCar';
import type { Offer } from '../state/filesState';
import { mmPerFileUnit } from '../units/fileLength';
import { carDifferences, type CarDifference } from './carDifferences';
import { clockTime, clockTimeExact } from './times';
import { placesOnLine } from './timeLine';
import { ThrowCopyAway } from './ThrowCopyAway';

const changes = (count: number): string => (count === 1 ? '1 change' : `${count} changes`);

/** What the copy is held against: the file, the sample that it grew from, or the text that was opened and is in no file known. */
const savedWords = ({ copy: { note }, version }: Offer): { readonly open: string; readonly head: string } => {
  if (version === null && note.sample !== null) return { open: 'Open the sample as it is', head: 'In the sample' };
  if (version === null && note.savedAt === null) return { open: 'Open it as it was opened', head: 'As opened' };
  return { open: 'Open the file as saved', head: 'In the file' };
};

/** Of which car it is, where others have the same name. */
const sourceWords = ({ copy: { note } }: Offer): string => {
  if (note.sample !== null) return ', the sample,';
  return note.folder === null ? '' : `, from ${note.name} in ${note.folder},`;
};

/** How the file stands by now that the copy is one of. */
const wordsOfFile = (offer: Offer): string => {
  const { note } = offer.copy;
  if (wasNeverSaved(offer)) return 'It is in no file yet.';
  if (offer.isFileNewer) {
    const at = offer.version ? ` (${clockTime(offer.version.savedAt)})` : '';
    return `The file itself was changed by somebody else since${at}: saving the copy asks first.`;
  }
  if (note.sample !== null) return 'The sample itself stays as it is.';
  if (note.folder === null) return 'The browser does not tell where its file is: saving the copy asks where to.';
  return offer.version === null ? `The file itself is not in ${note.folder} any more.` : 'The file itself is as you saved it.';
};

/** Saved, every change as a tick, kept, ended: on one line. */
const TimeLine = ({ offer }: { readonly offer: Offer }) => {
  const { savedAt, keptAt, endedAt, steps } = offer.copy.note;
  const from = savedAt ?? steps[0]?.at ?? keptAt;
  return (
    <div className="timeline">
      <span className="end">
        <i />
        <b>{savedAt === null ? '–' : clockTime(savedAt)}</b>
        <small>{savedAt === null ? 'never saved' : 'saved'}</small>
      </span>
      <span className="line" role="img" aria-label={`${changes(steps.length)} in between`}>
        {placesOnLine(
          steps.map(({ at }) => at),
          from,
          keptAt,
        ).map((place, index) => (
          <i key={index} style={{ left: `${place}%` }} title={steps[index]?.name} />
        ))}
      </span>
      <span className="end">
        <i />
        <b>{clockTime(keptAt)}</b>
        <small>kept copy</small>
      </span>
      {endedAt !== null && (
        <span className="end last">
          <i />
          <b>{clockTime(endedAt)}</b>
          <small>ended</small>
        </span>
      )}
    </div>
  );
};

const Part = ({
  difference,
  mm,
  which,
}: {
  readonly difference: CarDifference;
  readonly mm: number;
  readonly which: 'before' | 'after';
}) =>
  difference.drawn ? (
    <PartDrawing
      adjuster={difference.drawn.adjuster}
      value={difference.drawn[which]}
      mm={mm}
      pivotToBolt={undefined}
      size={34}
      className="mini"
    />
  ) : null;

const Differences = ({ offer }: { readonly offer: Offer }) => {
  const { document, saved, copy } = offer;
  const units = useUnits();
  const differences = useMemo(
    () => (saved ? carDifferences(saved, document, copy.note, units) : []),
    [saved, document, copy, units],
  );
  const mm = mmPerFileUnit(document);
  if (wasNeverSaved(offer)) return <p className="plain">This car was never saved: the copy is all there is of it.</p>;
  if (!saved)
    return <p className="plain">The file that it came from is not there any more, so there is nothing to compare it with.</p>;
  if (differences.length === 0) return <p className="plain">The copy says the same as the file.</p>;
  return (
    <div className="differences" tabIndex={0} role="region" aria-label="What differs">
      <table>
        <thead>
          <tr>
            <th colSpan={2}>{savedWords(offer).head}</th>
            <th aria-hidden="true" />
            <th colSpan={2}>In the kept copy</th>
            <th>Part</th>
          </tr>
        </thead>
        <tbody>
          {differences.map((difference, index) => (
            <tr key={index}>
              <td className="drawing">
                <Part difference={difference} mm={mm} which="before" />
              </td>
              <td className="old">{difference.before}</td>
              <td className="arrow" aria-hidden="true">
                →
              </td>
              <td className="drawing">
                <Part difference={difference} mm={mm} which="after" />
              </td>
              <td className="new">{difference.after}</td>
              <td>
                <b>{difference.part}</b> <span className="quiet">{difference.where}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};

/** What a window left behind: both times, what differs, and three ways on. Nothing is thrown away unasked. */
export const RecoveryDialog = ({ offer }: { readonly offer: Offer }) => {
  const { store, files } = useWindow();
  const { note } = offer.copy;
  // another file was asked for, which may have the same name
  const behind = useBench(({ file }) =>
    file?.place.kind === 'handed' && file.place.file.id !== note.file ? file.place.file.name : null,
  );
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    dialog.current?.querySelector<HTMLElement>('.primary')?.focus();
  }, []);
  const title = note.isParked
    ? `A copy of ${note.title} was put aside`
    : `Jounce ended${note.endedAt === null ? '' : ` at ${clockTime(note.endedAt)}`} without saving`;
  const hasFile = offer.version !== null || note.sample !== null || offer.savedText !== null;
  return (
    <dialog ref={dialog} className="filedialog" aria-labelledby="recovery-title" onClose={() => putOfferOff(store)}>
      <div className="head">
        <VerdictShape verdict="close" />
        <div>
          <h2 id="recovery-title">{title}</h2>
          <p>
            A copy of <b>{note.title}</b>
            {sourceWords(offer)} was kept at {clockTimeExact(note.keptAt)}
            {note.steps.length > 0 && (
              <>
                , {changes(note.steps.length)} after{' '}
                {note.savedAt === null
                  ? wasNeverSaved(offer)
                    ? 'it was begun'
                    : 'it was opened'
                  : `the file was last saved (${clockTime(note.savedAt)})`}
              </>
            )}
            . {wordsOfFile(offer)}
            {behind !== null && ` ${behind} is open behind this.`}
          </p>
        </div>
      </div>
      <TimeLine offer={offer} />
      <h3>What differs</h3>
      <Differences offer={offer} />
      <div className="ways">
        <button type="button" className="button primary" onClick={() => takeCopy(store, offer)}>
          Go on with the kept copy <span className="key">Enter</span>
        </button>
        {hasFile && (
          <button type="button" className="button" onClick={() => void takeSaved(store, files, offer)}>
            {savedWords(offer).open}
          </button>
        )}
        {offer.saved && (
          <button type="button" className="button" onClick={() => takeBoth(store, offer)}>
            Open both, compare
          </button>
        )}
        <span className="spread" />
        <ThrowCopyAway id={note.id} />
      </div>
      <p className="quiet foot">
        The copy is kept until you save it or throw it away. Escape decides later: it stays in the File menu.
      </p>
    </dialog>
  );
};
