import { findReading } from '../../readings/catalogue';
import { at, entriesOf, isThere, itemsOf, numberOf, textOf, type Place } from '../place';
import type { AxleView } from './axleView';
import { judgeAxle, NUMBER_READINGS } from './carRules';
import { judgeContradictions } from './contradictionRules';
import { judgeDirection, judgeInterval, judgeName, judgeStep, reportMissing, reportValue, type Report } from './report';
import { setupNamesOf } from './setupRules';

/** A miss is known to about this much; a tolerance below says nothing. */
const SMALLEST_TOLERANCE = 1e-9;

/** Two keys of which one at most may stand, or one has to. */
function judgeOneOf(place: Place, a: string, b: string, need: 'needed' | 'open', report: Report): void {
  const count = [a, b].filter((name) => isThere(at(place, name))).length;
  if (count === 1 || (count === 0 && need === 'open')) return;
  report({
    code: 'question-form',
    path: place.path,
    found: count === 2 ? `both "${a}" and "${b}"` : `neither "${a}" nor "${b}"`,
    expected: 'one of them',
    hint: null,
  });
}

/** [least, greatest], of which one may be open. */
function judgeOpenRange(place: Place, report: Report): void {
  if (!Array.isArray(place.value)) return;
  const [least, greatest] = place.value as readonly unknown[];
  if (typeof least === 'number' && typeof greatest === 'number' && least > greatest)
    reportValue(report, place, 'reversed-range', '[least, greatest]');
  if (least === null && greatest === null)
    reportValue(report, place, 'question-form', '[least, greatest], one of them at least a number');
}

function judgeTolerance(place: Place, report: Report): void {
  const tolerance = numberOf(place);
  if (tolerance !== undefined && tolerance > 0 && tolerance < SMALLEST_TOLERANCE)
    reportValue(report, place, 'question-form', `${SMALLEST_TOLERANCE} or more`);
}

/** Readings of a corner or of an axle: one axle's, not the car's. */
const AXLE_READINGS = NUMBER_READINGS.filter((key) => findReading(key)?.of !== 'car');

function judgeWanted(wanted: Place, views: readonly AxleView[], report: Report): void {
  judgeAxle(report, at(wanted, 'axle'), views);
  const key = judgeName(report, at(wanted, 'reading'), 'unknown-reading', 'a reading that is one number', NUMBER_READINGS);
  if (!isThere(at(wanted, 'axle')) && key !== undefined && findReading(key)?.of !== 'car') {
    reportMissing(report, at(wanted, 'axle'), 'missing-key', '"front" or "rear"');
  }
  judgeOneOf(wanted, 'value', 'range', 'needed', report);
  judgeOneOf(wanted, 'at', 'over', 'open', report);
  judgeOpenRange(at(wanted, 'range'), report);
  judgeTolerance(at(wanted, 'tolerance'), report);
}

function judgeMay(may: Place, views: readonly AxleView[], report: Report): void {
  const view = judgeAxle(report, at(may, 'axle'), views);
  if (view === undefined) return;
  judgeName(report, at(may, 'adjuster'), 'unknown-adjuster', 'an adjuster of this axle', view.adjusterNames);
  judgeName(report, at(may, 'point'), 'unknown-point', 'a point of this axle', view.knownPoints);
  judgeDirection(report, at(may, 'along'));
  const range = judgeInterval(report, at(may, 'range'));
  const step = numberOf(at(may, 'step'));
  judgeStep(report, at(may, 'step'), range);
  if (range !== undefined && step !== undefined && step > 0 && Math.floor(range[1] / step) < Math.ceil(range[0] / step)) {
    reportValue(report, at(may, 'range'), 'question-form', `a range that holds a whole multiple of its step, ${step}`);
  }
}

