import { VerdictShape } from '../../look/controls/VerdictShape';

/** Says that what stands below was answered for a car that is another one by now. */
export const StaleBanner = ({ from, onRun }: { readonly from: string; readonly onRun: () => void }) => (
  <div className="verdict stale" role="status">
    <VerdictShape verdict="close" />
    <span>
      <b>Not current.</b> The car or {from} was changed since this was asked.
    </span>
    <span className="spread" />
    <button type="button" className="button" onClick={onRun}>
      Run again
    </button>
  </div>
);
