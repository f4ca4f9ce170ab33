import { findReading } from '../../readings/catalogue';
import { at, entriesOf, isThere, itemsOf, numberOf, textOf, type Place } from '../place';
import type { AxleView } from './axleView';
import { judgeAxle, NUMBER_READINGS } from './carRules';
import { judgeDirection, judgeInterval, judgeKey, judgeName, reportMissing, reportValue, type Report } from './report';
import { setupNamesOf } from './setupRules';

/** A miss is known to about this much; a tolerance below says nothing. */
const SMALLEST_TOLERANCE = 1e-9;

function judgeWanted(wanted: Place, views: readonly AxleView[], report: Report): void {
  judgeAxle(report, at(wanted, 'axle'), views);
  const key = judgeName(report, at(wanted, 'reading'), 'unknown-reading', 'a reading that is one number', NUMBER_READINGS);
  if (!isThere(at(wanted, 'axle')) && key !== undefined && findReading(key)?.of !== 'car') {
    reportMissing(report, at(wanted, 'axle'), 'missing-key', '"front" or "rear"');
  }
  const oneOf = (a: string, b: string, isNeeded: boolean): void => {
    const count = [a, b].filter((name) => isThere(at(wanted, name))).length;
    if (count === 2 || (isNeeded && count === 0)) {
      report({
        code: 'question-form',
        path: wanted.path,
        found: count === 2 ? `both "${a}" and "${b}"` : `neither "${a}" nor "${b}"`,
        expected: 'one of them',
        hint: null,
      });
    }
  };
  oneOf('value', 'range', true);
  oneOf('at', 'over', false);
  const range = at(wanted, 'range').value;
  if (Array.isArray(range)) {
    const [least, greatest] = range as readonly unknown[];
    if (typeof least === 'number' && typeof greatest === 'number' && least > greatest) {
      reportValue(report, at(wanted, 'range'), 'reversed-range', '[least, greatest]');
    }
    if (least === null && greatest === null) {
      reportValue(report, at(wanted, 'range'), 'question-form', '[least, greatest], one of them at least a number');
    }
  }
  const tolerance = numberOf(at(wanted, 'tolerance'));
  if (tolerance !== undefined && tolerance > 0 && tolerance < SMALLEST_TOLERANCE) {
    reportValue(report, at(wanted, 'tolerance'), 'question-form', `${SMALLEST_TOLERANCE} or more`);
  }
}

function judgeMay(may: Place, views: readonly AxleView[], report: Report): void {
  const view = judgeAxle(report, at(may, 'axle'), views);
  if (view === undefined) return;
  judgeName(report, at(may, 'adjuster'), 'unknown-adjuster', 'an adjuster of this axle', view.adjusterNames);
  judgeName(report, at(may, 'point'), 'unknown-point', 'a point of this axle', view.knownPoints);
  judgeDirection(report, at(may, 'along'));
  const range = judgeInterval(report, at(may, 'range'));
  const step = numberOf(at(may, 'step'));
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

function judgeQuestions(car: Place, views: readonly AxleView[], report: Report): void {
  for (const [, question] of entriesOf(at(car, 'questions'))) {
    judgeName(report, at(question, 'setup'), 'unknown-setup', 'a setup of this file', setupNamesOf(car));
    for (const wanted of itemsOf(at(question, 'wanted'))) judgeWanted(wanted, views, report);
    for (const may of itemsOf(at(question, 'may'))) judgeMay(may, views, report);
    judgeTwice(at(question, 'may'), report);
    for (const key of ['wanted', 'may']) {
      const list = at(question, key);
      if (Array.isArray(list.value) && list.value.length === 0) reportValue(report, list, 'question-form', 'at least one entry');
    }
  }
}

function judgeMeasurements(car: Place, views: readonly AxleView[], report: Report): void {
  for (const measurement of itemsOf(at(car, 'measurements'))) {
    judgeAxle(report, at(measurement, 'axle'), views);
    judgeName(report, at(measurement, 'setup'), 'unknown-setup', 'a setup of this file', setupNamesOf(car));
    judgeName(report, at(measurement, 'reading'), 'unknown-reading', 'a reading that is one number', NUMBER_READINGS);
  }
}

function judgeUncertainty(car: Place, views: readonly AxleView[], report: Report): void {
  for (const view of views) {
    const part = at(car, 'uncertainty', view.axle);
    for (const [name, place] of entriesOf(part))
      judgeKey(report, name, place, 'unknown-point', `a point of the ${view.axle} axle`, view.knownPoints);
  }
}

function judgeSurvey(car: Place, views: readonly AxleView[], report: Report): void {
  for (const [, survey] of entriesOf(at(car, 'survey'))) {
    judgeAxle(report, at(survey, 'axle'), views);
    for (const observation of itemsOf(at(survey, 'observations'))) {
      const [from, to] = [textOf(at(observation, 'from')), textOf(at(observation, 'to'))];
      if (from !== undefined && from === to)
        reportValue(report, at(observation, 'to'), 'coincident-points', 'another point than `from`');
      const value = at(observation, 'value');
      if (textOf(at(observation, 'kind')) === 'inclination' && Math.abs(numberOf(value) ?? 0) > 180) {
        reportValue(report, value, 'too-large', 'degrees from the vertical, 180 at most');
      }
    }
  }
}

/** What the studies and the measuring keep in the file. */
export function judgeStudies(car: Place, views: readonly AxleView[], report: Report): void {
  judgeQuestions(car, views, report);
  judgeMeasurements(car, views, report);
  judgeUncertainty(car, views, report);
  judgeSurvey(car, views, report);
}
