import type { CaseLoads, SideName } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import { useUnits } from '../../look/units';
import { withUnit } from '../../units/shownQuantity';
import { lengthsIn } from '../clearance/clearanceTable';
import { forcesIn, momentsIn } from './loadWords';
import type { LoadLine } from './loadLines';

interface LoadsDetailProps {
  readonly one: CaseLoads;
  readonly side: SideName;
  readonly line: LoadLine;
  /** how long a kN is drawn [mm]; null: nothing is drawn */
  readonly perKilonewton: number | null;
  readonly onBench: () => void;
}

/** Names of parts are of the file, and words of their own are said as they are. */
const onWords = (on: string): string => (on === 'body' || on === 'knuckle' || on === 'ground' ? `the ${on}` : nameOfKey(on));

/** What the chosen link puts on the parts at its ends in the chosen case, as vectors of the car's frame; and what the arrows are. */
export const LoadsDetail = ({ one, side, line, perKilonewton, onBench }: LoadsDetailProps) => {
  const units = useUnits();
  const [forces, moments] = [forcesIn(units), momentsIn(units)];
  const row = one.rows.find(({ side: own, link, kind }) => own === side && link === line.link && kind === line.kind);
  const perThousand = forces.unit === 'N' ? '1 kN' : withUnit(forces.format(1000), forces.unit);
  const lengths = lengthsIn(units, 0);
  return (
    <div className="fitupdetail" data-over-view tabIndex={0} role="region" aria-label="Ends of the chosen link">
      {row && (
        <table className="everysetup linkends">
          <caption className="unseen">
            {line.name}, {side}, in {one.case.name}: what it puts on the parts at its ends
          </caption>
          <thead>
            <tr>
              <th scope="col">{line.name} puts</th>
              <th scope="col" className="number">
                Fx
              </th>
              <th scope="col" className="number">
                Fy
              </th>
              <th scope="col" className="number">
                Fz
              </th>
              <th scope="col" className="number">
                together
              </th>
              <th scope="col">
                <span className="unit">{forces.unit}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {row.ends.map(({ point, on, force, moment }) => (
              <tr key={`${point} ${on}`}>
                <th scope="row">
                  on {onWords(on)} <span className="quiet">at {nameOfKey(point)}</span>
                </th>
                {force.map((value, index) => (
                  // the three of a vector never change places
                  <td key={index} className="number">
                    {forces.formatChange(value)}
                  </td>
                ))}
                <td className="number">
                  <b>{forces.format(Math.hypot(...force))}</b>
                </td>
                <td className="quiet">
                  {moment === null ? '' : `and ${withUnit(moments.format(Math.hypot(...moment) / 1000), moments.unit)}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {row?.bending && (
        <p>
          Bends most {row.bending.place === '' ? '' : `${row.bending.place}, `}with{' '}
          <b>{withUnit(moments.format(row.bending.moment / 1000), moments.unit)}</b>.
        </p>
      )}
      {perKilonewton !== null && (
        <p className="fitupfoot forcekey">
          <span>
            <i className="forcemark given" aria-hidden="true" /> given
          </span>
          <span>
            <i className="forcemark pull" aria-hidden="true" /> link pulls (+)
          </span>
          <span>
            <i className="forcemark push" aria-hidden="true" /> link pushes (−)
          </span>
          <span>
            {perThousand} = {withUnit(lengths.format(perKilonewton), lengths.unit)}
          </span>
          <span className="spread" />
          <button type="button" data-press="to-bench" className="button" onClick={onBench}>
            Take position to the bench
          </button>
        </p>
      )}
    </div>
  );
};
