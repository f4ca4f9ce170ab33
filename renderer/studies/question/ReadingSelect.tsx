import type { ReadingOwner } from '../../../geometry/index';
import { readingChoices } from './readingChoices';

interface ReadingSelectProps {
  readonly label: string;
  readonly value: string;
  readonly owners: readonly ReadingOwner[];
  readonly faultId?: string | null;
  readonly onChange: (key: string) => void;
}

/** Which reading is asked about. */
export const ReadingSelect = ({ label, value, owners, faultId = null, onChange }: ReadingSelectProps) => {
  const groups = readingChoices(owners);
  const isKnown = groups.some(({ entries }) => entries.some(({ key }) => key === value));
  return (
    <select
      className="pick reading"
      aria-label={label}
      aria-invalid={faultId !== null}
      aria-describedby={faultId ?? undefined}
      value={value}
      onChange={(event) => onChange(event.target.value)}
    >
      {!isKnown && <option value={value}>{value}</option>}
      {groups.map((group) => (
        <optgroup key={group.label} label={group.label}>
          {group.entries.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
  );
};
