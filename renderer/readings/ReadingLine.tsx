import { LimitBars } from './LimitBars';
import type { ReadingRow } from './readingRows';

const NOTHING = /^[+−]?0(\.0*)?$/;

const Change = ({ text }: { readonly text: string | null }) => (
  <td className={`number change${text !== null && NOTHING.test(text) ? ' nothing' : ''}`}>{text ?? '–'}</td>
);

const Name = ({ row }: { readonly row: ReadingRow }) => (
  <th scope="row" title={row.entry.plus ? `${row.entry.meaning} Plus: ${row.entry.plus}.` : row.entry.meaning}>
    {row.name} {row.unit && <span className="unit">{row.unit}</span>}
  </th>
);

/** One reading: left, right and the difference; an axle's value spans both sides; what is missing says why. */
export const ReadingLine = ({
  row,
  moved,
  own,
}: {
  readonly row: ReadingRow;
  readonly moved: boolean;
  readonly own: boolean;
}) => {
  const nowhere = row.left === null && row.right === null;
  return (
    <>
      <tr className={moved ? 'moved' : undefined} data-reading={row.id}>
        <Name row={row} />
        {nowhere ? (
          <td className="why" colSpan={own ? 4 : 3}>
            {row.why}
          </td>
        ) : row.owner === 'whole' ? (
          <>
            <td className="number" colSpan={2}>
              {row.left}
            </td>
            <Change text={row.leftChange} />
            {own && <td />}
          </>
        ) : (
          <>
            <td className="number" title={row.left === null ? (row.why ?? undefined) : undefined}>
              {row.left ?? '–'}
            </td>
            <td className="number" title={row.right === null ? (row.why ?? undefined) : undefined}>
              {row.right ?? '–'}
            </td>
            <Change text={row.leftChange} />
            {own && <Change text={row.rightChange} />}
          </>
        )}
      </tr>
      <LimitBars reading={row.id} columns={own ? 5 : 4} />
    </>
  );
};
