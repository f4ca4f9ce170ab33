import { useEffect, useMemo, useRef } from 'react';
import type { Fault } from '../../../geometry/index';
import { linesAround } from '../faultText';
import { FaultWords } from './FaultWords';

interface SourceProps {
  readonly text: string;
  readonly faults: readonly Fault[];
  readonly chosen: number;
  readonly onNext: () => void;
  readonly onEdit: () => void;
}

/** The file's text around the chosen fault, with the bad place marked and what was expected under it. */
export const FaultSource = ({ text, faults, chosen, onNext, onEdit }: SourceProps) => {
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
        {faults.length > 0 && (
          <span className="quiet">
            {chosen + 1} of {faults.length}
          </span>
        )}
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
                <span className="hint">
                  <FaultWords said={fault.hint ?? `expected ${fault.expected}`} />
                </span>
              )}
            </li>
          );
        })}
      </ol>
    </section>
  );
};
