import { formatShort } from '../../units/format';
import type { ShownQuantity } from '../../units/shownQuantity';
import { leftField, typedField, type FieldValue } from './fieldValue';

interface QuestionFieldProps {
  /** spoken name, with its unit */
  readonly label: string;
  readonly field: FieldValue;
  readonly shown: Pick<ShownQuantity, 'unit' | 'toShown' | 'fromShown' | 'format'>;
  /** the id of the sentence that says what is wrong with it; null: nothing is */
  readonly faultId: string | null;
  readonly onChange: (field: FieldValue) => void;
  readonly className?: string;
}

// No comma between thousands: in a field it is a decimal comma.
const written = (value: number, { unit, toShown, format }: QuestionFieldProps['shown']): string =>
  unit === '' && /[°′]/.test(format(value)) ? format(value) : formatShort(toShown(value), 5).replaceAll(',', '');

/** A number in a question. What is typed is never lost: it stays as it is, and the fault is said beside the question. */
export const QuestionField = ({ label, field, shown, faultId, onChange, className }: QuestionFieldProps) => {
  const text = field.typed ?? (field.value === null ? '' : written(field.value, shown));
  return (
    <span data-unit={shown.unit} className={`field questionfield ${className ?? ''}${faultId === null ? '' : ' faulty'}`}>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        aria-label={label}
        aria-invalid={faultId !== null}
        aria-describedby={faultId ?? undefined}
        data-draft={field.typed === null ? undefined : ''}
        data-taken={field.typed === null ? '' : undefined}
        size={6}
        value={text}
        onChange={(event) => onChange(typedField(event.target.value, shown))}
        onFocus={(event) => event.target.select()}
        onBlur={() => {
          if (field.typed !== null) onChange(leftField(field));
        }}
      />
      {shown.unit !== '' && (
        <span className="unit" aria-hidden="true">
          {shown.unit}
        </span>
      )}
    </span>
  );
};
