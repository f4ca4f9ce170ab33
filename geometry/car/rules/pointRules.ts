import { describe } from '../fault';
import type { FaultCode } from '../faultCodes';
import { at, entriesOf, isThere, textOf, vectorOf, type Place } from '../place';
import { suggest } from '../suggest';
import { distance } from '../../core/vector';
import { LARGEST_COORDINATE_MM } from '../schema/vocabulary';
import { SIDES, STRUT_CLAMP_POINTS, STRUT_FOOT, STRUT_REQUIRED_POINTS, type AxleView } from './axleView';
import { judgeKey, reportMissing, reportValue, type Report } from './report';

export const SHORTEST_ROD_MM = 1;
export const SHORTEST_STRUT_AXIS_MM = 10;
/** A right-hand point this far on the left has most likely lost its sign. */
const SIGN_SLIP_MM = 10;

/** Names: all that the layout needs, and on a strut nothing else. */
function judgePointNames(view: AxleView, report: Report): void {
  const points = at(view.place, 'points');
  if (!isThere(points)) return;
  const required: readonly string[] =
    view.layout === 'strut' ? STRUT_REQUIRED_POINTS : view.layout === 'multi-link' ? ['wheelCentre'] : [];
  for (const name of required) {
    if (isThere(at(points, name))) continue;
    const unknown = view.pointNames.filter((given) => !required.includes(given));
    const slip = unknown.find((given) => suggest(given, [name]) !== null);
    reportMissing(
      report,
      at(points, name),
      'missing-point',
      `the point \`${name}\``,
      slip === undefined ? null : `is it \`${slip}\`?`,
    );
  }
  if (view.layout === 'strut') {
    const known = [...STRUT_REQUIRED_POINTS, ...STRUT_CLAMP_POINTS, ...namedBySpringAndDamper(view)];
    for (const [name, place] of entriesOf(points))
      judgeKey(report, name, place, 'unknown-point', 'a point of a strut corner', known);
  }
  for (const [name, place] of entriesOf(at(view.place, 'right', 'points'))) {
    judgeKey(report, name, place, 'unknown-point', 'a point that the left side has', view.pointNames);
  }
}

const namedBySpringAndDamper = (view: AxleView): string[] =>
  ['spring', 'damper']
    .flatMap((part) => ['upper', 'lower'].map((end) => textOf(at(view.place, part, end))))
    .filter((name) => name !== undefined);

/** Signs: the left wheel is on the left, right-hand points are given in the car's frame. */
function judgeSides(view: AxleView, report: Report): void {
  const left = view.pointOf('wheelCentre', 'left');
  if (left !== undefined && left[1] <= 0) {
    reportValue(
      report,
      view.placeOf('wheelCentre', 'left'),
      'wrong-side',
      'a wheel centre on the left, y greater than 0',
      'points are those of the left side, y to the left',
    );
  }
  for (const [name, place] of entriesOf(at(view.place, 'right', 'points'))) {
    const right = vectorOf(place);
    const twin = view.pointOf(name, 'left');
    if (right === undefined) continue;
    const isWheel = name === 'wheelCentre' && right[1] >= 0;
    const isSlip = twin !== undefined && twin[1] > 0 && right[1] * view.mmPerUnit > SIGN_SLIP_MM;
    if (isWheel || isSlip)
      reportValue(
        report,
        { value: right[1], path: [...place.path, 1] },
        'wrong-side',
        'a negative y: this point is on the right',
        `is it ${-right[1]}?`,
      );
  }
}

/** Two different places that something runs between, on both sides. */
function judgeGap(
  view: AxleView,
  report: Report,
  ends: readonly [string, string],
  least: number,
  code: FaultCode,
  blame: (side: 'left' | 'right') => Place,
  what: string,
): void {
  for (const side of SIDES) {
    const isMirror = ends[0] === ends[1] || ends.every((name) => !isThere(at(view.place, 'right', 'points', name)));
    if (side === 'right' && isMirror) continue;
    const [a, b] = [view.pointOf(ends[0], side), view.pointOf(ends[1], side)];
    if (a === undefined || b === undefined) continue;
    const gap = distance(a, b) * view.mmPerUnit;
    if (gap >= least) continue;
    report({
      code,
      path: blame(side).path,
      found: `${Number(gap.toPrecision(3))} mm from \`${ends[0]}\` to \`${ends[1]}\` on the ${side}`,
      expected: `${what} of ${least} mm or more`,
      hint: null,
    });
  }
}

function judgeLengths(view: AxleView, report: Report): void {
  for (const rod of view.rods) {
    const { inner, outer } = rod;
    if (inner === undefined || outer === undefined) continue;
    const blame = (side: 'left' | 'right'): Place =>
      view.layout === 'strut' || side === 'right' ? view.placeOf(outer, side) : rod.place;
    judgeGap(view, report, [inner, outer], SHORTEST_ROD_MM, 'rod-too-short', blame, 'a rod');
  }
  if (view.layout !== 'strut') return;
  judgeGap(
    view,
    report,
    ['strutTop', STRUT_FOOT],
    SHORTEST_STRUT_AXIS_MM,
    'strut-axis-too-short',
    (side) => view.placeOf(STRUT_FOOT, side),
    'a strut axis',
  );
  judgeGap(
    view,
    report,
    ['armFront', 'armRear'],
    SHORTEST_ROD_MM,
    'coincident-points',
    (side) => view.placeOf('armRear', side),
    'an arm base',
  );
}

/** Two of these define an axis or a length; the same place twice defines nothing. */
function judgeSpringEnds(view: AxleView, report: Report): void {
  for (const part of ['spring', 'damper']) {
    const [upper, lower] = [textOf(at(view.place, part, 'upper')), textOf(at(view.place, part, 'lower'))];
    if (upper === undefined || lower === undefined) continue;
    judgeGap(
      view,
      report,
      [upper, lower],
      SHORTEST_ROD_MM,
      'coincident-points',
      () => at(view.place, part, 'lower'),
      `a ${part}`,
    );
  }
}

export function judgePoints(view: AxleView, report: Report): void {
  judgePointNames(view, report);
  judgeSides(view, report);
  judgeLengths(view, report);
  judgeSpringEnds(view, report);
}

/** 100 m is 100 m in inches too; the schema, which knows no units, has judged the millimetres. */
export function judgeCoordinates(car: Place, mmPerUnit: number, report: Report): void {
  if (mmPerUnit === 1) return;
  const largest = LARGEST_COORDINATE_MM / mmPerUnit;
  const judge = (place: Place): void => {
    const point = vectorOf(place);
    point?.forEach((value, i) => {
      if (Math.abs(value) > largest && Math.abs(value) <= LARGEST_COORDINATE_MM) {
        report({
          code: 'too-large',
          path: [...place.path, i],
          found: describe(value),
          expected: `a coordinate within 100 m of the origin (${Math.floor(largest)} in)`,
          hint: null,
        });
      }
    });
  };
  for (const axle of ['front', 'rear']) {
    for (const points of [at(car, axle, 'points'), at(car, axle, 'right', 'points')])
      for (const [, place] of entriesOf(points)) judge(place);
    const bar = at(car, axle, 'antiRollBar');
    for (const name of ['pivot', 'armEnd', 'linkEnd']) judge(at(bar, name));
    for (const name of ['inner', 'outer']) judge(at(car, axle, 'driveShaft', name));
    judge(at(car, axle, 'heightAt', 'point'));
  }
  const masses = at(car, 'masses');
  if (Array.isArray(masses.value))
    masses.value.forEach((value: unknown, i) => judge(at({ value, path: [...masses.path, i] }, 'at')));
}
