import type { AdjusterDocument, AxleName, SetupDocument } from '../car/document';
import { assembleCar } from '../setup/assembleCar';
import { settingOf } from '../setup/setupEdits';
import { fitterWords } from '../words/fitterWords';
import { sideWords } from '../words/sideWords';
import { asFiled } from './drawnAs';
import {
  barWords,
  heightWords,
  nameOfAdjuster,
  pivotToBolt,
  springWords,
  standingSetting,
  toeWords,
  wheelWords,
} from './settingRows';
import type { ChangeItem, ChangesSection, ChangeStep, NamedSetup } from './sheet';
import { readingWords, type SheetCar } from './sheetCar';
import { stageOf, type Stage } from './stageOf';

const SIDES = ['left', 'right'] as const;

const TITLES: Readonly<Record<Stage, string>> = {
  heights: 'Springs, heights and weights',
  other: 'Other parts',
  caster: 'Caster',
  camber: 'Camber',
  bumpSteer: 'Bump steer',
  toe: 'Toe, last of all',
};

type Items = Record<Stage, ChangeItem[]>;

const ofCar = (text: string): ChangeItem => ({ axle: null, text });

interface OfSides {
  readonly left: number | null;
  readonly right: number | null;
}

const settingWords = (
  car: SheetCar,
  axle: AxleName,
  adjuster: AdjusterDocument,
  value: OfSides,
  /** what is said of 0 */
  atZero: string | null = null,
): string => {
  const { clock, units } = car.question;
  const bolts = pivotToBolt(car.document[axle]!, adjuster);
  const of = (side: 'left' | 'right') =>
    atZero !== null && value[side] === 0
      ? atZero
      : fitterWords(
          clock === 'file' ? asFiled(adjuster) : adjuster,
          value[side],
          car.mm,
          units,
          bolts,
          clock === 'file' ? 'left' : side,
        ).short;
  return sideWords(of('left'), of('right'));
};

/** Nothing set is zero, but for a bushing: there it is a concentric one. */
const differs = (axle: AxleName, key: string, { kind }: AdjusterDocument, a: SetupDocument, b: SetupDocument): boolean => {
  const unset = kind === 'offset-bushing' ? null : 0;
  return SIDES.some((side) => (settingOf(a, axle, key, side) ?? unset) !== (settingOf(b, axle, key, side) ?? unset));
};

const bothSides = (setup: SetupDocument, axle: AxleName, key: string) => ({
  left: settingOf(setup, axle, key, 'left'),
  right: settingOf(setup, axle, key, 'right'),
});

/** "Top plate, across: 6 mm inboard (was at zero)". Two numbers may have the same words. */
const changed = (axle: AxleName, what: string, now: string, then: string): ChangeItem => ({
  axle,
  text: `${what}: ${now} (was ${now === then ? 'nearly so' : then})`,
});

const takeAdjusters = (car: SheetCar, axle: AxleName, from: SetupDocument, items: Items): void => {
  const to = car.setup.setup;
  for (const [key, adjuster] of Object.entries(car.document[axle]?.adjusters ?? {})) {
    const isReset = car.assembled[axle]?.toeReset?.adjuster === key;
    if (isReset || !differs(axle, key, adjuster, to, from)) continue;
    const say = (setup: SetupDocument) => settingWords(car, axle, adjuster, bothSides(setup, axle, key));
    const stage = stageOf(car.mechanism, axle, key, adjuster, to, from);
    items[stage].push(changed(axle, nameOfAdjuster(key, adjuster), say(to), say(from)));
  }
};

