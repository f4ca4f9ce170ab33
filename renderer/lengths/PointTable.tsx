import { useMemo, useState } from 'react';
import type { SideName } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import { Segments } from '../look/controls/Segments';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { mmPerFileUnit } from '../units/fileLength';
import { KeepTable } from './KeepTable';
import { placeRows, placeTable } from './lengthTables';
import { useLengthUnit } from './useLengthUnit';

const SIDES: readonly { readonly name: SideName; readonly label: string }[] = [
  { name: 'left', label: 'Left' },
  { name: 'right', label: 'Right' },
];

/** All points of a side where they are now, the file's own places under them. */
export const PointTable = () => {
  const unit = useLengthUnit();
  const units = useUnits();
  const [side, setSide] = useState<SideName>('left');
  const placed = useBench((state) => state.shown?.row.placed);
  const document = useBench((state) => state.history?.present.document);
  const axleName = useBench((state) => state.axle);
  const rows = useMemo(() => {
    const axle = document?.[axleName];
    return document && axle && placed ? placeRows(axle, placed, side, mmPerFileUnit(document)) : [];
  }, [document, axleName, placed, side]);
  return (
    <section aria-labelledby="places-head">
      <div className="lengthhead">
        <h3 id="places-head">Points, now and at design</h3>
        <KeepTable isOfPosition name="points" table={() => placeTable(rows, side, units.length)} />
      </div>
      <Segments label="Side of the points" options={SIDES} chosen={side} onChoose={setSide} />
      <table className="lengthtable places">
        <thead>
          <tr>
            <th scope="col">{unit.unit}</th>
            <th scope="col">X</th>
            <th scope="col">Y</th>
            <th scope="col">Z</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, now, design }) => (
            <tr key={name} data-point={name}>
              <th scope="row">
                {nameOfKey(name)} <small>design</small>
              </th>
              {[0, 1, 2].map((axis) => (
                <td key={axis}>
                  {unit.format(now[axis] ?? 0)} <small>{unit.format(design[axis] ?? 0)}</small>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};
