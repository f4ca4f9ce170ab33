import { describe } from '../fault';
import { at, entriesOf, isThere, numberOf, textOf, type Place } from '../place';
import { cross, distance, length, unit, type Vector } from '../../core/vector';
import { carrierOfPoint, isLinkEnd, SIDES, STRUT_CLAMP_POINTS, type AxleView } from './axleView';
import { judgeDirection, judgeInterval, judgeName, judgeStep, reportMissing, reportValue, type Report } from './report';

/** Words of a setup's axle that an adjuster cannot be called. */
export const RESERVED_ADJUSTER_NAMES = ['notes', 'setToe', 'rideHeight', 'springRate', 'barRate', 'barHole', 'wheel', 'record'];

/** Closer than this to parallel, `twelve` says nothing about where 12 is (sine of the angle). */
const PARALLEL = 1e-6;
const SHORTEST_CLAMP_MM = 1;
/** Threads in inches are written rounded (0.0833 for a twelfth). */
const THREAD_ROUNDING = 1e-3;

const TURNED_BOTH_WAYS = ['eccentric-bolt', 'clamp-eccentric'];

/** Least and greatest setting of an adjuster; undefined when its own description is broken. */
export function settingBounds(adjuster: Place): readonly [number, number] | undefined {
  const kind = textOf(at(adjuster, 'kind'));
  if (kind === undefined) return undefined;
  if (TURNED_BOTH_WAYS.includes(kind)) return [-90, 90];
  if (kind === 'offset-bushing') return [0, 360];
  const range = at(adjuster, 'range').value as readonly unknown[] | undefined;
  if (!Array.isArray(range) || range.length !== 2) return undefined;
  const [min, max] = range as readonly unknown[];
  return typeof min === 'number' && typeof max === 'number' && min < max ? [min, max] : undefined;
}

function judgeMoved(view: AxleView, adjuster: Place, report: Report): void {
  const moves = at(adjuster, 'moves');
  const point = judgeName(report, moves, 'unknown-point', 'a point of this axle', view.knownPoints);
  if (point === undefined || view.layout === undefined) return;
  const carrier = carrierOfPoint(view, point);
  if (carrier === undefined) {
    reportValue(report, moves, 'point-not-movable', 'a point that a link, a pivot or the wheel stands on');
    return;
  }
  const seat = at(adjuster, 'seat');
  const given = textOf(seat);
  if (given === 'arm') {
    if (!isLinkEnd(view, point)) reportValue(report, seat, 'seat-mismatch', `"${carrier}": no rod or arm ends at \`${point}\``);
  } else if ((given === 'body' || given === 'knuckle') && given !== carrier) {
    reportValue(
      report,
      seat,
      'seat-mismatch',
      `"${carrier}"${isLinkEnd(view, point) ? ' or "arm"' : ''}: \`${point}\` is on the ${carrier}`,
    );
  }
}

function judgeTwelve(adjuster: Place, report: Report): void {
  const axis = judgeDirection(report, at(adjuster, 'axis'));
  const twelve = judgeDirection(report, at(adjuster, 'twelve'));
  if (axis === undefined || twelve === undefined) return;
  if (length(cross(unit(axis), unit(twelve))) < PARALLEL) {
    reportValue(
      report,
      at(adjuster, 'twelve'),
      'parallel-directions',
      "a direction across `axis`: along it no place is 12 o'clock",
    );
  }
}

function judgeClamp(view: AxleView, adjuster: Place, report: Report): void {
  judgeDirection(report, at(adjuster, 'axis'));
  if (view.layout === 'multi-link') {
    reportValue(
      report,
      at(adjuster, 'kind'),
      'wrong-layout',
      'another kind: only a strut is clamped to its knuckle by two bolts',
    );
    return;
  }
  const pivot = judgeName(report, at(adjuster, 'pivot'), 'unknown-point', 'a bolt of the clamp', STRUT_CLAMP_POINTS);
  const bolt = judgeName(report, at(adjuster, 'bolt'), 'unknown-point', 'a bolt of the clamp', STRUT_CLAMP_POINTS);
  if (pivot !== undefined && pivot === bolt) {
    reportValue(report, at(adjuster, 'bolt'), 'clamp-geometry', 'the other bolt than `pivot`');
    return;
  }
  for (const name of [pivot, bolt]) {
    if (name !== undefined && !view.pointNames.includes(name)) {
      reportMissing(
        report,
        at(view.place, 'points', name),
        'missing-point',
        `the point \`${name}\`: a clamp-eccentric turns between the two bolts`,
      );
    }
  }
  if (pivot === undefined || bolt === undefined) return;
  const throwLength = numberOf(at(adjuster, 'throw'));
  for (const side of SIDES) {
    const [a, b] = [view.pointOf(pivot, side), view.pointOf(bolt, side)];
    if (a === undefined || b === undefined) continue;
    const isMirror = [pivot, bolt].every((name) => !isThere(at(view.place, 'right', 'points', name)));
    if (side === 'right' && isMirror) continue;
    judgeClampLength(view, adjuster, side, [a, b], throwLength, report);
  }
}

