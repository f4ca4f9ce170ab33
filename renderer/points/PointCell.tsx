import { useEffect, useState } from 'react';
import { parseNumber } from '../units/parseNumber';
import { unitsOf } from '../units/typedUnits';
import { formatNumber } from '../units/format';
import { useFieldUnit } from '../look/controls/useFieldUnit';
import { withPlaces } from './columnPlaces';

interface PointCellProps {
  readonly label: string;
  /** mm */
  readonly value: number;
  /** decimals that its column has */
  readonly places: number;
  readonly mirrored: boolean;
  /** @returns null where it was taken, else why not */
  readonly onSet: (mm: number) => string | null;
}

const STEP = 0.5;

/** A coordinate in the table: typed, or stepped with the arrows. What is refused stays, with the reason under it. */
export const PointCell = ({ label, value, places, mirrored, onSet }: PointCellProps) => {
  const { typedIn, format, toShown, fromShown } = useFieldUnit('length', 'mm', 2);
  const [typed, setTyped] = useState<string | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const forget = () => {
    setTyped(null);
    setRefused(null);
  };
  useEffect(forget, [value, typedIn]);
  const set = (mm: number, text: string | null) => {
    const fault = onSet(Number(mm.toFixed(6)));
    setRefused(fault);
    setTyped(fault === null ? null : text);
  };
  const take = () => {
    if (typed === null) return;
    const number = parseNumber(typed, unitsOf(typedIn));
    if (number.kind === 'unit') setRefused(`“${number.found}” is no unit of length here: mm or in.`);
    else if (number.kind === 'none') setRefused(`“${typed.trim()}” is not a number.`);
    else if (number.value === toShown(value)) forget();
    else set(fromShown(number.value), typed);
  };
  return (
    <span className={`cell${refused === null ? '' : ' faulty'}${mirrored ? ' mirrored' : ''}`}>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        aria-label={`${label}, ${typedIn}`}
        aria-invalid={refused !== null}
        data-taken={typed === null ? '' : undefined}
        value={typed ?? withPlaces(format(value), places)}
        title={`${formatNumber(value, 6).replaceAll(',', '')} mm`}
        onChange={(event) => setTyped(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          else if (event.key === 'Escape' && typed !== null) {
            event.stopPropagation();
            forget();
          } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
            event.preventDefault();
            const step = (event.shiftKey ? STEP / 10 : STEP) * (event.key === 'ArrowUp' ? 1 : -1);
            set(value + step, null);
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
