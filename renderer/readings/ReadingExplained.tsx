import { SYMBOLS } from '../../geometry/index';
import { useBench } from '../shell/benchContext';
import type { ReadingRow } from './readingRows';
import { withNumbers } from './withNumbers';

/** What a reading is, which way is plus, why one cares, its formula with this car's numbers, and the source. */
export const ReadingExplained = ({ row, columns }: { readonly row: ReadingRow; readonly columns: number }) => {
  const { entry } = row;
  const numbers = useBench((state) => (state.shown ? withNumbers(entry.key, state.shown.row) : null));
  return (
    <tr className="explained">
      <td colSpan={columns}>
        <div role="note" aria-label={`About ${entry.name}`}>
          <p>
            {entry.meaning}
            {entry.plus !== '' && <b> Plus: {entry.plus}.</b>}
          </p>
          <p>{entry.why}</p>
          <p className="formula" title={SYMBOLS}>
            {entry.formula}
          </p>
          {numbers !== null && (
            <p className="formula">
              {entry.of === 'corner' ? 'left: ' : ''}
              {numbers}
            </p>
          )}
          {row.why !== null && <p>No value: {row.why}.</p>}
          <p className="quiet">{entry.source}</p>
        </div>
      </td>
    </tr>
  );
};
