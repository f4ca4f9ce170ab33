import { VerdictShape } from '../../look/controls/VerdictShape';

interface StaleBannerProps {
  /** what was changed since: the car or a setup that was asked about, or only the question that stands on the page */
  readonly changed: 'car' | 'question';
  readonly from: string;
  readonly onRun: () => void;
}

/** Says that what stands below answers something else than what is asked now. */
export const StaleBanner = ({ changed, from, onRun }: StaleBannerProps) => (
  <div className="verdict stale" role="status">
    <VerdictShape verdict="close" />
    <span>
      <b>{changed === 'car' ? 'Not current.' : 'Of another question.'}</b>{' '}
      {changed === 'car' ? `The car or ${from} was changed since this was asked.` : 'The question was changed since.'}
    </span>
    <span className="spread" />
    <button type="button" className="button" onClick={onRun}>
      Run again
    </button>
  </div>
);
