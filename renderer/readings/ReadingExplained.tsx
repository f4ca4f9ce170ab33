import { SYMBOLS } from '../../geometry/index';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { withUnit } from '../units/shownQuantity';
import type { ReadingRow } from './readingRows';
import { withNumbers, type WithNumbers } from './withNumbers';

const Numbers = ({ numbers, isLeft }: { readonly numbers: WithNumbers; readonly isLeft: boolean }) => {
  const units = useUnits();
  const isOther = units.length !== 'mm' || units.angle !== 'degrees' || units.toe !== 'angle' || units.force !== 'newton';
  const words = [isLeft ? 'left' : '', numbers.from ?? '', isOther ? 'in mm, degrees, N' : ''].filter((part) => part !== '');
  return (
    <>
      {words.length > 0 && <p className="quiet">{words.join('; ')}:</p>}
      {numbers.steps.map(({ name, expression, value, unit }) => (
        <p key={name} className="formula step">
          {name} = {expression} = {withUnit(value, unit)}
        </p>
      ))}
      <p className="formula">
        {numbers.expression} = {withUnit(numbers.value, numbers.unit)}
      </p>
    </>
  );
};

/** What a reading is, which way is plus, why one cares, its formula with this car's numbers, and the source. */
export const ReadingExplained = ({ row, columns }: { readonly row: ReadingRow; readonly columns: number }) => {
  const { entry } = row;
  const shown = useBench((state) => state.shown);
  const axleName = useBench((state) => state.axle);
  const setup = useBench((state) => state.history?.present.setup ?? '');
  const numbers = shown && withNumbers(entry.key, { row: shown.row, position: shown.position, axleName, setup });
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
          {numbers !== null && <Numbers numbers={numbers} isLeft={entry.of === 'corner'} />}
          {row.why !== null && <p>No value: {row.why}.</p>}
          <p className="quiet">{entry.source}</p>
        </div>
      </td>
    </tr>
  );
};
