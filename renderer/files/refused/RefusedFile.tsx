import { useLayoutEffect, useRef, useState } from 'react';
import { VerdictShape } from '../../look/controls/VerdictShape';
import { useBench, useWindow } from '../../shell/benchContext';
import { chooseCar } from '../../state/actions/chooseCar';
import { openMended } from '../../state/actions/mendRefused';
import { PAGES } from '../../shell/pages';
import { choosePage } from '../../state/actions/lookAt';
import { dismissRefused } from '../../state/actions/openCar';
import type { RefusedFile as Refused } from '../../state/benchStore';
import { download } from '../browserFiles';
import { faultList } from '../faultText';
import { fileNameFor } from '../places';
import { Faults } from './Faults';
import { carTitle } from '../../state/carTitle';
import '../dialogs.css';
import './refused.css';

const countWords = (count: number): string => (count === 1 ? '1 fault' : `${count} faults`);

/** What the banner says of a refused file. */
const titleOf = ({ title, faults, isMended }: Refused): string => {
  if (faults.length > 0) return `Not opened: ${countWords(faults.length)} ${isMended ? 'left ' : ''}in ${title}`;
  return isMended ? `Mended: no fault is left in ${title}` : `${title} was not opened`;
};

/** Why a file was not opened: every fault with its place and its mend, the file beside it. What was open stays open. */
export const RefusedFile = () => {
  const { store, files } = useWindow();
  const refused = useBench((state) => state.refused);
  const open = useBench(carTitle);
  const dialog = useRef<HTMLDialogElement>(null);
  const [isCopied, setCopied] = useState(false);
  const [isLeaving, setLeaving] = useState(false);
  const isThere = refused !== null;
  // open before its text is scrolled to the chosen fault: what is not shown does not scroll
  useLayoutEffect(() => {
    if (isThere && !dialog.current?.open) dialog.current?.showModal();
    dialog.current?.querySelector<HTMLElement>('.close')?.focus();
  }, [isThere]);
  if (!refused) return null;
  const { title, message, faults, text, isMended } = refused;
  const hasList = faults.length > 0 || isMended;
  const copy = async () => {
    await navigator.clipboard.writeText(faultList(title, faults));
    setCopied(true);
  };
  /** What was mended is in no file: it is not thrown away by one key. */
  const leave = () => {
    if (isMended && !isLeaving) setLeaving(true);
    else dismissRefused(store);
  };
  const isSound = isMended && faults.length === 0;
  return (
    <dialog
      ref={dialog}
      className={`refused ${hasList ? 'withfaults' : ''}`}
      aria-labelledby="refused-title"
      onCancel={(event) => {
        event.preventDefault();
        leave();
      }}
      onClose={() => dismissRefused(store)}
    >
      <div className={isSound ? 'banner sound' : 'banner'}>
        <VerdictShape verdict={isSound ? 'within' : 'broken'} />
        <div>
          <h2 id="refused-title" className={isSound ? 'sound' : ''}>
            {titleOf(refused)}
          </h2>
          <p role="status">
            {isLeaving ? 'What you mended is in no file yet. ' : ''}
            {hasList ? 'Nothing of the file was taken; it is only changed if you save the mended car over it.' : message}{' '}
            {open !== null && refused.isAtStart && (
              <>
                A sample is open instead, <b className="plain">{open}</b>.
              </>
            )}
            {open !== null && !refused.isAtStart && (
              <>
                The car that was open, <b className="plain">{open}</b>, is as it was.
              </>
            )}
          </p>
        </div>
        {isSound && (
          <button type="button" className="button primary" onClick={() => openMended(store)}>
            Open it, unsaved
          </button>
        )}
        {isMended && text !== null && (
          <button type="button" className="button" onClick={() => download(fileNameFor(title), text)}>
            Download the text
          </button>
        )}
        {refused.page && (
          <button
            type="button"
            className="button primary"
            onClick={() => {
              dismissRefused(store);
              if (refused.page) choosePage(store, refused.page);
            }}
          >
            Go to {PAGES.find(({ name }) => name === refused.page)?.label}
          </button>
        )}
        {!isMended && (
          <button
            type="button"
            className="button"
            onClick={() => {
              dismissRefused(store);
              void chooseCar(store, files);
            }}
          >
            Another file…
          </button>
        )}
        {faults.length > 0 && (
          <button type="button" className="button" onClick={() => void copy()}>
            {isCopied ? 'Copied' : 'Copy the list'}
          </button>
        )}
        <button type="button" className={`button close${isLeaving ? ' danger' : ''}`} onClick={leave}>
          {isLeaving ? 'Close and lose the mends' : 'Close'}
        </button>
      </div>
      {hasList && <Faults key={title} refused={refused} />}
    </dialog>
  );
};
