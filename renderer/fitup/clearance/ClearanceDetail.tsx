import type { ClearanceRow } from '../../../geometry/index';
import type { RemedyWords } from '../remedyWords';
import { proofWords } from './clearanceTable';

interface ClearanceDetailProps {
  readonly row: ClearanceRow;
  readonly remedies: readonly RemedyWords[];
  /** with its unit */
  readonly bound: string;
  readonly isPlainCut: boolean;
  /** null: the position is not known yet, or no longer */
  readonly onBench: (() => void) | null;
}

/** What would clear the chosen pair, how well its number is known, and the way to the bench. */
export const ClearanceDetail = ({ row, remedies, bound, isPlainCut, onBench }: ClearanceDetailProps) => {
  const isShort = row.verdict === 'short' || row.verdict === 'cuts';
  return (
    <div className="fitupdetail" data-over-view tabIndex={0} role="region" aria-label="The chosen pair">
      {isShort && (
        <>
          <h2>What would clear it</h2>
          {remedies.length === 0 ? (
            <p>
              No stop of rack or travel and no single adjuster on its own marks brings this pair to its margin
              {isPlainCut ? '' : ', or it is not among the twelve pairs that have least to spare'}.
            </p>
          ) : (
            <ul>
              {remedies.map(({ what, then, price }) => (
                <li key={what}>
                  <b>{what}:</b> {then}
                  {price !== '' && <span className="quiet">; {price}</span>}
                </li>
              ))}
            </ul>
          )}
        </>
      )}
      <p className="fitupfoot">
        <span>{proofWords(row, bound)}</span>
        <button type="button" data-press="to-bench" className="button" disabled={onBench === null} onClick={onBench ?? undefined}>
          Take position to the bench
        </button>
      </p>
    </div>
  );
};
