import { at, entriesOf, isThere, itemsOf, namesOf, numberOf, textOf, type Place } from '../place';
import { describe } from '../fault';
import type { AxleView } from './axleView';
import { settingBounds } from './adjusterRules';
import { judgeKey, judgeName, reportValue, type Report } from './report';

function judgeSettings(view: AxleView, settings: Place, report: Report): void {
  for (const [name, setting] of entriesOf(settings)) {
    if (!judgeKey(report, name, setting, 'unknown-adjuster', 'an adjuster of this axle', view.adjusterNames)) continue;
    const bounds = settingBounds(at(view.place, 'adjusters', name));
    const value = numberOf(setting);
    if (bounds === undefined || value === undefined || (value >= bounds[0] && value <= bounds[1])) continue;
    reportValue(report, setting, 'setting-out-of-range', `a setting of \`${name}\` from ${bounds[0]} to ${bounds[1]}`);
  }
}

function judgeSpringRate(view: AxleView, part: Place, report: Report): void {
  const springRate = at(part, 'springRate');
  const rate = numberOf(springRate);
  if (!isThere(springRate)) return;
  const spring = at(view.place, 'spring');
  if (!isThere(spring)) {
    report({
      code: 'missing-part',
      path: springRate.path,
      on: 'key',
      found: '"springRate"',
      expected: 'a spring on this axle',
      hint: null,
    });
    return;
  }
  const rates = itemsOf(at(spring, 'rates')).map(numberOf);
  if (rate !== undefined && isThere(at(spring, 'rates')) && !rates.includes(rate)) {
    reportValue(report, springRate, 'rate-not-listed', `one of the rates that the file lists: ${rates.join(', ')}`);
  }
}

function judgeBarSetting(view: AxleView, part: Place, report: Report): void {
  const bar = at(view.place, 'antiRollBar');
  for (const key of ['barHole', 'barRate']) {
    if (isThere(at(part, key)) && !isThere(bar)) {
      report({
        code: 'missing-part',
        path: at(part, key).path,
        on: 'key',
        found: describe(key),
        expected: 'an anti-roll bar on this axle',
        hint: null,
      });
    }
  }
  if (!isThere(bar)) return;
  const holes = itemsOf(at(bar, 'holes'))
    .map((hole) => textOf(at(hole, 'name')))
    .filter((name) => name !== undefined);
  const hole = at(part, 'barHole');
  for (const place of [hole, at(hole, 'left'), at(hole, 'right')])
    judgeName(report, place, 'unknown-hole', 'a hole of the bar', holes);
}

function judgeSetup(views: readonly AxleView[], setup: Place, report: Report): void {
  for (const view of views) {
    const part = at(setup, view.axle);
    if (!isThere(part)) continue;
    if (!isThere(view.place)) {
      report({
        code: 'missing-axle',
        path: part.path,
        on: 'key',
        found: describe(view.axle),
        expected: `a ${view.axle} axle in the file`,
        hint: null,
      });
      continue;
    }
    for (const side of ['both', 'left', 'right']) judgeSettings(view, at(part, side), report);
    judgeSpringRate(view, part, report);
    judgeBarSetting(view, part, report);
  }
}

/** Names of the setups; a file without any has one, called "Baseline". */
export function setupNamesOf(car: Place): readonly string[] {
  const names = namesOf(at(car, 'setups'));
  return names.length === 0 ? ['Baseline'] : names;
}

export function judgeSetups(car: Place, views: readonly AxleView[], report: Report): void {
  for (const [, setup] of entriesOf(at(car, 'setups'))) judgeSetup(views, setup, report);
  judgeName(report, at(car, 'onCar'), 'unknown-setup', 'a setup of this file', setupNamesOf(car));
}

/** Every setting of every setup with its adjuster: for what is allowed but worth a warning. */
export function settingsOf(
  car: Place,
  views: readonly AxleView[],
): { readonly setting: Place; readonly adjuster: Place; readonly name: string }[] {
  return entriesOf(at(car, 'setups')).flatMap(([, setup]) =>
    views.flatMap((view) =>
      ['both', 'left', 'right'].flatMap((side) =>
        entriesOf(at(setup, view.axle, side)).map(([name, setting]) => ({
          setting,
          name,
          adjuster: at(view.place, 'adjusters', name),
        })),
      ),
    ),
  );
}
