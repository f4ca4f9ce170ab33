import type { ClearanceAnswer } from '../../../geometry/index';
import { Unreached } from '../Unreached';
import type { ShownUnits } from '../../units/unitChoice';

interface NotLookedAtProps {
  readonly answer: ClearanceAnswer;
  /** meshes that could not be read */
  readonly faults: readonly string[];
  readonly units: ShownUnits;
}

/** What the answer does not hold: positions that cannot be reached, parts that could not be made. */
export const NotLookedAt = ({ answer: { envelope, missing }, faults, units }: NotLookedAtProps) => (
  <>
    {[...faults, ...missing].map((words) => (
      <p key={words} className="fitupnote watch">
        <b>Left out.</b> {words}
      </p>
    ))}
    <Unreached envelope={envelope} units={units} />
  </>
);
