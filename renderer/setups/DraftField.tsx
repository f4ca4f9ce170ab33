import { useEffect, useId, useState } from 'react';

export interface DraftFieldProps {
  readonly label: string;
  readonly value: string;
  readonly className?: string;
  /** several lines: Enter breaks them, leaving takes them */
  readonly isLong?: true;
  /** @returns why it is not taken; null where it is */
  readonly onTake: (text: string) => string | null;
}

/** A text that is taken with Enter or on leaving, and given up with Escape. What is refused stays, with the reason. */
export const DraftField = ({ label, value, className, isLong, onTake }: DraftFieldProps) => {
  const [draft, setDraft] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const faultId = useId();
  const forget = () => {
    setDraft(null);
    setFault(null);
  };
  useEffect(forget, [value]);
  const take = () => {
    if (draft === null) return;
    const refused = draft === value ? null : onTake(draft);
    setFault(refused);
    if (refused === null) setDraft(null);
  };
  const shared = {
    'aria-label': label,
    'aria-invalid': fault !== null,
    'aria-describedby': fault === null ? undefined : faultId,
    'data-draft': draft === null ? undefined : true,
    'data-taken': draft === null ? true : undefined,
    className,
    value: draft ?? value,
    onBlur: take,
  };
  const giveUp = (event: React.KeyboardEvent) => {
    if (event.key !== 'Escape' || draft === null) return;
    // the dialog around it would close
    event.preventDefault();
    event.stopPropagation();
    forget();
  };
  return (
    <span className="draft">
      {isLong ? (
        <textarea {...shared} rows={3} onChange={(event) => setDraft(event.target.value)} onKeyDown={giveUp} />
      ) : (
        <input
          {...shared}
          type="text"
          autoComplete="off"
          onChange={(event) => setDraft(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') take();
            else giveUp(event);
          }}
        />
      )}
      {fault !== null && (
        <span id={faultId} className="draftfault" role="alert">
          {fault}
        </span>
      )}
    </span>
  );
};
