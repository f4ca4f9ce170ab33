import type { Failure } from '../../geometry/index';

export interface FailureAsked {
  /** the position in words, empty where the car stands */
  readonly position: string;
  /** whether the setup can be laid on the car at all: then only the position is out of reach */
  readonly isSet: boolean;
  /** writes a length */
  readonly mm: (length: number) => string;
  /** an engine's message in the words of the field */
  readonly inWords: (message: string) => string;
}

/** What cannot be reached, or which setup cannot be laid on the car, where, by how much, and what to do. */
export const failureSentences = (
  failure: Failure & { readonly setup: string },
  { position, isSet, mm, inWords }: FailureAsked,
): { readonly title: string; readonly detail: string } => {
  const { setup, kind, missingMm, limitedBy } = failure;
  if (kind === 'setup') {
    const title = `${setup} does not fit this car.`;
    return { title, detail: `${failure.message} Mend it under Setups…, or choose another setup.` };
  }
  const missing = missingMm === undefined ? '' : ` ${mm(missingMm)} mm are missing.`;
  const limit = limitedBy === undefined ? '' : ` It is limited by ${inWords(limitedBy)}.`;
  const ended = /[.!?]$/.test(failure.message) ? failure.message : `${failure.message}.`;
  const detail = `${inWords(ended)}${missing}${limit}`;
  if (!isSet)
    return { title: `${setup} cannot be set up on this car.`, detail: `${detail} Take back what was changed last (Ctrl Z).` };
  const where = position === '' ? `where ${setup} stands` : `at ${position}`;
  const title = kind === 'singular' ? `The linkage locks up ${where}.` : `The linkage cannot reach ${where}.`;
  return { title, detail: `${detail} Take less travel, or turn the part back.` };
};
