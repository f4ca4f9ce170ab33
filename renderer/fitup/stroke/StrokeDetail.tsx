import { useUnits } from '../../look/units';
import { withUnit } from '../../units/shownQuantity';
import type { StrokeLine } from './strokeLines';
import { shownStroke } from './strokeTable';

interface StrokeDetailProps {
  readonly line: StrokeLine;
  /** null: the position is not known yet, or no longer */
  readonly onBench: (() => void) | null;
}

/** The chosen line in every setup that is asked about, and the way to the bench. */
export const StrokeDetail = ({ line, onBench }: StrokeDetailProps) => {
  const units = useUnits();
  return (
    <div className="fitupdetail" data-over-view tabIndex={0} role="region" aria-label="The chosen line in every setup">
      <table className="everysetup">
        <caption className="unseen">
          {line.name}, {line.side}, in every setup
        </caption>
        <tbody>
          {line.every.map((value) => {
            const said = shownStroke(line, value, units);
            return (
              <tr key={value.setup}>
                <th scope="row">
                  {value.setup === line.worst.setup && line.every.length > 1 ? <b>{value.setup}</b> : value.setup}
                </th>
                <td className="number">{value.value === null ? '–' : withUnit(said.value, said.unit)}</td>
                <td className="quiet">{said.at}</td>
                <td>{value.why ?? (line.kind === 'damper' || value.state === 'never' ? '' : said.verdictWords)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p className="fitupfoot">
        <span>
          {line.kind === 'bar'
            ? 'The bench moves both wheels of an axle alike: there this bar does not twist so far.'
            : 'Least left of all setups is what stands in the table.'}
        </span>
        <button type="button" data-press="to-bench" className="button" disabled={onBench === null} onClick={onBench ?? undefined}>
          Take position to the bench
        </button>
      </p>
    </div>
  );
};
