export interface SegmentsProps<Name extends string> {
  readonly label: string;
  readonly options: readonly { readonly name: Name; readonly label: string; readonly disabled?: boolean }[];
  readonly chosen: Name;
  readonly className?: string;
  readonly onChoose: (name: Name) => void;
}

/** A few choices side by side of which one holds. */
export const Segments = <Name extends string>({ label, options, chosen, className, onChoose }: SegmentsProps<Name>) => (
  <span className={`segments ${className ?? ''}`} role="group" aria-label={label}>
    {options.map((option) => (
      <button
        key={option.name}
        type="button"
        aria-pressed={option.name === chosen}
        disabled={option.disabled}
        onClick={() => onChoose(option.name)}
      >
        {option.label}
      </button>
    ))}
  </span>
);
