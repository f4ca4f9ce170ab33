import { EffectCell } from '../answers/AnswerCells';
import { shortName } from '../answers/sideEffects';
import { effectOf, hasValue, isDifferent, pairText, type compareGroups, type CompareRow, type Pair } from './compareTable';

interface ReadingTableProps {
  readonly groups: NonNullable<ReturnType<typeof compareGroups>>;
  readonly names: readonly string[];
  readonly withAlike: boolean;
}

/**
 * Every reading of the axle: the setup on the bench, then each other with this less the other. Of several others the value
 * stands over the difference: beside it there is no room.
 */
export const ReadingTable = ({ groups, names, withAlike }: ReadingTableProps) => {
  const shown = groups
    .map(({ label, rows }) => ({ label, rows: rows.filter((row) => hasValue(row) && (withAlike || isDifferent(row))) }))
    .filter(({ rows }) => rows.length > 0);
  const [own = '', ...others] = names;
  const isClose = others.length > 1;
  return (
    <table className={isClose ? 'close' : undefined}>
      <thead>
        <tr>
          <th scope="col">Reading</th>
          <th scope="col" className="number left">
            {own}
            <br />
            <span className="unit">left</span>
          </th>
          <th scope="col" className="number right">
            <br />
            <span className="unit">right</span>
          </th>
          {others.flatMap((name) => [
            ...(isClose
              ? []
              : [
                  <th key={name} scope="col" className="number">
                    {name}
                  </th>,
                ]),
            <th key={`${name} left`} scope="col" className="number left">
              {isClose && (
                <>
                  <span className="closename" title={name}>
                    {name}
                  </span>
                  <br />
                </>
              )}
              ± left
            </th>,
            <th key={`${name} right`} scope="col" className="number right" aria-label={isClose ? `${name} ± right` : undefined}>
              ± right
            </th>,
          ])}
        </tr>
      </thead>
      {shown.map(({ label, rows }) => (
        <tbody key={label}>
          <tr className="grouprow">
            <th scope="rowgroup" colSpan={3 + (isClose ? 2 : 3) * others.length}>
              {label}
            </th>
          </tr>
          {rows.map((row) => (
            <ReadingRow key={row.entry.key} row={row} />
          ))}
        </tbody>
      ))}
    </table>
  );
};

const ReadingRow = ({ row }: { readonly row: CompareRow }) => {
  const { entry, shown, own, others } = row;
  const write = (value: number | null): string => (value === null ? '–' : shown.format(value));
  const hasSides = own.right !== undefined;
  return (
    <tr title={row.why ?? entry.meaning}>
      <th scope="row">
        {shortName(entry)} <span className="unit">{shown.unit}</span>
      </th>
      {hasSides ? (
        <>
          <td className="number">
            <b>{write(own.left)}</b>
          </td>
          <td className="number">
            <b>{write(own.right ?? null)}</b>
          </td>
        </>
      ) : (
        <td className="number" colSpan={2}>
          <b>{write(own.left)}</b>
        </td>
      )}
      {others.map(({ values, differences }, index) => (
        <OtherCells key={index} values={values} write={write} row={row} differences={differences} isClose={others.length > 1} />
      ))}
    </tr>
  );
};

interface OtherProps {
  readonly row: CompareRow;
  readonly values: Pair;
  readonly differences: Pair;
  readonly write: (value: number | null) => string;
  /** the value stands over the difference */
  readonly isClose: boolean;
}

const OtherCells = ({ row: { column, shown }, values, differences, write, isClose }: OtherProps) => {
  const over = (value: number | null | undefined) => (isClose && value !== undefined ? { over: write(value) } : {});
  return (
    <>
      {!isClose && <td className="number quiet othervalue">{pairText(values, shown)}</td>}
      <EffectCell effect={effectOf(column, differences.left)} {...over(values.left)} />
      {differences.right === undefined ? (
        <td />
      ) : (
        <EffectCell effect={effectOf(column, differences.right)} {...over(values.right)} />
      )}
    </>
  );
};
