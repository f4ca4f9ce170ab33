import { describe } from '../fault';
import { at, entriesOf, isThere, itemsOf, numberOf, textOf, vectorOf, type Place } from '../place';
import { distance, length, reject, subtract, unit, type Vector } from '../../core/vector';
import { carrierOfPoint, carriersOf, type AxleView } from './axleView';
import { judgeDirection, judgeInterval, judgeKey, judgeName, refuse, reportMissing, reportValue, type Report } from './report';

const SHORTEST_LINK_MM = 1;
/** How far two ways of giving the same stroke may differ. */
const STROKE_ROUNDING_MM = 0.5;

/** Upper and lower end of a spring or damper, and what the lower one is on. */
function judgeEnds(view: AxleView, part: Place, report: Report): void {
  const [upper, lower, lowerOn] = [at(part, 'upper'), at(part, 'lower'), at(part, 'lowerOn')];
  if (isThere(upper) !== isThere(lower)) {
    const [missing, given] = isThere(upper) ? ['lower', 'upper'] : ['upper', 'lower'];
    reportMissing(report, at(part, missing), 'missing-key', `\`${missing}\` beside \`${given}\``);
  }
  if (isThere(lower) && !isThere(lowerOn)) reportMissing(report, lowerOn, 'missing-key', 'what carries the lower end');
  if (isThere(lowerOn) && !isThere(lower)) reportValue(report, lowerOn, 'missing-key', 'no carrier without a `lower` point');
  const top = judgeName(report, upper, 'unknown-point', 'a point of this axle', view.knownPoints);
  if (top !== undefined && (carrierOfPoint(view, top) === 'knuckle' || top === textOf(lower))) {
    reportValue(report, upper, 'point-on-two-bodies', 'a point on the body: rockers and pushrods are not modelled');
  }
  judgeName(report, lower, 'unknown-point', 'a point of this axle', view.knownPoints);
  if (view.layout !== undefined) judgeName(report, lowerOn, 'unknown-carrier', 'what carries the lower end', carriersOf(view));
}

function judgeSpring(view: AxleView, report: Report): void {
  const spring = at(view.place, 'spring');
  if (!isThere(spring)) return;
  const seat = at(spring, 'seat');
  if (isThere(seat) && view.layout === 'multi-link') {
    reportValue(report, seat, 'wrong-layout', '`upper`, `lower` and `lowerOn`: there is no strut on this axle');
  }
  if (isThere(seat)) {
    for (const key of ['upper', 'lower', 'lowerOn'])
      refuse(report, at(spring, key), 'spring-numbers', 'either a seat on the strut or points of its own');
  }
  judgeEnds(view, spring, report);
  judgeSpringLengths(spring, report);
  judgeSpringLengths(at(spring, 'helper'), report);
}

function judgeSpringLengths(spring: Place, report: Report): void {
  const [free, solid, installed] = ['freeLength', 'solidLength', 'installed'].map((key) => numberOf(at(spring, key)));
  if (free !== undefined && solid !== undefined && solid >= free) {
    reportValue(report, at(spring, 'solidLength'), 'spring-numbers', `less than the free length (${free})`);
  }
  if (installed !== undefined && solid !== undefined && installed < solid) {
    reportValue(report, at(spring, 'installed'), 'spring-numbers', `no less than the solid length (${solid})`);
  }
}

function judgeDamper(view: AxleView, report: Report): void {
  const damper = at(view.place, 'damper');
  if (!isThere(damper)) return;
  judgeEnds(view, damper, report);
  const read = (key: string): number | undefined => numberOf(at(damper, key));
  const [open, closed, droop, bump] = [read('open'), read('closed'), read('droopStopAt'), read('bumpStopAt')];
  if (open !== undefined && closed !== undefined && closed >= open) {
    reportValue(report, at(damper, 'closed'), 'damper-numbers', `less than the length fully open (${open})`);
    return;
  }
  const length = open === undefined || closed === undefined ? undefined : open - closed;
  const stroke = read('stroke') ?? length;
  if (stroke === undefined) return;
  if (length !== undefined && Math.abs(stroke - length) * view.mmPerUnit > STROKE_ROUNDING_MM) {
    reportValue(
      report,
      at(damper, 'stroke'),
      'damper-numbers',
      `${Number(length.toPrecision(6))}: the difference of \`open\` and \`closed\``,
    );
  }
  if (droop === undefined) return;
  if (droop < 0 || droop > stroke)
    reportValue(
      report,
      at(damper, 'droopStopAt'),
      'damper-numbers',
      `from 0 to the stroke (${stroke}): at design the damper stands between its ends`,
    );
  else if (bump !== undefined && (bump > stroke - droop || bump < -droop)) {
    reportValue(report, at(damper, 'bumpStopAt'), 'damper-numbers', `from ${-droop} (open) to ${stroke - droop} (solid)`);
  }
}

