import type { FaultCode } from '../faultCodes';
import { describe, type PlacelessFault } from '../fault';
import { isThere, numberOf, textOf, vectorOf, type Place, pairOf } from '../place';
import { listNames, suggest } from '../suggest';
import { length, type Vector } from '../../core/vector';

/** Where rules say what they found. */
export type Report = (fault: PlacelessFault) => void;

/** A value that breaks a rule, at its own place. */
export function reportValue(report: Report, place: Place, code: FaultCode, expected: string, hint: string | null = null): void {
  report({ code, path: place.path, found: describe(place.value), expected, hint });
}

/** Something that has to be there and is not. */
export function reportMissing(report: Report, place: Place, code: FaultCode, expected: string, hint: string | null = null): void {
  report({ code, path: place.path, found: 'nothing', expected, hint });
}

/** A name that has to be one of those known; the name when it is, undefined when it is not or not there. */
export function judgeName(
  report: Report,
  place: Place,
  code: FaultCode,
  what: string,
  known: readonly string[],
): string | undefined {
  const name = textOf(place);
  if (name === undefined || known.includes(name)) return name;
  reportValue(
    report,
    place,
    code,
    known.length === 0 ? `${what}; there is none` : `${what}: ${listNames(known)}`,
    suggest(name, known),
  );
  return undefined;
}

/** A key that has to be one of those known. */
export function judgeKey(
  report: Report,
  key: string,
  place: Place,
  code: FaultCode,
  what: string,
  known: readonly string[],
): boolean {
  if (known.includes(key)) return true;
  report({
    code,
    path: place.path,
    on: 'key',
    found: describe(key),
    expected: known.length === 0 ? `${what}; there is none` : `${what}: ${listNames(known)}`,
    hint: suggest(key, known),
  });
  return false;
}

/** Shorter than this, a direction is taken for a slip and not for a direction. */
const SHORTEST_DIRECTION = 1e-6;

/** A direction that has one; undefined when it is zero (reported) or not there. */
export function judgeDirection(report: Report, place: Place): Vector | undefined {
  const direction = vectorOf(place);
  if (direction === undefined || length(direction) >= SHORTEST_DIRECTION) return direction;
  reportValue(report, place, 'zero-direction', 'a direction that is not zero');
  return undefined;
}

/** Two numbers of which the first is the smaller. */
export function judgeInterval(report: Report, place: Place): readonly [number, number] | undefined {
  const pair = pairOf(place);
  if (pair === undefined) return undefined;
  if (pair[0] < pair[1]) return pair;
  const hint = pair[0] > pair[1] ? `write [${pair[1]}, ${pair[0]}]` : null;
  reportValue(report, place, 'reversed-range', '[least, greatest], the first smaller than the second', hint);
  return undefined;
}

/** No part stands at more places than this; studies go through all of them. */
const MOST_PLACES = 100_000;

/** A step that goes into its range too often: a slip of the pen that would fill the memory. */
export function judgeStep(report: Report, place: Place, range: readonly [number, number] | undefined): void {
  const step = numberOf(place);
  if (range === undefined || step === undefined || !(step > 0) || (range[1] - range[0]) / step <= MOST_PLACES) return;
  reportValue(report, place, 'out-of-range', `a step that goes into ${range[0]} to ${range[1]} at most 100,000 times`);
}

/** Refuses a thing that belongs to another layout. */
export function refuse(report: Report, place: Place, code: FaultCode, expected: string): void {
  if (isThere(place))
    report({ code, path: place.path, on: 'key', found: describe(place.path[place.path.length - 1]), expected, hint: null });
}
