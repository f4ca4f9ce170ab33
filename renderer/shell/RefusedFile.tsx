import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Fault } from '../../geometry/index';
import { download } from '../files/browserFiles';
import { faultList, linesAround } from '../files/faultText';
import { offsetOf, sureMend } from '../files/mendFault';
import { fileNameFor } from '../files/places';
import { VerdictShape } from '../look/controls/VerdictShape';
import { chooseCar } from '../state/actions/chooseCar';
import { openMended, recheckRefused } from '../state/actions/mendRefused';
import { dismissRefused } from '../state/actions/openCar';
import type { RefusedFile as Refused } from '../state/benchStore';
import { useBench, useWindow } from './benchContext';
import '../files/dialogs.css';
import './refused.css';

const placeOf = ({ line, column }: Fault): string => (line === null ? '–' : `${line}:${column ?? 1}`);

interface ListProps {
  readonly faults: readonly Fault[];
  readonly text: string | null;
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
  readonly onMend: (text: string) => void;
  readonly onGo: (index: number) => void;
}

/** The mend of one fault, by how sure it is: done at once, or the place in the text. */
const MendCell = ({ fault, faults, text, onMend, onGo }: Omit<ListProps, 'chosen' | 'onChoose'> & { readonly fault: Fault }) => {
  const mend = useMemo(() => (text === null ? null : sureMend(text, faults, fault)), [text, faults, fault]);
  const where = fault.path ?? 'the whole file';
  return (
    <td className="mend">
      <span>{fault.hint ?? <span className="quiet">by hand</span>}</span>
      {mend && (
        <button type="button" className="button" aria-label={`Mend ${where}: ${mend.words}`} onClick={() => onMend(mend.text)}>
          Mend
        </button>
      )}
      {!mend && text !== null && fault.line !== null && (
        <button
          type="button"
          className="button"
          aria-label={`Go to ${where} in the text`}
          onClick={() => onGo(faults.indexOf(fault))}
        >
          Go there
        </button>
      )}
    </td>
  );
};

/** Every fault with its place, in the order of the file. */
const FaultTable = ({ faults, text, chosen, onChoose, onMend, onGo }: ListProps) => (
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
            <MendCell fault={fault} faults={faults} text={text} onMend={onMend} onGo={onGo} />
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
  readonly onEdit: () => void;
}

/** How long nothing is typed until the text is judged again, ms. */
const JUDGED_AFTER = 250;

interface EditorProps {
  readonly text: string;
  /** the place that the caret is put at when the editor opens or another fault is gone to */
  readonly place: { readonly line: number; readonly column: number };
  readonly onChange: (text: string) => void;
  readonly onDone: () => void;
}

/** The file's text to be mended by hand; judged again whenever the typing rests. */
const Editor = ({ text, place, onChange, onDone }: EditorProps) => {
  const area = useRef<HTMLTextAreaElement>(null);
  const [typed, setTyped] = useState(text);
  const [given, setGiven] = useState(text);
  if (given !== text) {
    // mended by a button meanwhile
    setGiven(text);
    setTyped(text);
  }
  useEffect(() => {
    if (typed === text) return;
    const timer = setTimeout(() => {
      setGiven(typed);
      onChange(typed);
    }, JUDGED_AFTER);
    return () => clearTimeout(timer);
  }, [typed, text, onChange]);
  useEffect(() => {
    const box = area.current;
    if (!box) return;
    const at = offsetOf(box.value, place.line, place.column);
    box.focus();
    box.setSelectionRange(at, at);
    const lineHeight = parseFloat(getComputedStyle(box).lineHeight);
    box.scrollTop = Math.max(0, (place.line - 6) * lineHeight);
  }, [place]);
  return (
    <section className="source" aria-label="The file">
      <div className="columnhead">
        <h3>The file</h3>
        <span className="quiet">judged again as you type</span>
        <span className="spread" />
        <button type="button" className="button" onClick={onDone}>
          Done
        </button>
      </div>
      <textarea
        ref={area}
        aria-label="Text of the file, to be mended"
        spellCheck={false}
        wrap="off"
        value={typed}
        onChange={({ target }) => setTyped(target.value)}
        onBlur={() => typed !== text && onChange(typed)}
      />
    </section>
  );
};

/** The file's text around the chosen fault, with the bad place marked and what was expected under it. */
const Source = ({ text, faults, chosen, onNext, onEdit }: SourceProps) => {
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
        <button type="button" className="button" onClick={onEdit}>
          Edit
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

const NOTHING = { line: 1, column: 1 };

const Faults = ({ refused }: { readonly refused: Refused }) => {
  const { store } = useWindow();
  const [at, setChosen] = useState(0);
  const [place, setPlace] = useState<EditorProps['place'] | null>(null);
  const { faults, text } = refused;
  const chosen = Math.min(at, Math.max(0, faults.length - 1));
  const next = () => setChosen((index) => (index + 1) % faults.length);
  const mend = useCallback((mended: string) => recheckRefused(store, mended), [store]);
  const goTo = (index: number) => {
    const fault = faults[index];
    setChosen(index);
    const line = fault?.line ?? null;
    setPlace(line === null ? { ...NOTHING } : { line, column: fault?.column ?? 1 });
  };
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'F8' || faults.length === 0) return;
      event.preventDefault();
      setChosen((index) => (index + (event.shiftKey ? faults.length - 1 : 1)) % faults.length);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [faults]);
  return (
    <div className="faultpanes">
      <FaultTable faults={faults} text={text} chosen={chosen} onChoose={setChosen} onMend={mend} onGo={goTo} />
      {text !== null && place && <Editor text={text} place={place} onChange={mend} onDone={() => setPlace(null)} />}
      {text !== null && !place && (
        <Source text={text} faults={faults} chosen={chosen} onNext={next} onEdit={() => goTo(chosen)} />
      )}
    </div>
  );
};

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
  const open = useBench((state) => state.file?.title ?? null);
  const dialog = useRef<HTMLDialogElement>(null);
  const [isCopied, setCopied] = useState(false);
  const [isLeaving, setLeaving] = useState(false);
  const isThere = refused !== null;
  useEffect(() => {
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
      <div className="banner">
        <VerdictShape verdict={isMended && faults.length === 0 ? 'within' : 'broken'} />
        <div>
          <h2 id="refused-title" className={isMended && faults.length === 0 ? 'sound' : ''}>
            {titleOf(refused)}
          </h2>
          <p role="status">
            {isLeaving ? 'What you mended is in no file yet. ' : ''}
            {hasList ? 'Nothing of the file was taken; it is only changed if you save the mended car over it.' : message}{' '}
            {open !== null && (
              <>
                The car that was open, <b className="plain">{open}</b>, is as it was.
              </>
            )}
          </p>
        </div>
        {isMended && faults.length === 0 && (
          <button type="button" className="button primary" onClick={() => openMended(store)}>
            Open it, unsaved
          </button>
        )}
        {isMended && text !== null && (
          <button type="button" className="button" onClick={() => download(fileNameFor(title), text)}>
            Download the text
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
