import { VerdictShape } from '../../look/controls/VerdictShape';

/** Says that what stands below is not of what the question says, since a field of it holds no value: nothing of it is saved. */
export const OfBefore = () => (
  <div className="verdict stale" role="status">
    <VerdictShape verdict="close" />
    <span>
      <b>Of the question before.</b> A field of the question holds what is no value of it: mend that first.
    </span>
  </div>
);
