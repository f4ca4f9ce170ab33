import { VerdictShape } from '../../look/controls/VerdictShape';
import type { StepName, StepState } from './newCarSteps';

interface StepsProps {
  readonly steps: readonly StepState[];
  readonly chosen: StepName;
  readonly onChoose: (step: StepName) => void;
}

/** The way to a new car over its page: where one is, what is there, what is missing. One goes to and fro as one likes. */
export const Steps = ({ steps, chosen, onChoose }: StepsProps) => (
  <nav className="carsteps" aria-label="Steps to a new car">
    {steps.map(({ name, label, note, isDone }, index) => (
      <button
        key={name}
        type="button"
        aria-current={name === chosen ? 'step' : undefined}
        aria-label={`${index + 1} ${label}: ${note}`}
        onClick={() => onChoose(name)}
      >
        <span className={isDone ? 'stepsign done' : 'stepsign'} aria-hidden="true">
          {isDone && name !== chosen ? <VerdictShape verdict="within" /> : index + 1}
        </span>
        <span>
          <b>{label}</b>
          <span title={note}>{note}</span>
        </span>
      </button>
    ))}
  </nav>
);
