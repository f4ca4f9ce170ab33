import { useState } from 'react';
import { useFieldUnit } from '../../look/controls/useFieldUnit';
import { parseNumber } from '../../units/parseNumber';
import { unitsOf } from '../../units/typedUnits';
import { withPlaces } from '../columnPlaces';

interface GivenCellProps {
  readonly label: string;
  readonly measures: 'length' | 'angle';
  /** mm or degrees; null: not given yet */
  readonly value: number | null;
  /** decimals that its column has; as many as the number needs where it stands in none */
  readonly places?: number;
  readonly onGive: (value: number | null) => void;
}

/** A number that is not given yet, or was; emptied it is not given any more. What is no number stays, with the reason. */
export const GivenCell = ({ label, measures, value, places = 0, onGive }: GivenCellProps) => {
  const isLength = measures === 'length';
  const { typedIn, format, fromShown } = useFieldUnit(measures, isLength ? 'mm' : '°', isLength ? 2 : 3);
  const [typed, setTyped] = useState<string | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const take = () => {
    if (typed === null) return;
    const number = parseNumber(typed, unitsOf(typedIn));
    const isEmpty = typed.trim() === '';
    const fault = isEmpty || number.kind === 'number' ? null : 'Not a number in this unit.';
    setRefused(fault);
    if (fault !== null) return;
    setTyped(null);
    onGive(number.kind === 'number' ? Number(fromShown(number.value).toFixed(6)) : null);
  };
  return (
    <span className={`cell${refused === null ? '' : ' faulty'}${value === null ? ' notgiven' : ''}`}>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        aria-label={`${label}, ${typedIn}`}
        aria-invalid={refused !== null}
        data-given={value === null ? 'not yet' : ''}
        value={typed ?? (value === null ? '' : withPlaces(format(value), places))}
        onChange={(event) => setTyped(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          else if (event.key === 'Escape' && typed !== null) {
            event.stopPropagation();
            setTyped(null);
            setRefused(null);
          }
        }}
      />
      {refused !== null && (
        <span className="fieldfault" role="alert">
          {refused}
        </span>
      )}
    </span>
  );
};
