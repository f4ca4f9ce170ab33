import { useEffect, useRef } from 'react';
import { VerdictShape } from '../look/controls/VerdictShape';
import { dismissRefused } from '../state/actions/openCar';
import { useBench, useWindow } from './benchContext';

/** Why a file was not opened: every fault with its place. What was open stays open. */
export const RefusedFile = () => {
  const { store } = useWindow();
  const refused = useBench((state) => state.refused);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (refused && !dialog.current?.open) dialog.current?.showModal();
  }, [refused]);
  if (!refused) return null;
  return (
    <dialog ref={dialog} className="refused" aria-labelledby="refused-title" onClose={() => dismissRefused(store)}>
      <div className="banner">
        <VerdictShape verdict="broken" />
        <div>
          <h2 id="refused-title">{refused.title} was not opened</h2>
          <p>{refused.message} What was open before is untouched.</p>
        </div>
      </div>
      {refused.faults.length > 0 && (
        <ol className="faults" tabIndex={0} aria-label="Faults">
          {refused.faults.map((fault, index) => (
            <li key={index}>
              <b>{fault.path ?? 'the file'}</b>
              {fault.line !== null && (
                <span className="quiet">
                  {' '}
                  line {fault.line}, column {fault.column}
                </span>
              )}
              <div>
                {fault.found !== null && <>Found {fault.found}. </>}
                {fault.expected !== null && <>Expected {fault.expected}. </>}
                {fault.hint}
              </div>
            </li>
          ))}
        </ol>
      )}
      <form method="dialog">
        <button type="submit" className="button">
          Close
        </button>
      </form>
    </dialog>
  );
};