function judgeClampLength(
  view: AxleView,
  adjuster: Place,
  side: string,
  ends: readonly [Vector, Vector],
  throwLength: number | undefined,
  report: Report,
): void {
  const gap = distance(...ends);
  if (gap * view.mmPerUnit < SHORTEST_CLAMP_MM) {
    report({
      code: 'clamp-geometry',
      path: at(adjuster, 'bolt').path,
      found: `${Number((gap * view.mmPerUnit).toPrecision(3))} mm between the bolts on the ${side}`,
      expected: `${SHORTEST_CLAMP_MM} mm or more`,
      hint: null,
    });
  } else if (throwLength !== undefined && throwLength > gap) {
    report({
      code: 'clamp-geometry',
      path: at(adjuster, 'throw').path,
      found: String(throwLength),
      expected: `no more than the distance between the bolts (${Number(gap.toPrecision(4))} on the ${side})`,
      hint: null,
    });
  }
}

function judgeThread(adjuster: Place, report: Report): void {
  const thread = at(adjuster, 'thread');
  const [perTurn, pitch] = [numberOf(at(adjuster, 'perTurn')), numberOf(at(thread, 'pitch'))];
  if (numberOf(at(thread, 'ends')) !== 2 || perTurn === undefined || pitch === undefined) return;
  if (Math.abs(perTurn - 2 * pitch) > THREAD_ROUNDING * perTurn) {
    reportValue(
      report,
      at(adjuster, 'perTurn'),
      'thread-mismatch',
      `${2 * pitch}: two ends of opposite hand move 2 × pitch a turn`,
    );
  }
}

function judgeTurnbuckle(view: AxleView, adjuster: Place, report: Report): void {
  const rod = at(adjuster, 'rod');
  if (textOf(rod) === 'barLink') {
    if (!isThere(at(view.place, 'antiRollBar')))
      reportValue(report, rod, 'unknown-rod', 'an anti-roll bar on this axle, or another rod');
  } else judgeName(report, rod, 'unknown-rod', 'a rod of this axle or `barLink`', [...view.rodNames, 'barLink']);
  judgeInterval(report, at(adjuster, 'range'));
  judgeThread(adjuster, report);
}

function judgePerch(view: AxleView, adjuster: Place, report: Report): void {
  judgeInterval(report, at(adjuster, 'range'));
  const movesBody = textOf(at(adjuster, 'moves')) === 'body';
  const needed = movesBody ? 'damper' : 'spring';
  if (!isThere(at(view.place, needed))) {
    reportMissing(
      report,
      at(view.place, needed),
      'missing-part',
      `a ${needed} for the perch \`${String(adjuster.path[adjuster.path.length - 1])}\``,
    );
  }
  if (movesBody && view.layout === 'multi-link') {
    reportValue(report, at(adjuster, 'moves'), 'wrong-layout', '"seat": only a strut has a threaded foot');
  }
}

function judgeAdjuster(view: AxleView, adjuster: Place, report: Report): void {
  for (const name of ['step', 'mark', 'index']) judgeStep(report, at(adjuster, name), settingBounds(adjuster));
  switch (textOf(at(adjuster, 'kind'))) {
    case 'slide':
      judgeMoved(view, adjuster, report);
      judgeDirection(report, at(adjuster, 'along'));
      judgeInterval(report, at(adjuster, 'range'));
      break;
    case 'eccentric-bolt':
      judgeMoved(view, adjuster, report);
      judgeDirection(report, at(adjuster, 'slot'));
      break;
    case 'offset-bushing':
      judgeMoved(view, adjuster, report);
      judgeTwelve(adjuster, report);
      break;
    case 'clamp-eccentric':
      judgeClamp(view, adjuster, report);
      break;
    case 'turnbuckle':
      judgeTurnbuckle(view, adjuster, report);
      break;
    case 'perch':
      judgePerch(view, adjuster, report);
      break;
    case undefined:
    default:
      // the schema has said that there is no such kind
      break;
  }
}

export function judgeAdjusters(view: AxleView, report: Report): void {
  let clamp: string | undefined;
  for (const [name, adjuster] of entriesOf(at(view.place, 'adjusters'))) {
    if (RESERVED_ADJUSTER_NAMES.includes(name)) {
      report({
        code: 'reserved-name',
        path: adjuster.path,
        on: 'key',
        found: describe(name),
        expected: 'another name: this one has a meaning of its own in a setup',
        hint: null,
      });
    }
    judgeAdjuster(view, adjuster, report);
    if (textOf(at(adjuster, 'kind')) !== 'clamp-eccentric') continue;
    if (clamp !== undefined)
      reportValue(
        report,
        at(adjuster, 'kind'),
        'clamp-repeated',
        `one clamp-eccentric on a corner at most; \`${clamp}\` is there already`,
      );
    clamp ??= name;
  }
  judgeName(report, at(view.place, 'toeAdjuster'), 'unknown-adjuster', 'an adjuster of this axle', view.adjusterNames);
}
