import { useEffect, useMemo, useRef, useState } from 'react';
import type { Fault } from '../../geometry/index';
import { faultList, linesAround } from '../files/faultText';
import { VerdictShape } from '../look/controls/VerdictShape';
import { chooseCar } from '../state/actions/chooseCar';
import { dismissRefused } from '../state/actions/openCar';
import type { RefusedFile as Refused } from '../state/benchStore';
import { useBench, useWindow } from './benchContext';
import './refused.css';

const placeOf = ({ line, column }: Fault): string => (line === null ? '–' : `${line}:${column ?? 1}`);

interface ListProps {
  readonly faults: readonly Fault[];
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

/** Every fault with its place, in the order of the file. */
const FaultTable = ({ faults, chosen, onChoose }: ListProps) => (
  <div className="faultlist" tabIndex={0} role="region" aria-label="Faults">
    <table>
      <thead>
        <tr>
          <th aria-label="Number" />
          <th>Where</th>
          <th className="number">Line:col</th>
          <th>Found</th>
          <th>Expected</th>
          <th>Mend</th>
        </tr>
      </thead>
      <tbody>
        {faults.map((fault, index) => (
          <tr key={index} className={index === chosen ? 'chosen' : ''} onClick={() => onChoose(index)}>
            <td className="rank">{index + 1}</td>
            <td className="path">
              <button type="button" aria-pressed={index === chosen} onClick={() => onChoose(index)}>
                {fault.path ?? 'the whole file'}
              </button>
            </td>
            <td className="number place">{placeOf(fault)}</td>
            <td className="found">{fault.found}</td>
            <td>{fault.expected}</td>
            <td>{fault.hint ?? <span className="quiet">by hand</span>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);

interface SourceProps {
  readonly text: string;
  readonly faults: readonly Fault[];
  readonly chosen: number;
  readonly onNext: () => void;
}

/** The file's text around the chosen fault, with the bad place marked and what was expected under it. */
const Source = ({ text, faults, chosen, onNext }: SourceProps) => {
  const fault = faults[chosen];
  const bad = useRef<HTMLLIElement>(null);
  const lines = useMemo(() => linesAround(text, fault?.line ?? 1, fault?.column ?? 1), [text, fault]);
  const also = new Set(faults.map(({ line }) => line));
  useEffect(() => {
    bad.current?.scrollIntoView({ block: 'center' }); // what it gives back is no clean-up
  }, [fault]);
  return (
    <section className="source" aria-label="The file">
      <div className="columnhead">
        <h3>The file</h3>
        {fault && fault.line !== null && (
          <span className="quiet">
            line {fault.line}, column {fault.column}
          </span>
        )}
        <span className="spread" />
        <span className="quiet">
          {chosen + 1} of {faults.length}
        </span>
        <button type="button" className="button" aria-keyshortcuts="F8" disabled={faults.length < 2} onClick={onNext}>
          Next <span className="key">F8</span>
        </button>
      </div>
      <ol className="scroll" tabIndex={0} aria-label="Text of the file">
        {lines.map(({ number, before, marked, after }) => {
          const isBad = fault?.line === number;
          return (
            <li
              key={number}
              ref={isBad ? bad : undefined}
              className={isBad ? 'bad' : also.has(number) ? 'also' : ''}
              aria-current={isBad ? 'location' : undefined}
            >
              <span className="linenumber">{number}</span>
              <code>
                {before}
                {isBad && marked !== '' ? <mark>{marked}</mark> : marked}
                {after}
              </code>
              {isBad && (fault.hint ?? fault.expected) && (
                <span className="hint">{fault.hint ?? `expected ${fault.expected}`}</span>
              )}
            </li>
          );
        })}
      </ol>
    </section>
  );
};

const Faults = ({ refused }: { readonly refused: Refused }) => {
  const [chosen, setChosen] = useState(0);
  const { faults, text } = refused;
  const next = () => setChosen((index) => (index + 1) % faults.length);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'F8') return;
      event.preventDefault();
      setChosen((index) => (index + (event.shiftKey ? faults.length - 1 : 1)) % faults.length);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [faults]);
  return (
    <div className="faultpanes">
      <FaultTable faults={faults} chosen={chosen} onChoose={setChosen} />
      {text !== null && <Source text={text} faults={faults} chosen={chosen} onNext={next} />}
    </div>
  );
};

/** Why a file was not opened: every fault with its place, the file beside it. What was open stays open. */
export const RefusedFile = () => {
  const { store, files } = useWindow();
  const refused = useBench((state) => state.refused);
  const open = useBench((state) => state.file?.title ?? null);
  const dialog = useRef<HTMLDialogElement>(null);
  const [isCopied, setCopied] = useState(false);
  useEffect(() => {
    if (refused && !dialog.current?.open) dialog.current?.showModal();
    dialog.current?.querySelector<HTMLElement>('.close')?.focus();
  }, [refused]);
  if (!refused) return null;
  const { title, message, faults } = refused;
  const count = faults.length === 1 ? '1 fault' : `${faults.length} faults`;
  const copy = async () => {
    await navigator.clipboard.writeText(faultList(title, faults));
    setCopied(true);
  };
  return (
    <dialog
      ref={dialog}
      className={`refused ${faults.length > 0 ? 'withfaults' : ''}`}
      aria-labelledby="refused-title"
      onClose={() => dismissRefused(store)}
    >
      <div className="banner">
        <VerdictShape verdict="broken" />
        <div>
          <h2 id="refused-title">{faults.length > 0 ? `Not opened: ${count} in ${title}` : `${title} was not opened`}</h2>
          <p>
            {faults.length > 0 ? 'Nothing of it was taken.' : message}{' '}
            {open !== null && (
              <>
                The car that was open, <b className="plain">{open}</b>, is as it was.
              </>
            )}
          </p>
        </div>
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
        {faults.length > 0 && (
          <button type="button" className="button" onClick={() => void copy()}>
            {isCopied ? 'Copied' : 'Copy the list'}
          </button>
        )}
        <button type="button" className="button close" onClick={() => dismissRefused(store)}>
          Close
        </button>
      </div>
      {faults.length > 0 && <Faults key={title} refused={refused} />}
    </dialog>
  );
};
