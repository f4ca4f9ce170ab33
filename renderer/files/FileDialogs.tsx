import { useEffect, useRef } from 'react';
import { VerdictShape } from '../look/controls/VerdictShape';
import { useBench, useWindow } from '../shell/benchContext';
import { answerQuestion, type Fate } from '../state/actions/replaceCar';
import type { ReplaceQuestion } from '../state/filesState';
import { RecoveryDialog } from './RecoveryDialog';
import { UnfinishedDialog } from './UnfinishedDialog';
import { clockTime } from './times';
import { carTitle } from '../state/carTitle';
import './dialogs.css';

/** Another car waits, and this one has changes that were not saved: nothing of it is lost unasked. */
const AskReplace = ({ question }: { readonly question: ReplaceQuestion }) => {
  const { store, files, keeper } = useWindow();
  const title = useBench((state) => carTitle(state) ?? '');
  const { theirs } = question;
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    dialog.current?.querySelector<HTMLElement>('.primary')?.focus();
  }, []);
  const answer = (fate: Fate) => void answerQuestion(store, files, keeper, fate);
  return (
    <dialog ref={dialog} className="filedialog small" aria-labelledby="replace-title" onClose={() => answer('stay')}>
      <div className="head">
        <VerdictShape verdict="close" />
        <div>
          <h2 id="replace-title">
            {theirs
              ? `Your version of ${theirs.name} has changes that were not saved`
              : `${title} has changes that were not saved`}
          </h2>
          {theirs ? (
            <p>
              <b>The version on the disk</b>
              {theirs.savedAt !== null && `, written at ${clockTime(theirs.savedAt)},`} is ready to be opened in its place. To
              write yours over it instead, stay and keep yours.
            </p>
          ) : (
            <p>
              <b>{question.title}</b> is ready to be opened in its place.
            </p>
          )}
        </div>
      </div>
      <div className="ways">
        {!theirs && (
          <button type="button" className="button primary" onClick={() => answer('save')}>
            Save and open
          </button>
        )}
        <button type="button" className={theirs ? 'button primary' : 'button'} onClick={() => answer('keep')}>
          {theirs ? 'Keep a copy of mine, open theirs' : 'Keep a copy and open'}
        </button>
        <button type="button" className="button danger" onClick={() => answer('drop')}>
          {theirs ? 'Open theirs, do not keep mine' : 'Open, do not keep'}
        </button>
        <button type="button" className="button" onClick={() => answer('stay')}>
          Stay
        </button>
        <span className="quiet">A kept copy stays in the File menu. What is not kept is gone for good.</span>
      </div>
    </dialog>
  );
};

/** The dialogs about files, loaded when the first of them is needed. */
export const FileDialogs = () => {
  const { offer, question } = useBench((state) => state.files);
  return (
    <>
      {question && <AskReplace question={question} />}
      {offer && !question && 'unfinished' in offer && <UnfinishedDialog key={offer.copy.note.id} offer={offer} />}
      {offer && !question && !('unfinished' in offer) && <RecoveryDialog key={offer.copy.note.id} offer={offer} />}
    </>
  );
};
