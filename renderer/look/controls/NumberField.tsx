import { useEffect, useId, useState, type KeyboardEvent, type ReactNode } from 'react';
import { formatShort } from '../../units/format';
import { parseNumber } from '../../units/parseNumber';
import { unitsOf, type TypedUnit } from '../../units/typedUnits';
import { withinRange } from '../../units/withinRange';
import { labelIn, useFieldUnit, type FieldMeasure } from './useFieldUnit';
import { FieldFault } from './FieldFault';
import { useTellFault } from './fieldFaults';

export interface NumberFieldProps {
  /** spoken name, with side and unit */
  readonly label: string;
  readonly value: number | null;
  /** what stands in the field when there is no number */
  readonly absent?: string;
  /** the unit of `value`, `min` and `max`: others of the same quantity may be typed, and the person may have chosen another to read in */
  readonly unit: string;
  /** what is measured: a length in mm, an angle in degrees, a force in N is then read and typed in the units that the person chose */
  readonly measures?: FieldMeasure;
  /** more that may be typed behind the number */
  readonly moreUnits?: readonly TypedUnit[];
  readonly min: number;
  readonly max: number;
  readonly decimals?: number;
  readonly before?: ReactNode;
  readonly className?: string;
  /** what may be typed besides a number, said with the range */
  readonly hint?: string | undefined;
  /** why it cannot be changed; it can still be reached and read */
  readonly lockedBy?: string;
  /** allows "none" and an empty field */
  readonly onClear?: () => void;
  readonly onSet: (value: number) => void;
  /** steps of the part: ±1 a mark, ±0.1 between marks, ±5 */
  readonly onStep: (steps: number) => void;
  readonly onHome: () => void;
}

const PAGE = 5;
const FINE = 0.1;

const isNone = (text: string): boolean => /^(none|)$/i.test(text.trim());

/** Steps that a key asks for; 0 for any other key. */
const stepsOf = ({ key, shiftKey }: KeyboardEvent): number => {
  const one = shiftKey ? FINE : 1;
  switch (key) {
    case 'ArrowUp':
      return one;
    case 'ArrowDown':
      return -one;
    case 'PageUp':
      return PAGE;
    case 'PageDown':
      return -PAGE;
    default:
      return 0;
  }
};

/** Letters of a number and its unit that a field has room for in figures of plain width. */
const MOST_PLAIN = 9;

/**
 * An exact number: typed and taken with Enter or on leaving, stepped with the arrows, zeroed with Home, given up with Escape.
 * What is typed wrong stays in the field, marked, with the reason beside it. While it holds what was typed and not yet taken,
 * the input has `data-draft`: undo is then the field's own.
 */
export const NumberField = (props: NumberFieldProps) => {
  const { decimals = 3, lockedBy } = props;
  const { unit, typedIn, format, toShown, fromShown } = useFieldUnit(props.measures, props.unit, decimals);
  const value = props.value === null ? null : toShown(props.value);
  const [min, max] = [toShown(props.min), toShown(props.max)];
  const label = labelIn(props.label, props.unit, typedIn);
  const [typed, setTyped] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const faultId = useId();
  useTellFault(faultId, label, fault !== null);
  // No comma between thousands: in a field it is a decimal comma.
  const shown = props.value === null ? (props.absent ?? '') : format(props.value);
  const range = `${formatShort(min)} … ${formatShort(max)}${typedIn === '°' ? '' : ' '}${typedIn}`;

  const isLong = (typed ?? shown).length + unit.length > MOST_PLAIN;

  const forget = () => {
    setTyped(null);
    setFault(null);
  };
  useEffect(forget, [props.value, typedIn]);

  const take = () => {
    if (typed === null) return;
    if (props.onClear && isNone(typed)) {
      forget();
      props.onClear();
      return;
    }
    const units = [...unitsOf(typedIn), ...(props.moreUnits ?? [])];
    const read = parseNumber(typed, units);
    const inside = read.kind === 'number' ? withinRange(read.value, min, max) : null;
    if (read.kind === 'none') setFault(`Not a number. ${range}`);
    else if (read.kind === 'unit')
      setFault(`${read.found} is no unit here: ${units.map(({ name }) => name).join(' or ') || 'a number alone'}. ${range}`);
    else if (inside === null) setFault(`Out of range: ${range}`);
    else {
      forget();
      if (inside !== value) props.onSet(fromShown(inside));
    }
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') take();
    else if (event.key === 'Escape' && typed !== null) {
      forget();
      event.stopPropagation();
    } else if (lockedBy === undefined && typed === null && event.key === 'Home') {
      event.preventDefault();
      props.onHome();
    } else if (lockedBy === undefined && stepsOf(event) !== 0) {
      event.preventDefault();
      forget();
      props.onStep(stepsOf(event));
    }
  };

  return (
    <span className={`field ${props.className ?? ''}${fault ? ' faulty' : ''}${isLong ? ' longnumber' : ''}`}>
      {props.before}
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        role="spinbutton"
        aria-label={label}
        aria-valuenow={value ?? 0}
        aria-valuetext={value === null ? (props.absent ?? 'none') : `${shown} ${unit}`}
        aria-valuemin={min}
        aria-valuemax={max}
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : faultId}
        data-draft={typed === null ? undefined : ''}
        aria-readonly={lockedBy !== undefined}
        readOnly={lockedBy !== undefined}
        title={fault ?? lockedBy ?? (props.hint === undefined ? range : `${range}; ${props.hint}`)}
        size={7}
        value={typed ?? shown}
        onChange={(event) => setTyped(event.target.value === shown ? null : event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={take}
        onKeyDown={onKeyDown}
      />
      <span className="unit" aria-hidden="true">
        {unit}
      </span>
      {fault !== null && <FieldFault id={faultId}>{fault}</FieldFault>}
    </span>
  );
};
