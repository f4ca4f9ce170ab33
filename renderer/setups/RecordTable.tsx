import { useState } from 'react';
import type { CarDocument } from '../../geometry/index';
import { useWindow } from '../shell/benchContext';
import { addRecordLine, removeRecordLine, writeRecordValue } from '../state/actions/setups';
import { setupNamed } from '../state/settings';
import { DraftField } from './DraftField';

const CORNERS = [
  { key: 'frontLeft', label: 'front left' },
  { key: 'frontRight', label: 'front right' },
  { key: 'rearLeft', label: 'rear left' },
  { key: 'rearRight', label: 'rear right' },
] as const;

/** A number where it is written as one, with point or comma; else the words as they stand. */
const valueOf = (typed: string): number | string | null => {
  const text = typed.trim();
  if (text === '') return null;
  const number = Number(text.replace('−', '-').replace(',', '.'));
  return Number.isFinite(number) ? number : text;
};

/** What was written down about a setup: pressures, temperatures, weights, one value at each corner. */
export const RecordTable = ({ document, name }: { readonly document: CarDocument; readonly name: string }) => {
  const { store } = useWindow();
  const [label, setLabel] = useState('');
  const [unit, setUnit] = useState('');
  const lines = setupNamed(document, name).record ?? [];
  const add = () => {
    addRecordLine(store, name, label, unit);
    setLabel('');
    setUnit('');
  };
  return (
    <table className="recordtable">
      <thead>
        <tr>
          <th scope="col">What</th>
          {CORNERS.map((corner) => (
            <th key={corner.key} scope="col" className="number">
              {corner.label}
            </th>
          ))}
          <td />
        </tr>
      </thead>
      <tbody>
        {lines.map((line, index) => (
          <tr key={index}>
            <th scope="row">
              {line.label} <span className="unit">{line.unit}</span>
            </th>
            {CORNERS.map((corner) => (
              <td key={corner.key}>
                <DraftField
                  label={`${line.label}, ${corner.label}${line.unit === undefined ? '' : `, ${line.unit}`}`}
                  value={String(line.values[corner.key] ?? '')}
                  onTake={(typed) => {
                    writeRecordValue(store, name, index, corner.key, valueOf(typed));
                    return null;
                  }}
                />
              </td>
            ))}
            <td>
              <button
                type="button"
                className="button bare"
                aria-label={`Take the line ${line.label} away`}
                onClick={() => removeRecordLine(store, name, index)}
              >
                ✕
              </button>
            </td>
          </tr>
        ))}
        <tr>
          <td colSpan={6}>
            <form
              className="newline"
              onSubmit={(event) => {
                event.preventDefault();
                add();
              }}
            >
              <input
                aria-label="New line: what"
                placeholder="pressure hot"
                value={label}
                onChange={(event) => setLabel(event.target.value)}
              />
              <input
                aria-label="New line: unit"
                placeholder="bar"
                value={unit}
                onChange={(event) => setUnit(event.target.value)}
              />
              <button type="submit" className="button" disabled={label.trim() === ''}>
                Add a line
              </button>
            </form>
          </td>
        </tr>
      </tbody>
    </table>
  );
};
