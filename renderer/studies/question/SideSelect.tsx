import type { Sides } from '../../../geometry/index';

interface SideSelectProps {
  readonly label: string;
  readonly side: Sides;
  readonly onChange: (side: Sides) => void;
}

const LABELS: Readonly<Record<Sides, string>> = { both: 'both wheels', left: 'left', right: 'right' };

/** Both wheels, or one of them. */
export const SideSelect = ({ label, side, onChange }: SideSelectProps) => (
  <select className="pick" aria-label={label} value={side} onChange={(event) => onChange(event.target.value as Sides)}>
    {(['both', 'left', 'right'] as const).map((name) => (
      <option key={name} value={name}>
        {LABELS[name]}
      </option>
    ))}
  </select>
);
