import { describe } from '../fault';
import { at, isThere, textOf, type Place } from '../place';
import { listNames, suggest } from '../suggest';
import { isLinkEnd, type AxleView } from './axleView';
import { judgeDirection, judgeInterval, judgeName, refuse, reportMissing, reportValue, type Report } from './report';

/** Names that say something else where a carrier or a link is named. */
const RESERVED_ROD_NAMES = ['body', 'knuckle', 'trailingArm', 'barLink', 'driveShaft'];

function judgeRodEnds(view: AxleView, report: Report): void {
  for (const rod of view.rods) {
    const ends: readonly unknown[] = Array.isArray(rod.place.value) ? rod.place.value : [];
    ends.slice(0, 2).forEach((value, i) => {
      judgeName(report, { value, path: [...rod.place.path, i] }, 'unknown-point', 'a point of this axle', view.knownPoints);
    });
    if (RESERVED_ROD_NAMES.includes(rod.name)) {
      report({
        code: 'reserved-name',
        path: rod.place.path,
        on: 'key',
        found: describe(rod.name),
        expected: 'a name that is not one of the carriers',
        hint: null,
      });
    }
    if (rod.inner === 'wheelCentre') {
      reportValue(
        report,
        { value: rod.inner, path: [...rod.place.path, 0] },
        'point-on-two-bodies',
        'a point on the body: the wheel centre is on the knuckle',
      );
    }
  }
}

/** A point is on the body or on the knuckle: it cannot be on both, or the rods between would hold nothing. */
function judgeBodies(view: AxleView, report: Report): void {
  const inner = new Map<string, string>();
  for (const rod of view.rods) if (rod.inner !== undefined) inner.set(rod.inner, `rod \`${rod.name}\``);
  if (view.pivot !== undefined) inner.set(view.pivot, 'the trailing arm');
  for (const rod of view.rods) {
    const holder = rod.outer === undefined ? undefined : inner.get(rod.outer);
    if (holder === undefined || rod.outer === rod.inner) continue;
    reportValue(
      report,
      { value: rod.outer, path: [...rod.place.path, 1] },
      'point-on-two-bodies',
      `a point on the knuckle: ${holder} has this one on the body`,
      'a rod is [point on the body, point on the knuckle]',
    );
  }
}

function judgeCount(view: AxleView, report: Report): void {
  const rods = at(view.place, 'rods');
  const trailingArm = at(view.place, 'trailingArm');
  if (!isThere(rods)) {
    reportMissing(report, rods, 'missing-key', 'the rods of the multi-link');
    return;
  }
  const wanted = isThere(trailingArm) ? 3 : 5;
  const given = view.rods.length;
  if (given === wanted) return;
  const expected = isThere(trailingArm) ? 'three rods beside a trailing arm' : 'five rods, or three rods and a trailing arm';
  report({ code: 'rod-count', path: rods.path, found: `${given} ${given === 1 ? 'rod' : 'rods'}`, expected, hint: null });
}

function judgeTrailingArm(view: AxleView, report: Report): void {
  const arm = at(view.place, 'trailingArm');
  judgeDirection(report, at(arm, 'axis'));
  const pivot = judgeName(report, at(arm, 'pivot'), 'unknown-point', 'a point of this axle', view.knownPoints);
  if (pivot === 'wheelCentre')
    reportValue(report, at(arm, 'pivot'), 'point-on-two-bodies', 'a point on the body: the wheel centre is on the knuckle');
}

function judgeSteering(view: AxleView, report: Report): void {
  const steering = at(view.place, 'steering');
  if (!isThere(steering)) return;
  judgeDirection(report, at(steering, 'axis'));
  const travel = at(steering, 'travel');
  const ends = judgeInterval(report, travel);
  if (ends !== undefined && (ends[0] > 0 || ends[1] < 0)) {
    reportValue(report, travel, 'range-without-zero', '[negative end, positive end] with the centre, 0, between them');
  }
  const rod = at(steering, 'rod');
  if (view.layout === 'strut') {
    if (isThere(rod) && textOf(rod) !== undefined && textOf(rod) !== 'tieRod') {
      reportValue(report, rod, 'unknown-rod', 'the rod that the rack moves, on a strut always `tieRod`');
    }
  } else if (view.layout === 'multi-link') {
    if (!isThere(rod))
      reportMissing(
        report,
        rod,
        'missing-key',
        `the rod that the rack moves: ${listNames(view.rodNames)}`,
        suggest('tieRod', view.rodNames),
      );
    else judgeName(report, rod, 'unknown-rod', 'the rod that the rack moves', view.rodNames);
  }
}

const MULTI_LINK_ONLY = ['rods', 'trailingArm'];
const STRUT_ONLY = ['strutTube'];

/** Rods, trailing arm and steering, and that nothing of the other layout is there. */
export function judgeLinkage(view: AxleView, report: Report): void {
  judgeSteering(view, report);
  if (view.layout === 'strut') {
    for (const key of MULTI_LINK_ONLY)
      refuse(report, at(view.place, key), 'wrong-layout', 'no such thing on a strut: its rods are armFront, armRear and tieRod');
  }
  if (view.layout !== 'multi-link') return;
  for (const key of STRUT_ONLY) refuse(report, at(view.place, key), 'wrong-layout', 'no such thing on a multi-link');
  judgeCount(view, report);
  judgeRodEnds(view, report);
  judgeBodies(view, report);
  judgeTrailingArm(view, report);
}

/** Points that nothing uses: most often the trace of a renamed one. */
export function unusedPoints(view: AxleView, alsoUsed: readonly string[]): Place[] {
  if (view.layout !== 'multi-link') return [];
  return view.pointNames
    .filter((name) => name !== 'wheelCentre' && !isLinkEnd(view, name) && !alsoUsed.includes(name))
    .map((name) => at(view.place, 'points', name));
}