/** Lengths at design against those the damper can have. */
function judgeDamperAtDesign(view: AxleView, report: Report): void {
  const damper = at(view.place, 'damper');
  const [upper, lower] = [textOf(at(damper, 'upper')), textOf(at(damper, 'lower'))];
  const [open, closed] = [numberOf(at(damper, 'open')), numberOf(at(damper, 'closed'))];
  if (upper === undefined || lower === undefined) return;
  const [top, bottom] = [view.pointOf(upper, 'left'), view.pointOf(lower, 'left')];
  if (top === undefined || bottom === undefined) return;
  const now = Number(distance(top, bottom).toPrecision(6));
  if (open !== undefined && now > open)
    reportValue(report, at(damper, 'open'), 'damper-numbers', `no less than the length at design (${now})`);
  else if (closed !== undefined && now < closed)
    reportValue(report, at(damper, 'closed'), 'damper-numbers', `no more than the length at design (${now})`);
}

function judgeBar(view: AxleView, report: Report): void {
  const bar = at(view.place, 'antiRollBar');
  if (!isThere(bar)) return;
  const axis = isThere(at(bar, 'axis')) ? judgeDirection(report, at(bar, 'axis')) : ([0, 1, 0] as const);
  if (view.layout !== undefined)
    judgeName(report, at(bar, 'linkOn'), 'unknown-carrier', 'what carries the link', carriersOf(view));
  const pivot = vectorOf(at(bar, 'pivot'));
  const linkEnd = vectorOf(at(bar, 'linkEnd'));
  const names = new Set<string>();
  for (const hole of itemsOf(at(bar, 'holes'))) {
    const name = textOf(at(hole, 'name'));
    if (name === undefined) continue;
    if (names.has(name)) reportValue(report, at(hole, 'name'), 'repeated-name', 'a name that no other hole has');
    names.add(name);
  }
  for (const place of [bar, ...itemsOf(at(bar, 'holes'))]) judgeArmEnd(view, at(place, 'armEnd'), pivot, axis, linkEnd, report);
}

function judgeArmEnd(
  view: AxleView,
  place: Place,
  pivot: Vector | undefined,
  axis: Vector | undefined,
  linkEnd: Vector | undefined,
  report: Report,
): void {
  const end = vectorOf(place);
  if (end === undefined) return;
  const tooShort = (gap: number, what: string): void => {
    report({
      code: 'bar-too-short',
      path: place.path,
      found: `${Number((gap * view.mmPerUnit).toPrecision(3))} mm`,
      expected: `${what} of ${SHORTEST_LINK_MM} mm or more`,
      hint: null,
    });
  };
  if (pivot !== undefined && axis !== undefined) {
    const arm = length(reject(subtract(end, pivot), unit(axis)));
    if (arm * view.mmPerUnit < SHORTEST_LINK_MM) tooShort(arm, "a distance from the bar's centre line");
  }
  if (linkEnd !== undefined) {
    const link = distance(end, linkEnd);
    if (link * view.mmPerUnit < SHORTEST_LINK_MM) tooShort(link, 'a link from here to `linkEnd`');
  }
}

function judgeSections(view: AxleView, report: Report): void {
  const known = [...view.rodNames, ...(view.layout === 'strut' ? ['arm'] : []), 'barLink', 'driveShaft'];
  for (const [name, section] of entriesOf(at(view.place, 'sections'))) {
    if (view.layout !== undefined)
      judgeKey(report, name, section, 'unknown-rod', 'a rod of this axle, `barLink` or `driveShaft`', known);
    const [diameter, wall] = [numberOf(at(section, 'diameter')), numberOf(at(section, 'wall'))];
    if (diameter !== undefined && wall !== undefined && wall > diameter / 2) {
      reportValue(report, at(section, 'wall'), 'section-numbers', `no more than half the diameter (${diameter / 2}); 0 is solid`);
    }
  }
}

function judgeShaftAndTube(view: AxleView, report: Report): void {
  const shaft = at(view.place, 'driveShaft');
  judgeDirection(report, at(shaft, 'innerAxis'));
  judgeInterval(report, at(shaft, 'plunge'));
  const [inner, outer] = [vectorOf(at(shaft, 'inner')), vectorOf(at(shaft, 'outer'))];
  if (inner !== undefined && outer !== undefined && distance(inner, outer) * view.mmPerUnit < SHORTEST_LINK_MM) {
    reportValue(report, at(shaft, 'outer'), 'coincident-points', 'another place than `inner`');
  }
  const tube = at(view.place, 'strutTube');
  const [from, to] = [numberOf(at(tube, 'from')), numberOf(at(tube, 'to'))];
  if (from !== undefined && to !== undefined && from >= to)
    reportValue(report, at(tube, 'to'), 'reversed-range', `more than \`from\` (${describe(from)})`);
}

/** Springs, dampers, bar, sections, shafts: what they stand on and whether their numbers can be true together. */
export function judgeSprings(view: AxleView, report: Report): void {
  judgeSpring(view, report);
  judgeDamper(view, report);
  judgeDamperAtDesign(view, report);
  judgeBar(view, report);
  judgeSections(view, report);
  judgeShaftAndTube(view, report);
  const travel = at(view.place, 'travel');
  const ends = judgeInterval(report, travel);
  if (ends !== undefined && (ends[0] > 0 || ends[1] < 0))
    reportValue(report, travel, 'range-without-zero', '[droop, bump] with the design height, 0, between them');
}
