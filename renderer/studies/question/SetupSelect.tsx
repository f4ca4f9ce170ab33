import { setupNames, type CarDocument } from '../../../geometry/index';

interface SetupSelectProps {
  readonly document: CarDocument;
  readonly setup: string;
  /** id of the sentence that says what is wrong; null where nothing is */
  readonly faultId: string | null;
  readonly onChange: (setup: string) => void;
}

/** The setup that a question starts from; one that the car has no longer stays named. */
export const SetupSelect = ({ document, setup, faultId, onChange }: SetupSelectProps) => (
  <select
    className="pick"
    aria-label="Starting from the setup"
    aria-invalid={faultId !== null}
    aria-describedby={faultId ?? undefined}
    value={setup}
    onChange={(event) => onChange(event.target.value)}
  >
    {[...new Set([...setupNames(document), setup])].map((name) => (
      <option key={name} value={name}>
        {name}
      </option>
    ))}
  </select>
);
