import { at, entriesOf, itemsOf, numberOf, textOf, type Place } from '../place';
import type { AxleView } from './axleView';
import { judgeAxle, NUMBER_READINGS } from './carRules';
import { judgeQuestions } from './questionRules';
import { judgeKey, judgeName, reportValue, type Report } from './report';
import { setupNamesOf } from './setupRules';

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
