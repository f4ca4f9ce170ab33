import { findReading } from '../../../geometry/index';
import { useUnits } from '../../look/units';
import { shownReading, withUnit } from '../../units/shownQuantity';
import type { OwnToe, ToeChoice } from './toeChoice';
import { fieldOf } from './fieldValue';
import { QuestionField } from './QuestionField';

interface ToePickerProps {
  /** what the setup has by itself; null where no adjuster turns toe */
  readonly own: OwnToe | null;
  readonly choice: ToeChoice;
  readonly faultId: string | null;
  readonly onChange: (choice: ToeChoice) => void;
}

const TOE = findReading('toe');

/** What becomes of toe while parts are turned. Nothing is drawn where no adjuster turns toe. */
export const ToePicker = ({ own, choice, faultId, onChange }: ToePickerProps) => {
  const units = useUnits();
  if (own === null || !TOE) return null;
  const shown = shownReading(TOE, units);
  const words = own.toes.map((toe) => withUnit(shown.format(toe), shown.unit)).join(' and ');
  return (
    <span className="toepick">
      <select
        className="pick"
        aria-label="What becomes of toe"
        value={own.isSet && choice.kind === 'follow' ? 'own' : choice.kind}
        onChange={(event) => {
          const kind = event.target.value as ToeChoice['kind'];
          onChange({
            kind,
            value: kind === 'value' && choice.value.value === null ? fieldOf(own.toes[0] ?? null) : choice.value,
          });
        }}
      >
        <option value="own">
          {own.isDrawn ? `toe set to ${words}, the drawing’s where the setup sets none` : `toe kept at ${words}`}
        </option>
        <option value="value">toe set to…</option>
        {own.isSet ? (
          <option value="follow" disabled>
            toe left to follow: not where the setup sets it
          </option>
        ) : (
          <option value="follow">toe left to follow</option>
        )}
      </select>
      {choice.kind === 'value' && (
        <QuestionField
          label={`Toe, ${shown.unit === '°' ? 'degrees' : shown.unit} per wheel`}
          field={choice.value}
          shown={shown}
          faultId={faultId}
          onChange={(value) => onChange({ ...choice, value })}
        />
      )}
    </span>
  );
};
