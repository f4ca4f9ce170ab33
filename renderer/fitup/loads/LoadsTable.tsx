import type { AxleName, CarDocument, CaseLoads, SideName } from '../../../geometry/index';
import { useUnits } from '../../look/units';
import { RowName } from '../RowName';
import type { LoadLine } from './loadLines';
import { byWords, forcesIn, isInvented, lineUnit, momentsIn, valueWords } from './loadWords';

interface LoadsTableProps {
  readonly document: CarDocument;
  readonly axle: AxleName;
  readonly side: SideName;
  readonly cases: readonly CaseLoads[];
  readonly lines: readonly LoadLine[];
  readonly chosenCase: string;
  readonly chosenLine: string | null;
  readonly onCase: (name: string) => void;
  readonly onLine: (key: string) => void;
}

const GIVEN = [
  { key: 'Fx', words: 'Fx, forward' },
  { key: 'Fy', words: 'Fy, to the left' },
  { key: 'Fz', words: 'Fz, up' },
  { key: 'Mz', words: 'Mz' },
] as const;

/** Push to the left of the middle, dashed, and pull to the right of it; what has no sign from the left. */
const LoadBar = ({ what, value, most }: { readonly what: LoadLine['what']; readonly value: number; readonly most: number }) => {
  const share = Math.min(1, Math.abs(value) / most);
  const isSigned = what === 'axial';
  const width = (isSigned ? 50 : 100) * share;
  const left = !isSigned ? 0 : value < 0 ? 50 - width : 50;
  return (
    <span className="loadbar" aria-hidden="true">
      <i className={isSigned && value < 0 ? 'push' : undefined} style={{ left: `${left}%`, width: `${width}%` }} />
      {isSigned && <u />}
    </span>
  );
};

/** What every link of a wheel carries, a case a column; the most of a line is bold. */
export const LoadsTable = ({ document, axle, side, cases, lines, chosenCase, chosenLine, onCase, onLine }: LoadsTableProps) => {
  const units = useUnits();
  const most = Math.max(
    1,
    ...lines.filter(({ what }) => what !== 'bending').flatMap(({ values }) => values.map((v) => Math.abs(v ?? 0))),
  );
  const chosen = (name: string): string => (name === chosenCase ? ' chosencase' : '');
  return (
    <div className="answertable" tabIndex={0} role="region" aria-label="Table of link loads">
      <table className="loads">
        <thead>
          <tr>
            <th scope="col">
              Link, {axle} {side}
            </th>
            <th scope="col">
              <span className="unseen">Unit</span>
            </th>
            {cases.map(({ case: one }) => (
              <th key={one.name} scope="col" className={`number${chosen(one.name)}`}>
                <button
                  type="button"
                  className="casehead"
                  aria-pressed={one.name === chosenCase}
                  title={`${one.name}: shown in the picture, and edited below`}
                  onClick={() => onCase(one.name)}
                >
                  {one.name}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => {
            const isChosen = line.key === chosenLine;
            return (
              <tr key={line.key} className={isChosen ? 'chosen' : undefined} onClick={() => onLine(line.key)}>
                <RowName
                  group="fitup.loads"
                  label={`${line.name}, ${line.note}`}
                  side={side}
                  checked={isChosen}
                  onPick={() => onLine(line.key)}
                >
                  <b>{line.name}</b>
                  <br />
                  <span className="quiet strokenote">{line.note}</span>
                </RowName>
                <td className="quiet strokenote">{lineUnit(line, units)}</td>
                {line.values.map((value, index) => {
                  const name = cases[index]?.case.name ?? '';
                  const text = valueWords(line, value, units);
                  return (
                    <td
                      key={name}
                      className={`number${chosen(name)}`}
                      title={value === null ? (line.why ?? undefined) : undefined}
                    >
                      {index === line.worst ? <b>{text}</b> : text}
                      {value !== null && line.what !== 'bending' && <LoadBar what={line.what} value={value} most={most} />}
                    </td>
                  );
                })}
              </tr>
            );
          })}
          {GIVEN.filter(({ key }) => key !== 'Mz' || cases.some(({ case: one }) => one[axle]?.[side].Mz)).map(
            ({ key, words }) => (
              <tr key={key} className="givenrow">
                <th scope="row">Given: {words}</th>
                <td className="quiet strokenote">{key === 'Mz' ? momentsIn(units).unit : forcesIn(units).unit}</td>
                {cases.map(({ case: one }) => {
                  const value = one[axle]?.[side][key] ?? 0;
                  return (
                    <td key={one.name} className={`number${chosen(one.name)}`}>
                      {key === 'Mz' ? momentsIn(units).formatChange(value / 1000) : forcesIn(units).formatChange(value)}
                    </td>
                  );
                })}
              </tr>
            ),
          )}
          <tr className="givenrow">
            <th scope="row">Case</th>
            <td />
            {cases.map(({ case: one }) => (
              <td key={one.name} className={`number strokenote${chosen(one.name)}`}>
                {byWords(one)}
                {isInvented(one, document.loads?.[one.name]?.notes) && (
                  <>
                    <br />
                    <span className="invented">invented</span>
                  </>
                )}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </div>
  );
};
