import { useMemo } from 'react';
import { Unreachable } from '../readings/Unreachable';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { useLengthUnit } from './useLengthUnit';
import { KeepTable } from './KeepTable';
import { lengthRows, lengthTable } from './lengthTables';
import { PointTable } from './PointTable';
import { TapeReader } from './TapeReader';

const Parts = () => {
  const unit = useLengthUnit();
  const units = useUnits();
  const change = (value: number | null): string => (value === null ? '' : unit.formatChange(value));
  const shown = useBench((state) => state.shown);
  const other = shown?.compared.ok && shown.compared.value !== shown.row ? shown.compared.value.placed : null;
  const against = useBench((state) => (other ? (state.shown?.against ?? null) : null));
  const placed = shown?.row.placed;
  const rows = useMemo(() => (placed ? lengthRows(placed, other) : []), [placed, other]);
  const own = rows.some(({ change: { left, right } }) => change(left) !== change(right));
  return (
    <section aria-labelledby="parts-head">
      <div className="lengthhead">
        <h3 id="parts-head">Parts, centre to centre</h3>
        <KeepTable name="lengths" isOfPosition table={() => lengthTable(rows, against, units.length)} />
      </div>
      <table className="lengthtable">
        <thead>
          <tr>
            <th scope="col">{unit.unit}</th>
            <th scope="col" className="left">
              Left
            </th>
            <th scope="col" className="right">
              Right
            </th>
            {against !== null && (
              <th scope="col" title={`difference from ${against}`}>
                {own ? '± L' : `± ${against}`}
              </th>
            )}
            {against !== null && own && <th scope="col">± R</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id} data-length={row.id}>
              <th scope="row">{row.name}</th>
              <td>{unit.format(row.left)}</td>
              <td>{row.right === null ? '–' : unit.format(row.right)}</td>
              {against !== null && <td className="change">{change(row.change.left)}</td>}
              {against !== null && own && <td className="change">{change(row.change.right)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

/**
 * Lengths at the setup and position that are shown: every part centre to centre, a tape between any two points, and all
 * points beside their places in the file.
 */
export const Lengths = () => (
  <section className="column readings" aria-label="Lengths">
    <Unreachable />
    <div className="scroll lengths" tabIndex={0} role="region" aria-label="Tables of lengths">
      <Parts />
      <TapeReader />
      <PointTable />
    </div>
  </section>
);
