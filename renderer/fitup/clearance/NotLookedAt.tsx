import type { ClearanceAnswer } from '../../../geometry/index';
import { FitUpWarnings } from '../FitUpWarnings';
import { Unreached } from '../Unreached';
import type { ShownUnits } from '../../units/unitChoice';

interface NotLookedAtProps {
  readonly answer: ClearanceAnswer;
  /** meshes that could not be read */
  readonly faults: readonly string[];
  readonly units: ShownUnits;
}

/** What the answer does not hold: positions that cannot be reached, parts that could not be made. */
export const NotLookedAt = ({ answer: { envelope, missing, warnings }, faults, units }: NotLookedAtProps) => (
  <>
    {[...faults, ...missing].map((words) => (
      <p key={words} className="fitupnote watch">
        <b>Left out.</b> {words}
      </p>
    ))}
    <FitUpWarnings warnings={warnings} />
    <Unreached envelope={envelope} units={units} />
  </>
);
