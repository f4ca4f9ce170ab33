import { findReading } from '../../readings/catalogue';
import { formatPath } from '../fault';
import { at, isObject, isThere, itemsOf, numberOf, pairOf, textOf, type Place } from '../place';
import type { WantedDocument } from '../questionDocument';
import { contradictionsIn, type PlaceWanted } from './contradictions';
import { reportValue, type Report } from './report';

const MOTIONS: readonly string[] = ['bump', 'roll', 'steer'];
/** Where the path inside the question begins: behind `questions` and its name. */
const INSIDE = 2;

/** A line of what is wanted that can be held against others; undefined where it is wrong in itself. */
function wantedIn(line: Place): WantedDocument | undefined {
  const [reading, tolerance] = [textOf(at(line, 'reading')), numberOf(at(line, 'tolerance'))];
  if (reading === undefined || tolerance === undefined || !(tolerance > 0)) return undefined;
  const isNumber = (...path: readonly string[]): boolean => numberOf(at(line, ...path)) !== undefined;
  const travel = at(line, 'at', 'travel');
  const ends = at(line, 'range').value;
  const isRange =
    Array.isArray(ends) && ends.length === 2 && ends.every((end) => end === null || Number.isFinite(end)) && !isReversed(ends);
  const checks = [
    isNumber('value') !== isRange,
    !(isThere(at(line, 'at')) && isThere(at(line, 'over'))),
    !isThere(at(line, 'at')) || isObject(at(line, 'at').value),
    !isThere(travel) || numberOf(travel) !== undefined || pairOf(travel) !== undefined,
    ...['rack', 'roll'].map((key) => !isThere(at(line, 'at', key)) || isNumber('at', key)),
    !isThere(at(line, 'over')) ||
      (isNumber('over', 'from') &&
        isNumber('over', 'to') &&
        MOTIONS.includes(textOf(at(line, 'over', 'motion')) ?? '') &&
        Number.isInteger(at(line, 'over', 'steps').value) &&
        (numberOf(at(line, 'over', 'steps')) ?? 0) > 0),
  ];
  return checks.every(Boolean) ? (line.value as WantedDocument) : undefined;
}

const isReversed = ([least, greatest]: readonly (number | null)[]): boolean =>
  least !== null && greatest !== null && least > greatest;

/** What a line leaves possible, as the file gives it. */
function possible({ value, range = [null, null], tolerance }: WantedDocument): string {
  if (value !== undefined) return `${value} within ${tolerance}`;
  const [least, greatest] = range;
  if (least === null) return `${greatest} or less`;
  return greatest === null ? `${least} or more` : `${least} to ${greatest}`;
}

/** "at travel 40", "at travel 10 and -10, rack 5, roll 1"; at zero "where the car stands". */
function placeWords({ left, right, rack, roll }: PlaceWanted): string {
  const words = [
    ...(left === 0 && right === 0 ? [] : [`travel ${left === right ? left : `${left} and ${right}`}`]),
    ...(rack === 0 ? [] : [`rack ${rack}`]),
    ...(roll === 0 ? [] : [`roll ${roll}`]),
  ];
  return words.length === 0 ? 'where the car stands' : `at ${words.join(', ')}`;
}

/** Lines of which no car can meet all: each is a fault at its own place that names the others. */
export function judgeContradictions(list: Place, report: Report): void {
  const lines = itemsOf(list);
  const wanted = lines.map(wantedIn);
  const placeOf = (index: number): Place => at(lines[index], wanted[index]?.value === undefined ? 'range' : 'value');
  for (const { lines: excluded, at: where } of contradictionsIn(wanted, (reading) => findReading(reading)?.of === 'corner'))
    for (const index of excluded) {
      const others = excluded.filter((other) => other !== index);
      const said = others.map((other) => {
        const line = wanted[other];
        const change = line?.change === true ? 'a change of ' : '';
        return `${formatPath(placeOf(other).path.slice(INSIDE)) ?? ''} (${change}${line === undefined ? '' : possible(line)})`;
      });
      const verb = others.length === 1 ? 'leaves' : 'leave';
      reportValue(
        report,
        placeOf(index),
        'question-form',
        `what ${said.join(' and ')} ${verb} possible ${placeWords(where)}`,
        'they exclude each other: no car meets them all',
      );
    }
}
