import { parseCar, type Fault } from '../../geometry/index';

/** The place of a line and a column in a text, both from 1, as editors count. */
export const offsetOf = (text: string, line: number, column: number): number => {
  const ends = /\r\n|\r|\n/g;
  let start = 0;
  for (let at = 1; at < line; at += 1) {
    const end = ends.exec(text);
    if (!end) break;
    start = end.index + end[0].length;
  }
  return Math.min(start + column - 1, text.length);
};

const MEANT = /^did you mean `([^`]+)`\?$/;
const QUOTED = /"(?:[^"\\]|\\.)*"/y;

/** A fault that can be mended without asking. */
export interface SureMend {
  readonly text: string;
  /** "armRare → armRear" */
  readonly words: string;
}

/**
 * The text with one fault mended, where the mend is sure: a name that is nearly one that is meant, and with it the fault is
 * gone and no other has come. Null where a person has to look.
 */
export const sureMend = (text: string, faults: readonly Fault[], fault: Fault): SureMend | null => {
  const meant = MEANT.exec(fault.hint ?? '')?.[1];
  if (meant === undefined || meant.endsWith('…') || fault.line === null) return null;
  const from = offsetOf(text, fault.line, fault.column ?? 1);
  QUOTED.lastIndex = from;
  const token = QUOTED.exec(text)?.[0];
  if (token === undefined) return null;
  const mended = text.slice(0, from) + JSON.stringify(meant) + text.slice(from + token.length);
  const read = parseCar(mended);
  const left = read.ok ? [] : read.failure.faults;
  const isGone = left.length < faults.length && !left.some(({ line, column }) => line === fault.line && column === fault.column);
  return isGone ? { text: mended, words: `${token.slice(1, -1)} → ${meant}` } : null;
};
