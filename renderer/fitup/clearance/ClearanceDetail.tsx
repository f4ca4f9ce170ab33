import type { ClearanceRow } from '../../../geometry/index';
import type { RemedyWords } from '../remedyWords';

interface ClearanceDetailProps {
  readonly row: ClearanceRow;
  readonly remedies: readonly RemedyWords[];
  /** with its unit */
  readonly bound: string;
  readonly isPlainCut: boolean;
  /** null: the position is not known yet, or no longer */
  readonly onBench: (() => void) | null;
}

const proofWords = ({ verdict }: ClearanceRow, bound: string): string => {
  if (verdict === 'not-proved')
    return `Not proved: the margin is kept wherever it was looked, but between those positions it could be less by ${bound}.`;
  if (verdict === 'clear' || verdict === 'close')
    return `Proved between the positions too: it could be less by ${bound} at most.`;
  return `Between the positions that were looked at it could be less still, by ${bound}.`;
};

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
        <span>{isPlainCut ? 'They cut into each other; how deep is not known for these shapes.' : proofWords(row, bound)}</span>
        <button type="button" data-press="to-bench" className="button" disabled={onBench === null} onClick={onBench ?? undefined}>
          Take position to the bench
        </button>
      </p>
    </div>
  );
};
