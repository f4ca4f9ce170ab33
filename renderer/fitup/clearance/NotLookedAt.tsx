import type { ClearanceAnswer } from '../../../geometry/index';
import { FitUpWarnings } from '../FitUpWarnings';
import { lackingWords } from './clearanceTable';
import { Unreached } from '../Unreached';
import type { ShownUnits } from '../../units/unitChoice';

interface NotLookedAtProps {
  readonly answer: ClearanceAnswer;
  /** meshes that could not be read */
  readonly faults: readonly string[];
  readonly units: ShownUnits;
}

/** What the answer does not hold: positions that cannot be reached, parts that could not be made. */
export const NotLookedAt = ({ answer, faults, units }: NotLookedAtProps) => {
  const { envelope, missing, warnings, rows } = answer;
  // in the place of the rows it is said already
  const said = rows.length === 0 ? lackingWords(answer) : [];
  const isNew = (words: string): boolean => !said.includes(words);
  return (
    <>
      {[...faults, ...missing].filter(isNew).map((words) => (
        <p key={words} className="fitupnote watch">
          <b>Left out.</b> {words}
        </p>
      ))}
      <FitUpWarnings warnings={warnings.filter(({ code }) => code !== 'no-envelope' && code !== 'no-shape')} />
      <Unreached envelope={envelope} units={units} />
    </>
  );
};
