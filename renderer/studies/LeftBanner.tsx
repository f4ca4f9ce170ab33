import { VerdictShape } from '../look/controls/VerdictShape';

/** Says that a question was called off because its page was left: nothing is worked out behind one's back. */
export const LeftBanner = ({ onRun }: { readonly onRun: () => void }) => (
  <div className="verdict stale" role="status">
    <VerdictShape verdict="close" />
    <span>
      <b>Called off</b> when this page was left.
    </span>
    <span className="spread" />
    <button type="button" className="button" onClick={onRun}>
      Run again
    </button>
  </div>
);
