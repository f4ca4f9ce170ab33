import type { Verdict } from '../compute/limits';
import { VerdictShape } from '../look/controls/VerdictShape';
import { useBench } from '../shell/benchContext';
import { isMoved } from './positionWords';
import { useLimits } from './useLimits';

const WORDS: Readonly<Record<Verdict, string>> = { within: 'within', close: 'close', broken: 'out' };
const ORDER: readonly Verdict[] = ['within', 'close', 'broken'];

/** How many limits of the car file are kept, nearly reached, broken: always where the setup stands, said where it is shown moved. */
export const LimitChips = () => {
  const limits = useLimits();
  const open = useBench((state) => state.history !== null);
  const hasLimits = useBench((state) => (state.history?.present.document.limits ?? []).length > 0);
  const moved = useBench(({ position }) => isMoved(position));
  if (limits.length === 0)
    return open ? <span className="quiet">{hasLimits ? 'limits: not judged' : 'no limits in this car file'}</span> : null;
  return (
    <span className="chips" role="group" aria-label="Limits, where the setup stands">
      {moved && <span className="quiet">standing:</span>}
      {ORDER.map((verdict) => {
        const these = limits.filter((limit) => limit.verdict === verdict);
        if (these.length === 0) return null;
        const names = these.map(({ name, why }) => (why === null ? name : `${name}: ${why}`)).join('\n');
        return (
          <span key={verdict} className={`chip ${verdict}`} title={names}>
            <VerdictShape verdict={verdict} />
            {these.length} {WORDS[verdict]}
          </span>
        );
      })}
    </span>
  );
};
