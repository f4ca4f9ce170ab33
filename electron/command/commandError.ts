import type { Failure, Fault } from '../../geometry/index';
import { wrap } from './textTable';

export type ErrorKind = 'usage' | 'file' | 'setup' | 'unreachable' | 'singular' | 'system';

/** What went wrong, as `--json` shows it. */
export interface ErrorDocument {
  readonly kind: ErrorKind;
  readonly message: string;
  readonly faults?: readonly Fault[];
  readonly missingMm?: number;
  readonly condition?: number;
  readonly limitedBy?: string;
}

/** The command cannot be answered. Thrown anywhere below a verb, caught once in `runCommand` and once per line in `batch`. */
export class CommandError extends Error {
  readonly document: ErrorDocument;

  constructor(document: ErrorDocument) {
    super(document.message);
    this.name = 'CommandError';
    this.document = document;
  }
}

/** 1: nothing could be answered; 2: command, file or setup wrong; 3: the system failed. */
export function exitStatusOf(kind: ErrorKind): 1 | 2 | 3 {
  switch (kind) {
    case 'unreachable':
    case 'singular':
      return 1;
    case 'usage':
    case 'file':
    case 'setup':
      return 2;
    case 'system':
      return 3;
  }
}

export const usageError = (message: string): CommandError => new CommandError({ kind: 'usage', message });
export const systemError = (message: string): CommandError => new CommandError({ kind: 'system', message });

/** A failure of the engine in the words of the contract; fields that the engine left out stay out. */
export function errorOfFailure(failure: Failure): ErrorDocument {
  const { kind, message, missingMm, condition, limitedBy } = failure;
  return {
    kind,
    message,
    ...(isFiniteNumber(missingMm) ? { missingMm } : {}),
    ...(isFiniteNumber(condition) ? { condition } : {}),
    ...(limitedBy === undefined ? {} : { limitedBy }),
  };
}

const isFiniteNumber = (value: number | undefined): value is number => value !== undefined && Number.isFinite(value);

/** Any thrown value as an error document; what nobody foresaw is the program's own failure. */
export function errorOfThrown(thrown: unknown): ErrorDocument {
  if (thrown instanceof CommandError) return thrown.document;
  // the face of the engine throws RangeError when it is asked something that is not a question
  if (thrown instanceof RangeError && !/call stack|string length|array length/i.test(thrown.message))
    return { kind: 'usage', message: thrown.message };
  return { kind: 'system', message: `jounce failed: ${thrown instanceof Error ? thrown.message : String(thrown)}` };
}

/** An error in words, for standard error: the message, then every fault with its place, what was found and what is expected. */
export function errorInWords(error: ErrorDocument): string {
  const lines = [error.message];
  for (const fault of error.faults ?? []) lines.push(...wrap(`  ${faultInWords(fault)}`, '    '));
  return lines.join('\n');
}

export function faultInWords(fault: Fault): string {
  const place = [
    fault.line === null ? null : `line ${fault.line}${fault.column === null ? '' : `, column ${fault.column}`}`,
    fault.path,
  ].filter((part) => part !== null);
  const findings = [
    fault.found === null ? null : `found ${fault.found}`,
    fault.expected === null ? null : `expected ${fault.expected}`,
  ].filter((part) => part !== null);
  const hint = fault.hint === null ? '' : `; ${fault.hint}`;
  return `${place.length > 0 ? `${place.join(', ')}: ` : ''}${findings.join(', ')}${hint} [${fault.code}]`;
}
