import type { Failure } from '../../../geometry/index';
import { VerdictShape } from '../../look/controls/VerdictShape';

/** Why there is no answer: the setup that was asked about cannot be put together, or a thread ended. */
export const FailureBanner = ({ failure }: { readonly failure: Failure | Error }) => (
  <div className="verdict broken" role="alert">
    <VerdictShape verdict="broken" />
    <span>
      <b>No answer.</b> {/[.!?]$/.test(failure.message) ? failure.message : `${failure.message}.`}
    </span>
  </div>
);
