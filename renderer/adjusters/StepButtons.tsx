interface StepButtonsProps {
  /** whose steps: "Rear bushing" */
  readonly of: string;
  /** one step: "1 mark" */
  readonly words: string;
  /** before the step's words where only one side is turned: "left: " */
  readonly side?: string;
  readonly onStep: (steps: 1 | -1) => void;
}

/** One step of the part either way. */
export const StepButtons = ({ of, words, side, onStep }: StepButtonsProps) => (
  <span className="steps" role="group" aria-label="Steps of the part">
    <button type="button" aria-label={`${of}: ${words} less`} onClick={() => onStep(-1)}>
      −
    </button>
    <span>
      {side}
      {words}
    </span>
    <button type="button" aria-label={`${of}: ${words} more`} onClick={() => onStep(1)}>
      +
    </button>
  </span>
);
