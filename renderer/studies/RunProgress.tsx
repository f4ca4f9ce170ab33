import { useEffect } from 'react';
import type { StudyOrder } from '../../geometry/index';
import { formatNumber } from '../units/format';
import type { StudyState } from './useStudy';

/** "about 4 s left": said once a tenth is done, since the first steps say little. */
const timeLeft = (since: number, done: number, of: number): string => {
  if (done < 1 || done / of < 0.1) return '';
  const left = (since / done) * (of - done);
  return left < 1000 ? 'less than a second left' : `about ${formatNumber(Math.ceil(left / 1000), 0)} s left`;
};

interface RunProgressProps {
  readonly state: StudyState<StudyOrder>;
  readonly onCancel: () => void;
}

/** How far a study is, once it has taken half a second, and the way to call it off; Escape does the same from the first moment. */
export const RunProgress = ({ state, onCancel }: RunProgressProps) => {
  const isRunning = state.kind === 'running';
  useEffect(() => {
    if (!isRunning) return;
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      onCancel();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [isRunning, onCancel]);
  if (state.kind !== 'running' || !state.isSlow) return null;
  const { doing, done, of } = state.progress;
  const left = timeLeft(state.since, done, of);
  return (
    <div className="runprogress">
      <span className="doing">{doing === '' ? 'Starting' : `${doing.charAt(0).toUpperCase()}${doing.slice(1)}`}</span>
      <progress aria-label={doing || 'starting'} value={of === 0 ? 0 : done} max={Math.max(1, of)} />
      <span className="number">
        {formatNumber(done, 0)} of {formatNumber(of, 0)}
      </span>
      <span className="quiet">{left}</span>
      <span className="spread" />
      <button type="button" className="button" onClick={onCancel}>
        Cancel <span className="key">Esc</span>
      </button>
    </div>
  );
};