const takeHeights = (car: SheetCar, axle: AxleName, from: SetupDocument, items: Items): void => {
  const [now, then] = [car.setup.setup[axle], from[axle]];
  const [spring, was] = [springWords(car, axle, now), springWords(car, axle, then)];
  if (spring !== null && was !== null && spring !== was) items.heights.push(changed(axle, 'Springs', spring, was));
  const [wheel, before] = [wheelWords(car, axle, now), wheelWords(car, axle, then)];
  if (wheel !== before) items.heights.push(changed(axle, 'Wheel', wheel || 'as in the car file', before || 'as in the car file'));
  if (now?.rideHeight === then?.rideHeight) return;
  const words = (height: number | undefined): string =>
    height === undefined ? 'as it falls' : heightWords(height * car.mm, car);
  const tape = readingWords(car, axle, 'left', 'bodyHeight');
  const measured = tape === null ? '' : `, ${tape} over the ground`;
  items.heights.push(changed(axle, 'Ride height', `${words(now?.rideHeight)}${measured}`, words(then?.rideHeight)));
};

/** Where the part that sets the toe stands in the setup on the car now; null where that cannot be put together. */
const stoodAt = (car: SheetCar, axle: AxleName, key: string, from: SetupDocument): (OfSides & { isReset: boolean }) | null => {
  const now = assembleCar(car.mechanism, from);
  if (!now.ok) return null;
  const reset = now.value[axle]?.toeReset;
  return reset?.adjuster === key
    ? { left: reset.left, right: reset.right, isReset: true }
    : { ...bothSides(from, axle, key), isReset: false };
};

const hundredths = (value: number): number => Math.round(value * 100) / 100;

/** How far a thread is turned from where it stands: nobody should have to take one number off another beside the car. */
const turnWords = (car: SheetCar, axle: AxleName, adjuster: AdjusterDocument, stood: OfSides, stands: OfSides): string | null => {
  if (adjuster.kind !== 'turnbuckle' && adjuster.kind !== 'perch') return null;
  // from zero it is where it comes to stand
  if (SIDES.every((side) => hundredths(stood[side] ?? 0) === 0)) return null;
  const by = (side: 'left' | 'right'): number => hundredths((stands[side] ?? 0) - (stood[side] ?? 0));
  const [left, right] = [by('left'), by('right')];
  return left === 0 && right === 0 ? 'as it stands' : settingWords(car, axle, adjuster, { left, right }, 'as it stands');
};

/** Toe is set anew on an axle where anything was turned, and where it is asked for otherwise. */
const takeToe = (car: SheetCar, axle: AxleName, from: SetupDocument, items: Items, isTurned: boolean): void => {
  const toe = car.setup.setup[axle]?.setToe;
  const key = car.document[axle]?.toeAdjuster;
  const adjuster = key === undefined ? undefined : car.document[axle]?.adjusters?.[key];
  if (toe === undefined) {
    const [left, right] = [readingWords(car, axle, 'left', 'toe'), readingWords(car, axle, 'right', 'toe')];
    if (isTurned && left !== null && right !== null)
      items.toe.push({ axle, text: `Toe comes to ${sideWords(left, right)} by itself: see that it does` });
    return;
  }
  if (key === undefined || adjuster === undefined || (!isTurned && toe === from[axle]?.setToe)) return;
  const value = { left: standingSetting(car, axle, key, 'left'), right: standingSetting(car, axle, key, 'right') };
  const stands = settingWords(car, axle, adjuster, value);
  const was = from[axle]?.setToe;
  const before = was === undefined || was === toe ? '' : ` (was ${toeWords(car, axle, was)})`;
  const stood = stoodAt(car, axle, key, from);
  const stoodWords = stood === null ? '' : ` (was ${stood.isReset ? 'about ' : ''}${settingWords(car, axle, adjuster, stood)})`;
  const turned = stood === null ? null : turnWords(car, axle, adjuster, stood, value);
  const how = turned === null ? `about ${stands}` : `about ${turned}, to ${stands}`;
  items.toe.push({
    axle,
    text: `Each wheel ${toeWords(car, axle, toe)}${before}, by ${nameOfAdjuster(key, adjuster)}: ${how}${stoodWords}`,
  });
};

const pressureWords = (car: SheetCar): readonly string[] =>
  (car.setup.setup.record ?? [])
    .filter(({ label }) => /pressure|fuel|tyre/i.test(label))
    .map(({ label, unit, values }) => {
      const said = Object.entries(values).map(([key, value]) => `${CORNER_WORDS[key] ?? key} ${value}`);
      return `${label.charAt(0).toUpperCase()}${label.slice(1)}: ${said.join(', ')}${unit === undefined ? '' : ` ${unit}`}`;
    });

