import { useEffect } from 'react';
import { VerdictShape } from '../look/controls/VerdictShape';
import { FailureBanner } from '../studies/answers/FailureBanner';
import { formatNumber } from '../units/format';
import type { FitUpState } from './useFitUp';

interface FitUpProgressProps {
  readonly state: FitUpState;
  /** what stands on the page is of another question or car */
  readonly isOld: boolean;
  readonly onCancel: () => void;
  /** null: the question has the button that asks it, and says what stands below */
  readonly onAgain: (() => void) | null;
}

/** How far an answer is once it has taken half a second, the way to call it off, and what is to be said when there is none. */
export const FitUpProgress = ({ state, isOld, onCancel, onAgain }: FitUpProgressProps) => {
  const isRunning = state.kind === 'running';
  useEffect(() => {
    if (!isRunning) return;
    const onKeyDown = (event: KeyboardEvent) => {
      // an open card or dialog takes its own Escape
      if (event.key !== 'Escape' || document.querySelector('dialog[open], :popover-open')) return;
      event.preventDefault();
      onCancel();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [isRunning, onCancel]);
  if (state.kind === 'failed') return <FailureBanner failure={state.failure} />;
  if (state.kind === 'called off')
    return (
      <div className="verdict stale" role="status">
        <VerdictShape verdict="close" />
        <span>
          <b>Called off.</b>{' '}
          {onAgain === null ? '' : isOld ? 'What stands below is of before the last change.' : 'Nothing was worked out.'}
        </span>
        <span className="spread" />
        {onAgain !== null && (
          <button type="button" className="button" onClick={onAgain}>
            Work it out
          </button>
        )}
      </div>
    );
  if (state.kind !== 'running' || !state.isSlow) return null;
  const { doing, done, of } = state.progress;
  const words = doing === '' ? 'starting' : doing;
  return (
    <div className="runprogress">
      <span className="doing">{words.charAt(0).toUpperCase() + words.slice(1)}</span>
      <progress aria-label={words} value={of === 0 ? 0 : done} max={Math.max(1, of)} />
      <span className="number">
        {formatNumber(done, 0)} of {formatNumber(of, 0)}
      </span>
      {isOld && <span className="quiet">below: before the change</span>}
      <span className="spread" />
      <button type="button" className="button" onClick={onCancel}>
        Cancel <span className="key">Esc</span>
      </button>
    </div>
  );
};
