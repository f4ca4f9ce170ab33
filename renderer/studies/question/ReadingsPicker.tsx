import type { ReadingOwner } from '../../../geometry/index';
import { Popover } from '../../look/controls/Popover';
import { PickWords } from './PlacePicker';
import { readingChoices } from './readingChoices';
import './readingsPicker.css';

interface ReadingsPickerProps {
  /** of what: "columns", "curves" */
  readonly label: string;
  readonly owners: readonly ReadingOwner[];
  readonly chosen: readonly string[];
  readonly onChange: (keys: readonly string[]) => void;
}

/** A button that says how many readings are chosen, and the list behind it. New ones come last. */
export const ReadingsPicker = ({ label, owners, chosen, onChange }: ReadingsPickerProps) => (
  <Popover
    button={{
      className: 'pick',
      label: `${label}: ${chosen.length} readings chosen`,
      title: `Which readings are ${label}`,
      content: <PickWords>{`${chosen.length} readings`}</PickWords>,
    }}
    label={`Readings as ${label}`}
    role="group"
    className="readingscard"
  >
    {readingChoices(owners).map((group) => (
      <fieldset key={group.label}>
        <legend>{group.label}</legend>
        {group.entries.map(({ key, name }) => (
          <label key={key} className="tick">
            <input
              type="checkbox"
              checked={chosen.includes(key)}
              onChange={(event) => onChange(event.target.checked ? [...chosen, key] : chosen.filter((one) => one !== key))}
            />
            {name}
          </label>
        ))}
      </fieldset>
    ))}
  </Popover>
);
