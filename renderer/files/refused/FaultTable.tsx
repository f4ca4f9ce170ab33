import { Fragment, useMemo } from 'react';
import type { Fault } from '../../../geometry/index';
import { sureMend } from '../mendFault';
import { FaultWords } from './FaultWords';

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
      <span>{fault.hint === null ? <span className="quiet">by hand</span> : <FaultWords said={fault.hint} />}</span>
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
export const FaultTable = ({ faults, text, chosen, onChoose, onMend, onGo }: ListProps) => (
  <div className="faultlist" tabIndex={0} role="region" aria-label="Faults">
    {faults.length === 0 && <p className="nofault">No fault is left. The text beside it is what is opened.</p>}
    <table hidden={faults.length === 0}>
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
                {fault.path?.split('.').map((word, place) => (
                  <Fragment key={place}>
                    {place > 0 && (
                      <>
                        .<wbr />
                      </>
                    )}
                    {word}
                  </Fragment>
                )) ?? 'the whole file'}
              </button>
            </td>
            <td className="number place">{placeOf(fault)}</td>
            <td className="found">{fault.found}</td>
            <td>{fault.expected !== null && <FaultWords said={fault.expected} />}</td>
            <MendCell fault={fault} faults={faults} text={text} onMend={onMend} onGo={onGo} />
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);
