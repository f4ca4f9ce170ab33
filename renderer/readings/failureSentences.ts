import type { Failure } from '../../geometry/index';

/**
 * What cannot be reached, where, by how much, and what to do.
 * @param asked - the position in words, empty where the car stands
 * @param mm - writes a length
 */
export const failureSentences = (
  failure: Failure & { readonly setup: string },
  asked: string,
  mm: (length: number) => string,
): { readonly title: string; readonly detail: string } => {
  const where = asked === '' ? `where ${failure.setup} stands` : `at ${asked}`;
  const title = failure.kind === 'singular' ? `The linkage locks up ${where}.` : `The linkage cannot reach ${where}.`;
  const missing = failure.missingMm === undefined ? '' : ` ${mm(failure.missingMm)} mm are missing.`;
  const limit = failure.limitedBy === undefined ? '' : ` It is limited by ${failure.limitedBy}.`;
  const message = /[.!?]$/.test(failure.message) ? failure.message : `${failure.message}.`;
  return { title, detail: `${message}${missing}${limit} Take less travel, or turn the part back.` };
};
