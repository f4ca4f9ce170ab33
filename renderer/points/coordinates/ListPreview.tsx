import { pointNamesOf, type AxleName, type BroughtRow, type CarDocument } from '../../../geometry/index';
import { VerdictShape } from '../../look/controls/VerdictShape';
import { useUnits } from '../../look/units';
import { shownQuantity } from '../../units/shownQuantity';
import { asOnSide } from './asOnSide';
import type { ListAnswer } from './question';

interface ListPreviewProps {
  readonly car: CarDocument;
  readonly axle: AxleName;
  readonly answer: ListAnswer;
  readonly names: Readonly<Record<string, string | null>>;
  /** rows whose point is a guess from the words of their names */
  readonly guessed: readonly string[];
  readonly onName: (row: string, point: string | null) => void;
}

const LEFT_OUT = 'none';

/** Every row of the list: as read, where it is on the car, what it replaces and by how much; its point can be said by hand. */
export const ListPreview = ({ car, axle, answer, names, guessed, onName }: ListPreviewProps) => {
  const { brought, list, rows } = answer;
  const units = useUnits();
  const place = shownQuantity({ quantity: 'length', decimals: 2 }, units);
  const change = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const of = car[axle];
  const known = of ? pointNamesOf(of) : [];
  if (rows.length === 0)
    return (
      <div className="preview" role="group" aria-label="Preview">
        <p className="quiet">
          {list.rows.length === 0
            ? 'Paste a list, or choose a file. Every point is shown here before anything is taken.'
            : 'The points are shown when nothing stands in the way.'}
        </p>
      </div>
    );
  const takenBy = (row: BroughtRow) =>
    brought?.points.find(({ point, lines }) => row.state === 'taken' && point === row.point && lines.includes(row.line));
  return (
    <div className="preview" role="group" aria-label="Preview" tabIndex={0}>
      {brought?.warnings.map(({ code, path, message }) => (
        <p key={`${code} ${path}`} className="previewwarning">
          <span className="chip close">
            <VerdictShape verdict="close" />
            look
          </span>{' '}
          {message}
        </p>
      ))}
      {guessed.length > 0 && (
        <p className="previewwarning">
          <span className="chip close">
            <VerdictShape verdict="close" />
            look
          </span>{' '}
          {guessed.length === 1 ? '1 point is' : `${guessed.length} points are`} guessed from the words in the list, marked with a
          question mark. Look at each before you take them.
        </p>
      )}
      <table className="previewtable">
        <thead>
          <tr>
            <th scope="col">In the list</th>
            <th scope="col">Point</th>
            <th scope="col">Side</th>
            {['X', 'Y', 'Z'].map((axis) => (
              <th key={axis} scope="col" className="number">
                {axis} {place.unit}
              </th>
            ))}
            <th scope="col" className="number was">
              was
            </th>
            <th scope="col" className="number">
              ΔX · ΔY · ΔZ
            </th>
            <th scope="col" className="number">
              shift
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const point = takenBy(row);
            const taken = point && asOnSide(point, row.onSide);
            const was = taken ? (taken.replaces?.map((value) => change.format(value)).join(' · ') ?? 'new') : '';
            const byHand = Object.hasOwn(names, row.name) ? (names[row.name] ?? LEFT_OUT) : undefined;
            return (
              <tr key={row.line} className={row.state}>
                <th scope="row" title={`${row.name}, line ${row.line}: ${row.read.join(', ')}`}>
                  {row.name}
                </th>
                <td>
                  <select
                    aria-label={`${row.name} is`}
                    value={byHand ?? row.point ?? (row.state === 'unknown' ? '' : LEFT_OUT)}
                    onChange={(event) => onName(row.name, event.target.value === LEFT_OUT ? null : event.target.value)}
                  >
                    {row.state === 'unknown' && <option value="">no such point</option>}
                    <option value={LEFT_OUT}>{row.state === 'reference' ? 'reference only' : 'left out'}</option>
                    {known.map((name) => (
                      <option key={name}>{name}</option>
                    ))}
                  </select>
                  {guessed.includes(row.name) && (
                    <span className="guess" title="guessed from its name" aria-label="guessed from its name">
                      ?
                    </span>
                  )}
                </td>
                <td>{row.state === 'taken' ? row.onSide : ''}</td>
                {(taken?.at ?? row.at).map((value, index) => (
                  <td key={index} className="number">
                    {place.format(value)}
                  </td>
                ))}
                <td className="number quiet was">{was}</td>
                <td className="number" title={was && was !== 'new' ? `was ${was}` : undefined}>
                  {taken?.change?.map((value) => change.formatChange(value)).join(' · ') ?? was}
                </td>
                <td className="number">{taken?.shift === null || !taken ? '' : place.format(taken.shift)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
};