/** An adjuster, or a point along one direction, that may be moved twice over would have two places at once. */
function judgeTwice(list: Place, report: Report): void {
  const seen = new Set<string>();
  for (const may of itemsOf(list)) {
    const axle = textOf(at(may, 'axle'));
    const place = isThere(at(may, 'adjuster')) ? at(may, 'adjuster') : at(may, 'point');
    const key = JSON.stringify([axle, textOf(place), at(may, 'along').value]);
    if (seen.has(key))
      reportValue(report, place, 'question-form', 'each part once; "sides" says whether left and right go together');
    seen.add(key);
  }
}

function judgeReach(question: Place, views: readonly AxleView[], report: Report): void {
  for (const wanted of itemsOf(at(question, 'wanted'))) judgeWanted(wanted, views, report);
  judgeContradictions(at(question, 'wanted'), report);
  for (const may of itemsOf(at(question, 'may'))) judgeMay(may, views, report);
  judgeTwice(at(question, 'may'), report);
}

function judgeMap(question: Place, views: readonly AxleView[], report: Report): void {
  const view = judgeAxle(report, at(question, 'axle'), views);
  const [x, y] = [at(question, 'x', 'adjuster'), at(question, 'y', 'adjuster')];
  if (view !== undefined) {
    judgeName(report, x, 'unknown-adjuster', 'an adjuster of this axle', view.adjusterNames);
    judgeName(report, y, 'unknown-adjuster', 'an adjuster of this axle', view.adjusterNames);
  }
  if (isThere(x) && x.value === y.value) reportValue(report, y, 'question-form', 'another adjuster than across, or a motion');
  judgeName(report, at(question, 'where', 'reading'), 'unknown-reading', 'a reading that is one number', NUMBER_READINGS);
  judgeOpenRange(at(question, 'where', 'range'), report);
}

function judgeGauges(question: Place, report: Report): void {
  const [from, to] = [numberOf(at(question, 'from')), numberOf(at(question, 'to'))];
  if (from !== undefined && to !== undefined && from > to)
    reportValue(report, at(question, 'from'), 'reversed-range', `no more than "to" (${to})`);
}

/** What only questions of one study ask; the form has said so already where `ask` names none. */
function judgeAsked(question: Place, views: readonly AxleView[], report: Report): void {
  switch (at(question, 'ask').value) {
    case 'map':
      judgeMap(question, views, report);
      break;
    case 'sweep':
      judgeOneOf(question, 'over', 'positions', 'needed', report);
      judgeAxle(report, at(question, 'axle'), views);
      break;
    case 'gauges':
      judgeGauges(question, report);
      judgeAxle(report, at(question, 'axle'), views);
      break;
    case 'ways':
    case 'influence':
    case 'compare':
      judgeAxle(report, at(question, 'axle'), views);
      break;
    default:
      judgeReach(question, views, report);
  }
}

/** The questions that the file keeps: their names are the car's. */
export function judgeQuestions(car: Place, views: readonly AxleView[], report: Report): void {
  const setups = setupNamesOf(car);
  for (const [, question] of entriesOf(at(car, 'questions'))) {
    judgeName(report, at(question, 'setup'), 'unknown-setup', 'a setup of this file', setups);
    for (const setup of itemsOf(at(question, 'against')))
      judgeName(report, setup, 'unknown-setup', 'a setup of this file', setups);
    judgeAsked(question, views, report);
    const known = at(question, 'ask').value === 'ways' ? AXLE_READINGS : NUMBER_READINGS;
    judgeName(report, at(question, 'reading'), 'unknown-reading', 'a reading that is one number', known);
    for (const reading of itemsOf(at(question, 'readings')))
      judgeName(report, reading, 'unknown-reading', 'a reading that is one number', NUMBER_READINGS);
    judgeTolerance(at(question, 'tolerance'), report);
    for (const key of ['wanted', 'may', 'positions', 'against', 'readings']) {
      const entries = at(question, key);
      if (Array.isArray(entries.value) && entries.value.length === 0)
        reportValue(report, entries, 'question-form', 'at least one entry');
    }
  }
}
