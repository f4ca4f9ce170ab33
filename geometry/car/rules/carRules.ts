import { CATALOGUE, findReading } from '../../readings/catalogue';
import { at, entriesOf, isThere, itemsOf, numberOf, textOf, type Place } from '../place';
import { AXLES, type AxleView } from './axleView';
import { judgeKey, judgeName, reportMissing, reportValue, type Report } from './report';

/** Readings that are one number: what a limit, a tolerance or a question can be about. */
export const NUMBER_READINGS: readonly string[] = CATALOGUE.filter((entry) => entry.components === undefined).map(
  (entry) => entry.key,
);

/** Tolerances that stand for a family of readings. */
export const TOLERANCE_FAMILIES = ['wheelbase', 'anti-geometry'];

function judgeBody(car: Place, report: Report): void {
  const body = at(car, 'body');
  const mass = numberOf(at(body, 'mass'));
  if (mass !== undefined && mass > 0) {
    const unsprung = 2 * ((numberOf(at(body, 'unsprungFront')) ?? 0) + (numberOf(at(body, 'unsprungRear')) ?? 0));
    if (unsprung >= mass)
      reportValue(report, at(body, 'mass'), 'mass-numbers', `more than the four unsprung masses (${unsprung} kg)`);
    let included = 0;
    for (const item of itemsOf(at(car, 'masses'))) {
      if (at(item, 'included').value === true) included += numberOf(at(item, 'mass')) ?? 0;
    }
    if (included >= mass)
      reportValue(report, at(body, 'mass'), 'mass-numbers', `more than the masses that are included in it (${included} kg)`);
  }
  const driven = textOf(at(body, 'drivenAxle'));
  const share = numberOf(at(body, 'driveFrontShare'));
  const only = driven === 'front' ? 1 : driven === 'rear' ? 0 : undefined;
  if (share !== undefined && only !== undefined && share !== only) {
    reportValue(report, at(body, 'driveFrontShare'), 'drive-share', `${only}, or "drivenAxle": "both"`);
  }
}

/** The axle that an entry is about exists; the name when it does. */
export function judgeAxle(report: Report, place: Place, views: readonly AxleView[]): AxleView | undefined {
  const name = textOf(place);
  const view = views.find((candidate) => candidate.axle === name);
  if (view === undefined || isThere(view.place)) return view;
  reportValue(report, place, 'missing-axle', `an axle that the file has; it has no ${view.axle} axle`);
  return undefined;
}

function judgeLimit(limit: Place, views: readonly AxleView[], report: Report): void {
  const [reading, setting, axlePlace] = [at(limit, 'reading'), at(limit, 'setting'), at(limit, 'axle')];
  if (isThere(reading) === isThere(setting)) {
    report({
      code: 'limit-subject',
      path: limit.path,
      found: isThere(reading) ? 'both a reading and a setting' : 'neither',
      expected: 'either a "reading" or a "setting" (an adjuster)',
      hint: null,
    });
  }
  const [min, max] = [at(limit, 'min'), at(limit, 'max')];
  if (!isThere(min) && !isThere(max)) reportMissing(report, limit, 'limit-without-bound', '"min" or "max" or both');
  const [least, greatest] = [numberOf(min), numberOf(max)];
  if (least !== undefined && greatest !== undefined && least > greatest)
    reportValue(report, min, 'reversed-range', `no more than "max" (${greatest})`);
  const axle = judgeAxle(report, axlePlace, views);
  const key = judgeName(report, reading, 'unknown-reading', 'a reading that is one number', NUMBER_READINGS);
  const isOfCar = key !== undefined && findReading(key)?.of === 'car';
  const there = views.filter((view) => isThere(view.place));
  const withSetting = there.filter((view) => view.adjusterNames.includes(textOf(setting) ?? ''));
  if (isThere(setting)) {
    const known = (axle === undefined ? there : [axle]).flatMap((view) => view.adjusterNames);
    judgeName(report, setting, 'unknown-adjuster', 'an adjuster', known);
  }
  const candidates = isThere(setting) ? withSetting.length : there.length;
  if (!isThere(axlePlace) && !isOfCar && candidates > 1) {
    reportMissing(report, axlePlace, 'limit-needs-axle', '"front" or "rear": both axles have it');
  }
}

function judgeTolerances(car: Place, report: Report): void {
  const known = [...NUMBER_READINGS, ...TOLERANCE_FAMILIES];
  for (const [key, place] of entriesOf(at(car, 'tolerances')))
    judgeKey(report, key, place, 'unknown-reading', 'a reading', known);
}

/** Rules of the file as a whole. */
export function judgeCar(car: Place, views: readonly AxleView[], report: Report): void {
  if (views.every((view) => !isThere(view.place))) {
    const near = entriesOf(car).map(([key]) => key);
    report({
      code: 'no-axle',
      path: [],
      found: near.length === 0 ? 'an empty object' : 'neither',
      expected: `at least one axle: "${AXLES.join('" or "')}"`,
      hint: null,
    });
  }
  judgeBody(car, report);
  for (const limit of itemsOf(at(car, 'limits'))) judgeLimit(limit, views, report);
  judgeTolerances(car, report);
}
