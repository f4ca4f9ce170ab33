import { version } from '../../package.json';

/** Who answered, as every JSON answer says it. */
export const PROGRAM = `jounce ${version}`;

/** Raised when an answer changes its form. */
export const CONTRACT = 1;

/** A JSON answer with who gave it and under which contract. */
export const signed = <Document extends object>(document: Document): Document & { by: string; contract: number } => ({
  ...document,
  by: PROGRAM,
  contract: CONTRACT,
});
