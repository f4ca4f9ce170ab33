import { useState } from 'react';
import type { SideName } from '../../geometry/index';
import { Segments } from '../look/controls/Segments';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { scopeOf } from '../state/viewing';
import { withUnit } from '../units/shownQuantity';
import type { ReadingRow } from './readingRows';
import { symbolsIn } from './symbolsIn';
import { withNumbers, type WithNumbers } from './withNumbers';

const SIDES = [
  { name: 'left', label: 'Left' },
  { name: 'right', label: 'Right' },
] as const;

const Numbers = ({ numbers }: { readonly numbers: WithNumbers }) => (
  <>
    {numbers.from !== undefined && <p className="quiet">{numbers.from}:</p>}
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

/**
 * What a reading is, which way is plus, why one cares, its formula with this car's numbers, and the source. Where each wheel has
 * one of its own, the numbers are of the wheel in the view until another is chosen.
 */
export const ReadingExplained = ({ row, columns }: { readonly row: ReadingRow; readonly columns: number }) => {
  const { entry } = row;
  const units = useUnits();
  const shown = useBench((state) => state.shown);
  const axleName = useBench((state) => state.axle);
  const setup = useBench((state) => state.history?.present.setup ?? '');
  const viewed = useBench((state) => (scopeOf(state.preferences) === 'right' ? 'right' : 'left'));
  const [chosen, setChosen] = useState<SideName | null>(null);
  const side = chosen ?? viewed;
  const numbers = shown && withNumbers(entry.key, { row: shown.row, position: shown.position, axleName, setup, side, units });
  const symbols = symbolsIn(entry.formula);
  return (
    <tr className="explained">
      <td colSpan={columns}>
        <div role="note" aria-label={`About ${entry.name}`}>
          <p>
            {entry.meaning}
            {entry.plus !== '' && <b> Plus: {entry.plus}.</b>}
          </p>
          <p>{entry.why}</p>
          <p className="formula">{entry.formula}</p>
          {symbols !== '' && <p className="quiet">{symbols}</p>}
          {entry.of === 'corner' && (
            <div className="ofwheel">
              <span>With the numbers of this wheel</span>
              <Segments label={`${entry.name}: numbers of`} options={SIDES} chosen={side} onChoose={setChosen} />
            </div>
          )}
          {numbers !== null && <Numbers numbers={numbers} />}
          {row.why !== null && <p>No value: {row.why}.</p>}
          <p className="quiet">{entry.source}</p>
        </div>
      </td>
    </tr>
  );
};
