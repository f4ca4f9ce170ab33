import { lazy, memo, Suspense } from 'react';
import { unitBeside } from '../units/unitBeside';
import { LimitBars, type LimitPair } from './LimitBars';
import { numberClass } from './numberClass';
import type { ReadingRow } from './readingRows';

/** Formulas with numbers are a chunk of their own: nobody has asked for one yet when the window is painted. */
const ReadingExplained = lazy(async () => ({ default: (await import('./ReadingExplained')).ReadingExplained }));

const NOTHING = /^[+−]?0(\.0*)?$/;

const Change = ({ text, own }: { readonly text: string | null; readonly own: boolean }) => (
  <td className={`${numberClass(text, own)} change${text !== null && NOTHING.test(text) ? ' nothing' : ''}`}>{text ?? '–'}</td>
);

const Name = ({
  row,
  isOpen,
  onOpen,
}: {
  readonly row: ReadingRow;
  readonly isOpen: boolean;
  readonly onOpen: (id: string) => void;
}) => (
  <th scope="row">
    <button
      type="button"
      className="readingname"
      aria-expanded={isOpen}
      title={row.entry.plus ? `${row.entry.meaning} Plus: ${row.entry.plus}.` : row.entry.meaning}
      onClick={() => onOpen(row.id)}
    >
      {row.name}
      {row.unit && <span className="unit">{`\u00a0${unitBeside(row.name, row.unit)}`}</span>}
    </button>
  </th>
);

export interface ReadingLineProps {
  readonly row: ReadingRow;
  /** the held part moves it */
  readonly moved: boolean;
  /** left and right have a column of differences each */
  readonly own: boolean;
  readonly limits: readonly LimitPair[] | undefined;
  /** its explanation is open under it */
  readonly isOpen: boolean;
  readonly onOpen: (id: string) => void;
}

const sameRow = (a: ReadingRow, b: ReadingRow): boolean =>
  a.unit === b.unit &&
  a.left === b.left &&
  a.right === b.right &&
  a.leftChange === b.leftChange &&
  a.rightChange === b.rightChange &&
  a.why === b.why;

/** One reading: left, right and the difference; an axle's value spans both sides; what is missing says why. */
const Line = ({ row, moved, own, limits, isOpen, onOpen }: ReadingLineProps) => {
  const nowhere = row.left === null && row.right === null;
  return (
    <>
      <tr className={moved ? 'moved' : undefined} data-reading={row.id}>
        <Name row={row} isOpen={isOpen} onOpen={onOpen} />
        {nowhere ? (
          <td className="why" colSpan={own ? 4 : 3}>
            {row.why}
          </td>
        ) : row.owner === 'whole' ? (
          <>
            <td className="number" colSpan={2}>
              {row.left}
            </td>
            <Change text={row.leftChange} own={own} />
            {own && <td />}
          </>
        ) : (
          <>
            <td className={numberClass(row.left, own)} title={row.left === null ? (row.why ?? undefined) : undefined}>
              {row.left ?? '–'}
            </td>
            <td className={numberClass(row.right, own)} title={row.right === null ? (row.why ?? undefined) : undefined}>
              {row.right ?? '–'}
            </td>
            <Change text={row.leftChange} own={own} />
            {own && <Change text={row.rightChange} own={own} />}
          </>
        )}
      </tr>
      {limits !== undefined && <LimitBars limits={limits} columns={own ? 5 : 4} />}
      {isOpen && (
        <Suspense>
          <ReadingExplained row={row} columns={own ? 5 : 4} />
        </Suspense>
      )}
    </>
  );
};

/** Drawn anew only when something written in it changed: while the car moves many lines stay. */
export const ReadingLine = memo(
  Line,
  (a, b) => a.isOpen === b.isOpen && a.moved === b.moved && a.own === b.own && a.limits === b.limits && sameRow(a.row, b.row),
);
