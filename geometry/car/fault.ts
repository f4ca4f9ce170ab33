import type { FaultCode } from './faultCodes';

/** What is wrong with a car file, and where. The form is that of the command line's contract. */
export interface Fault {
  /** stable, kebab-case; listed in faultCodes.ts */
  readonly code: string;
  /** `front.points.armRear[2]`; null when the file as a whole is meant */
  readonly path: string | null;
  /** 1-based */
  readonly line: number | null;
  /** 1-based, counted in UTF-16 units as editors do */
  readonly column: number | null;
  readonly found: string | null;
  readonly expected: string | null;
  readonly hint: string | null;
}

/** Something odd that does not stop the file from being used. */
export interface Warning {
  readonly code: string;
  readonly path: string | null;
  readonly message: string;
}

export type Path = readonly (string | number)[];

/** A fault before its line and column are known. */
export interface PlacelessFault {
  readonly code: FaultCode;
  readonly path: Path;
  /** what the position points at: the value (default) or the key before it */
  readonly on?: 'key';
  /** known position in the text, in UTF-16 units from its start; otherwise found from the path */
  readonly offset?: number;
  readonly found: string | null;
  readonly expected: string | null;
  readonly hint?: string | null;
}

/** Longer texts are cut where they are quoted. */
const LONGEST_EXCERPT = 60;

const PLAIN_KEY = /^[A-Za-z_$][A-Za-z0-9_$-]*$/;

/** `["front", "points", "armRear", 2]` as `front.points.armRear[2]`; null for the whole file. */
export function formatPath(path: Path): string | null {
  if (path.length === 0) return null;
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (!PLAIN_KEY.test(step) || step.length > LONGEST_EXCERPT) text += `[${JSON.stringify(shorten(step))}]`;
    else text += text === '' ? step : `.${step}`;
  }
  return text;
}

export function shorten(text: string): string {
  return text.length <= LONGEST_EXCERPT ? text : `${text.slice(0, LONGEST_EXCERPT - 1)}…`;
}

/** A value of the file in a few words: `"strut"`, `[1, 2]`, `an object`, `nothing`. */
export function describe(value: unknown): string {
  switch (typeof value) {
    case 'undefined':
      return 'nothing';
    case 'string':
      return JSON.stringify(shorten(value));
    case 'number':
      if (value === Infinity) return 'a number past 1.8e308';
      if (value === -Infinity) return 'a number past -1.8e308';
      return String(value);
    case 'boolean':
      return String(value);
    default:
      if (value === null) return 'null';
      if (!Array.isArray(value)) return 'an object';
      if (value.length === 0) return 'an empty list';
      if (value.length > 8 || value.some((item) => typeof item === 'object' && item !== null)) return `a list of ${value.length}`;
      return shorten(`[${value.map(describe).join(', ')}]`);
  }
}
