import { useEffect } from 'react';
import { nameOfKey } from '../adjusters/fitterWords';
import { useBench, useWindow } from '../shell/benchContext';
import { layTape } from '../state/actions/viewing';
import type { PointRef } from '../state/viewing';
import { tapeReading } from './lengthTables';
import { useLengthUnit } from './useLengthUnit';

const NAMES = ['Length', 'ΔX, forward', 'ΔY, left', 'ΔZ, up'] as const;

const keyOf = ({ side, point }: PointRef): string => `${side} ${point}`;

interface EndProps {
  readonly label: string;
  readonly ends: readonly PointRef[];
  readonly chosen: PointRef | undefined;
  readonly onChoose: (end: PointRef) => void;
}

const End = ({ label, ends, chosen, onChoose }: EndProps) => (
  <label>
    {label}
    <select
      aria-label={`Tape ${label}`}
      value={chosen ? keyOf(chosen) : ''}
      onChange={(event) => {
        const end = ends.find((one) => keyOf(one) === event.target.value);
        if (end) onChoose(end);
      }}
    >
      {ends.map((end) => (
        <option key={keyOf(end)} value={keyOf(end)}>
          {nameOfKey(end.point)}, {end.side}
        </option>
      ))}
    </select>
  </label>
);

/** A tape between any two points of the axle; it is drawn in the view while this is open. */
export const TapeReader = () => {
  const { store } = useWindow();
  const unit = useLengthUnit();
  const axle = useBench((state) => state.axle);
  const shown = useBench((state) => state.shown);
  const tape = useBench((state) => state.viewing.tape);
  const placed = shown?.row.placed;
  const ends = placed
    ? (['left', 'right'] as const).flatMap((side) =>
        Object.keys(placed[side].points).map((point): PointRef => ({ axle, side, point })),
      )
    : [];
  const known = (end: PointRef | undefined): PointRef | undefined => ends.find((one) => end && keyOf(one) === keyOf(end));
  const from = known(tape?.[0]) ?? ends.find(({ point }) => point === 'wheelCentre');
  const to = known(tape?.[1]) ?? ends.find(({ point, side }) => point === 'wheelCentre' && side === 'right');
  useEffect(() => () => layTape(store, null), [store]);
  if (!placed || !from || !to) return null;
  const other = shown.compared.ok && shown.compared.value !== shown.row ? shown.compared.value.placed : null;
  const reading = tapeReading(placed, other, from, to);
  return (
    <section aria-labelledby="tape-head">
      <div className="lengthhead">
        <h3 id="tape-head">Tape, {unit.unit}</h3>
      </div>
      <div className="tapeends">
        <End label="from" ends={ends} chosen={from} onChoose={(end) => layTape(store, [end, to])} />
        <End label="to" ends={ends} chosen={to} onChoose={(end) => layTape(store, [from, end])} />
      </div>
      <table className="lengthtable">
        <tbody>
          {NAMES.map((name, index) => (
            <tr key={name} data-tape={name}>
              <th scope="row">{name}</th>
              <td>{unit.format(reading?.now[index] ?? 0)}</td>
              <td className="change">{reading?.change ? unit.formatChange(reading.change[index] ?? 0) : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};
