import type { Failure } from '../../geometry/index';

/**
 * What cannot be reached, or which setup cannot be laid on the car, where, by how much, and what to do.
 * @param asked - the position in words, empty where the car stands
 * @param mm - writes a length
 */
export const failureSentences = (
  failure: Failure & { readonly setup: string },
  asked: string,
  mm: (length: number) => string,
): { readonly title: string; readonly detail: string } => {
  const where = asked === '' ? `where ${failure.setup} stands` : `at ${asked}`;
  if (failure.kind === 'setup') {
    const title = `${failure.setup} does not fit this car.`;
    return { title, detail: `${failure.message} Mend it under Setups…, or choose another setup.` };
  }
  const title = failure.kind === 'singular' ? `The linkage locks up ${where}.` : `The linkage cannot reach ${where}.`;
  const missing = failure.missingMm === undefined ? '' : ` ${mm(failure.missingMm)} mm are missing.`;
  const limit = failure.limitedBy === undefined ? '' : ` It is limited by ${failure.limitedBy}.`;
  const message = /[.!?]$/.test(failure.message) ? failure.message : `${failure.message}.`;
  return { title, detail: `${message}${missing}${limit} Take less travel, or turn the part back.` };
};
