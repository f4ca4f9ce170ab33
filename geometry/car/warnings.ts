import type { CarDocument } from './document';
import { formatPath, type Warning } from './fault';
import type { WarningCode } from './warningCodes';
import { at, entriesOf, isThere, itemsOf, numberOf, textOf, type Place } from './place';
import { contactCentre } from './contactCentre';
import { wheelsOf, whatIsOddAbout } from './rules/wheelRules';
import { AXLES, viewAxle, type AxleView } from './rules/axleView';
import { settingBounds } from './rules/adjusterRules';
import { unusedPoints } from './rules/linkageRules';
import { settingsOf } from './rules/setupRules';

/** How far a setting may be off a whole multiple and still be called on it: what is lost in writing decimals. */
const STEP_ROUNDING = 1e-6;
/** Difference in height of front and rear contact centres past which the car does not stand level. */
const LEVEL_MM = 0.5;

type Warn = (code: WarningCode, place: Place, message: string) => void;

const nameOf = (place: Place): string => String(place.path[place.path.length - 1]);

function warnOfSteps(car: Place, views: readonly AxleView[], warn: Warn): void {
  for (const { setting, name, adjuster } of settingsOf(car, views)) {
    const value = numberOf(setting);
    const step = numberOf(at(adjuster, 'step')) ?? numberOf(at(adjuster, 'mark')) ?? numberOf(at(adjuster, 'index'));
    if (value === undefined || step === undefined) continue;
    const steps = value / step;
    if (Math.abs(steps - Math.round(steps)) <= STEP_ROUNDING * Math.max(1, Math.abs(steps))) continue;
    const word = isThere(at(adjuster, 'step')) ? 'steps' : 'marks';
    warn('setting-off-step', setting, `${value} is between the ${word} of ${name} (every ${step}).`);
  }
}

function warnOfRanges(view: AxleView, warn: Warn): void {
  for (const [name, adjuster] of entriesOf(at(view.place, 'adjusters'))) {
    const bounds = settingBounds(adjuster);
    if (bounds !== undefined && (bounds[0] > 0 || bounds[1] < 0)) {
      warn(
        'range-off-zero',
        at(adjuster, 'range'),
        `The range of ${name} does not contain 0, and a setup that leaves ${name} out means 0.`,
      );
    }
    const index = numberOf(at(adjuster, 'index'));
    if (index !== undefined && Math.abs(360 / index - Math.round(360 / index)) > STEP_ROUNDING) {
      warn('marks-uneven', at(adjuster, 'index'), `Positions every ${index}° do not close the circle of ${name}.`);
    }
    const shims = itemsOf(at(adjuster, 'shims')).map(numberOf);
    if (shims.some((shim, i) => i > 0 && (shims[i - 1] ?? 0) < (shim ?? 0))) {
      warn('shims-not-sorted', at(adjuster, 'shims'), `The shims of ${name} are not in order, largest first.`);
    }
  }
}

function warnOfParts(view: AxleView, warn: Warn): void {
  const [spring, damper] = [at(view.place, 'spring'), at(view.place, 'damper')];
  for (const [part, place] of [
    ['spring', spring],
    ['damper', damper],
  ] as const) {
    if (view.layout === 'multi-link' && isThere(place) && !isThere(at(place, 'upper'))) {
      warn('part-without-points', place, `The ${part} has no upper and lower point: its motion ratio cannot be computed.`);
    }
  }
  const [rate, rates] = [numberOf(at(spring, 'rate')), itemsOf(at(spring, 'rates')).map(numberOf)];
  if (rate !== undefined && rates.length > 0 && !rates.includes(rate))
    warn('rate-not-listed', at(spring, 'rate'), `The rate ${rate} is not one of those listed in rates.`);
  const [free, installed] = [numberOf(at(spring, 'freeLength')), numberOf(at(spring, 'installed'))];
  if (free !== undefined && installed !== undefined && installed > free)
    warn('spring-loose', at(spring, 'installed'), 'The spring is loose at design: installed is more than freeLength.');
  const used = [spring, damper]
    .flatMap((part) => [textOf(at(part, 'upper')), textOf(at(part, 'lower'))])
    .filter((name) => name !== undefined);
  for (const point of unusedPoints(view, used)) warn('unused-point', point, `Nothing uses the point ${nameOf(point)}.`);
  for (const [name, point] of entriesOf(at(view.place, 'points'))) {
    const left = view.pointOf(name, 'left');
    if (left !== undefined && left[1] < 0)
      warn('left-point-on-right', point, `The left-hand point ${name} is on the right of the middle plane.`);
  }
  if (isThere(at(view.place, 'steering')) && !isThere(at(view.place, 'steering', 'travel'))) {
    warn('rack-without-ends', at(view.place, 'steering'), 'The rack has no travel: lock is not known.');
  }
}

/** Coordinates of a car that stands level have all contact centres at one height. */
function warnOfLevel(document: CarDocument, views: readonly AxleView[], warn: Warn): void {
  const heights = views.map((view) => {
    const axle = document[view.axle];
    if (axle === undefined) return undefined;
    const [left, right] = (['left', 'right'] as const).map((side) => contactCentre(axle, side)[2]);
    return ((left + right) / 2) * view.mmPerUnit;
  });
  const [front, rear] = heights;
  if (front === undefined || rear === undefined || Math.abs(front - rear) <= LEVEL_MM) return;
  const words = `The front contact centres are ${Math.abs(front - rear).toFixed(1)} mm ${front > rear ? 'above' : 'below'} the rear ones at design`;
  warn('not-level', { value: document, path: [] }, `${words}: the coordinates are not those of a car standing level.`);
}

/** What is odd about a car file that breaks no rule, in the order of the file. */
export function findWarnings(document: CarDocument): Warning[] {
  const warnings: Warning[] = [];
  const warn: Warn = (code, place, message) => {
    warnings.push({ code, path: formatPath(place.path), message });
  };
  const car: Place = { value: document, path: [] };
  const views = AXLES.map((axle) => viewAxle(car, axle));
  warnOfLevel(document, views, warn);
  for (const view of views) {
    if (!isThere(view.place)) continue;
    warnOfRanges(view, warn);
    warnOfParts(view, warn);
  }
  for (const wheel of wheelsOf(car, views)) {
    const odd = whatIsOddAbout(wheel);
    if (odd !== null) warn('loaded-radius-odd', wheel.loadedRadius, odd);
  }
  warnOfSteps(car, views, warn);
  return warnings;
}
