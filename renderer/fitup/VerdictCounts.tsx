import type { Verdict } from '../compute/limits';
import { VerdictChip } from '../studies/answers/AnswerCells';

interface VerdictCountsProps {
  readonly counts: readonly { readonly verdict: Verdict; readonly words: string }[];
}

/** How many rows of a tab are short, close and clear, in its head; told again when an answer changes them. */
export const VerdictCounts = ({ counts }: VerdictCountsProps) => (
  <>
    <span className="spread" />
    <span className="fitupcounts" role="status">
      {counts.map(({ verdict, words }) => (
        <VerdictChip key={words} verdict={verdict}>
          {words}
        </VerdictChip>
      ))}
    </span>
  </>
);