const CORNER_WORDS: Readonly<Record<string, string>> = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
};

const hasBar = (car: SheetCar): boolean => car.question.axles.some((axle) => car.document[axle]?.antiRollBar !== undefined);

const readyStep = (car: SheetCar): ChangeStep => {
  const aboard = (car.document.masses ?? []).filter(({ included }) => included === true).map(({ name }) => name);
  const load = aboard.length === 0 ? 'Driver or ballast and fuel on board, as the car runs' : `On board: ${aboard.join('; ')}`;
  return {
    title: 'Pressures and fuel',
    items: [...pressureWords(car), load, ...(hasBar(car) ? ['One link of every anti-roll bar off'] : [])].map(ofCar),
  };
};

const barStep = (car: SheetCar, from: SetupDocument): ChangeStep | null => {
  const items = car.question.axles.flatMap((axle): ChangeItem[] => {
    if (car.document[axle]?.antiRollBar === undefined) return [];
    const say = (setup: SetupDocument) =>
      sideWords(barWords(car, axle, setup[axle], 'left'), barWords(car, axle, setup[axle], 'right'));
    const [now, then] = [say(car.setup.setup), say(from)];
    return now === then ? [] : [changed(axle, 'Bar', now, then)];
  });
  const last = ofCar('Links hooked up while the car stands on its wheels');
  return hasBar(car) ? { title: 'Bars back on', items: [...items, last] } : null;
};

const barDiffers = (car: SheetCar, from: SetupDocument): boolean =>
  car.question.axles.some((axle) =>
    SIDES.some((side) => barWords(car, axle, car.setup.setup[axle], side) !== barWords(car, axle, from[axle], side)),
  );

/**
 * What to change from the setup now on the car, in the order that needs the least doing over: pressures and fuel, heights and
 * weights, caster, camber, bump steer, heights again, toe last, lock nuts, bars back on.
 */
export const changesSection = (car: SheetCar, onCar: NamedSetup): ChangesSection => {
  const items: Items = { heights: [], other: [], caster: [], camber: [], bumpSteer: [], toe: [] };
  for (const axle of car.question.axles) {
    const before = Object.values(items).flat().length;
    takeAdjusters(car, axle, onCar.setup, items);
    takeHeights(car, axle, onCar.setup, items);
    takeToe(car, axle, onCar.setup, items, Object.values(items).flat().length > before);
  }
  const heading = `To change, from ${onCar.name}`;
  const isTurned = Object.values(items).some((list) => list.length > 0);
  if (!isTurned && !barDiffers(car, onCar.setup)) {
    const note = 'nothing: see that every setting is as it is printed here';
    return { kind: 'changes', heading, note, axles: [], steps: [] };
  }
  const step = (stage: Stage): ChangeStep[] => (items[stage].length === 0 ? [] : [{ title: TITLES[stage], items: items[stage] }]);
  const raised = 'A raised car stands on stands with its wheels chocked, never on a jack alone';
  const isRaised = isTurned && items.heights.length > 0;
  const bars = barStep(car, onCar.setup);
  const steps: ChangeStep[] = [
    readyStep(car),
    ...(isRaised ? [{ title: TITLES.heights, items: [...items.heights, ofCar(raised)] }] : []),
    ...(['other', 'caster', 'camber', 'bumpSteer'] as const).flatMap(step),
    ...(isTurned
      ? [{ title: 'Heights again', items: [ofCar('Roll the car, settle it, and measure heights and weights anew')] }]
      : []),
    ...step('toe'),
    ...(isTurned
      ? [{ title: 'Lock nuts and bolts', items: [ofCar('Lock nuts tight, bolts to the maker’s torque, all marked')] }]
      : []),
    ...(bars === null ? [] : [bars]),
  ];
  return { kind: 'changes', heading, note: 'one after the other', axles: car.question.axles, steps };
};
