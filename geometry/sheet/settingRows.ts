import type { AdjusterDocument, AxleDocument, AxleName, SetupAxleDocument, SideName } from '../car/document';
import { heightPart, toeWheelPart } from '../drawing/axleParts';
import { group, mirror } from '../drawing/shape';
import { lengthWords } from '../format/lengthWords';
import { shownQuantity, shownReading, withUnit } from '../format/shownQuantity';
import { findReading } from '../readings/catalogue';
import { settingOf } from '../setup/setupEdits';
import { fitterWords, partSize } from '../words/fitterWords';
import { nameOfKey } from '../words/nameOfKey';
import { sideWords } from '../words/sideWords';
import { asFiled, drawnAsFiled, drawnForFitter, drawnFrom } from './drawnAs';
import type { PartSetting, SettingRow, SettingsSection } from './sheet';
import { acrossWords, axleWord, pivotToBoltOf, readingWords, unitsFor, type SheetCar } from './sheetCar';

const SIDES = ['left', 'right'] as const;

/** The name of an adjuster as it stands on the part's card. */
export const nameOfAdjuster = (key: string, adjuster: AdjusterDocument): string => adjuster.label ?? nameOfKey(key);

export const pivotToBolt = (axle: AxleDocument, adjuster: AdjusterDocument): number | undefined =>
  adjuster.kind === 'clamp-eccentric' ? pivotToBoltOf(axle, adjuster.pivot, adjuster.bolt) : undefined;

/** A setting as it stands, a toe reset included. */
export const standingSetting = (car: SheetCar, axle: AxleName, key: string, side: SideName): number | null => {
  const reset = car.assembled[axle]?.toeReset;
  return reset?.adjuster === key ? reset[side] : settingOf(car.setup.setup, axle, key, side);
};

const partSetting = (car: SheetCar, axle: AxleName, key: string, adjuster: AdjusterDocument, side: SideName): PartSetting => {
  const { clock, parts, units } = car.question;
  const document = car.document[axle]!;
  const value = standingSetting(car, axle, key, side);
  const bolts = pivotToBolt(document, adjuster);
  const isReset = car.assembled[axle]?.toeReset?.adjuster === key;
  const isFiled = clock === 'file';
  const said = fitterWords(isFiled ? asFiled(adjuster) : adjuster, value, car.mm, units, bolts, isFiled ? 'left' : side);
  const standing = { adjuster, value, mm: car.mm, pivotToBolt: bolts, side };
  return {
    words: isReset && value !== 0 ? `about ${said.short}` : said.short,
    detail: isReset ? 'then set toe with it' : said.detail,
    drawing: parts.drawings ? (isFiled ? drawnAsFiled(standing) : drawnForFitter(standing)) : null,
  };
};

/** A bushing that is fitted with its hole at 12 has the number 0, and is not at zero. */
const isClock = (car: SheetCar, axle: AxleName, key: string, adjuster: AdjusterDocument): boolean =>
  adjuster.kind === 'offset-bushing' && SIDES.some((side) => standingSetting(car, axle, key, side) !== null);

const adjusterRow = (car: SheetCar, axle: AxleName, key: string, adjuster: AdjusterDocument): SettingRow => {
  const { clock, parts, units } = car.question;
  const seen = parts.drawings && clock === 'fitter' && adjuster.locked === undefined ? drawnFrom(adjuster) : '';
  return {
    name: nameOfAdjuster(key, adjuster),
    detail: [partSize(adjuster, car.mm, units), seen].filter((part) => part !== '').join(', '),
    left: partSetting(car, axle, key, adjuster, 'left'),
    right: partSetting(car, axle, key, adjuster, 'right'),
    isPlain:
      (['left', 'right'] as const).every((side) => !standingSetting(car, axle, key, side)) && !isClock(car, axle, key, adjuster),
    locked: adjuster.locked ?? null,
    torque: adjuster.torque ?? null,
  };
};

const words = (text: string, detail = ''): PartSetting => ({ words: text, detail, drawing: null });

/** "8 mm lower than drawn". @param mm - height of the body over design, + up */
export const heightWords = (mm: number, car: SheetCar): string =>
  mm === 0 ? 'as drawn' : `${lengthWords(Math.abs(mm), 1, car.question.units)} ${mm > 0 ? 'higher' : 'lower'} than drawn`;

const heightRow = (car: SheetCar, axle: AxleName, rideHeight: number): SettingRow => {
  const at = car.document[axle]?.heightAt;
  const side = (name: SideName): PartSetting => {
    const tape = at === undefined ? null : readingWords(car, axle, name, 'bodyHeight');
    const shapes = heightPart(rideHeight * car.mm);
    return {
      words: heightWords(rideHeight * car.mm, car),
      detail: tape === null ? '' : `${tape} over the ground`,
      drawing: car.question.parts.drawings ? (name === 'left' ? shapes : [group([mirror(60)], shapes)]) : null,
    };
  };
  return {
    name: 'Ride height',
    detail: at?.name ?? 'body over the ground',
    left: side('left'),
    right: side('right'),
    isPlain: true,
    ...(at !== undefined && { isTarget: true }),
    locked: null,
  };
};

/** Toe as it is asked for, with its unit. */
export const toeWords = (car: SheetCar, axle: AxleName, degrees: number): string => {
  const shown = shownReading(findReading('toe')!, unitsFor(car.document, axle, car.question.units, car.mm));
  const sense = degrees === 0 ? '' : degrees > 0 ? ' toe-in' : ' toe-out';
  return `${withUnit(shown.formatChange(degrees), shown.unit)}${sense}`;
};

const toeRow = (car: SheetCar, axle: AxleName, toe: number): SettingRow => {
  const key = car.document[axle]?.toeAdjuster;
  const adjuster = key === undefined ? undefined : car.document[axle]?.adjusters?.[key];
  const by = key === undefined || adjuster === undefined ? '' : `set with ${nameOfAdjuster(key, adjuster)}`;
  const drawn = car.question.parts.drawings ? 'drawn ten times as much' : '';
  const side = (name: SideName): PartSetting => ({
    words: toeWords(car, axle, toe),
    detail: '',
    drawing: car.question.parts.drawings ? toeWheelPart(name, toe) : null,
  });
  return {
    name: `Toe, each wheel${acrossWords(car, axle)}`,
    detail: [by, drawn].filter((part) => part !== '').join('; '),
    left: side('left'),
    right: side('right'),
    isPlain: true,
    isTarget: true,
    locked: null,
  };
};

const rateWords = (car: SheetCar, rate: number): string => {
  const shown = shownQuantity({ quantity: 'forcePerLength', decimals: 1 }, { ...car.question.units, toeDiameter: null });
  return withUnit(shown.format(rate), shown.unit);
};

const sameRow = (name: string, detail: string, text: string): SettingRow => ({
  name,
  detail,
  left: words(text),
  right: words(text),
  isPlain: false,
  locked: null,
});

/** The hole that the bar's arm is drawn in; null where the file gives none a name. */
const drawnHole = ({ antiRollBar }: AxleDocument): string | null =>
  antiRollBar?.holes?.find(
    ({ armEnd, rate }) =>
      (rate === undefined || rate === antiRollBar.rate) && armEnd.every((at, index) => at === antiRollBar.armEnd[index]),
  )?.name ?? null;

/** The hole of the bar's arm on one side; null where neither the setup nor the file gives it a name. */
const barHoleOf = (car: SheetCar, axle: AxleName, setup: SetupAxleDocument | undefined, side: SideName): string | null => {
  const hole = setup?.barHole;
  if (hole !== undefined) return typeof hole === 'string' ? hole : hole[side];
  const document = car.document[axle];
  return document ? drawnHole(document) : null;
};

/** "unhooked", "hole soft", or a rate: how the anti-roll bar stands on one side. */
export const barWords = (car: SheetCar, axle: AxleName, setup: SetupAxleDocument | undefined, side: SideName): string => {
  if (setup?.barRate === 0) return 'unhooked';
  const hole = barHoleOf(car, axle, setup, side);
  const rate = setup?.barRate === undefined ? null : rateWords(car, setup.barRate);
  const said = [hole === null ? null : `hole ${hole}`, rate].filter((part) => part !== null);
  return said.length > 0 ? said.join(', ') : 'as drawn';
};

/** The rate of the springs in a setup, as one says it; null where nobody gives one. */
export const springWords = (car: SheetCar, axle: AxleName, setup: SetupAxleDocument | undefined): string | null => {
  const rate = setup?.springRate ?? car.document[axle]?.spring?.rate;
  return rate === undefined ? null : rateWords(car, rate);
};

const wheelValue = (car: SheetCar, axle: AxleName, key: string, value: number): string => {
  if (key === 'toe') return toeWords(car, axle, value);
  if (key === 'camber') {
    const shown = shownReading(findReading(key)!, unitsFor(car.document, axle, car.question.units, car.mm));
    return withUnit(shown.format(value), shown.unit);
  }
  return key === 'tyreRate' ? rateWords(car, value) : lengthWords(value * car.mm, 1, car.question.units);
};

/** What of a wheel a setup has other than the file: "loaded radius 316 mm". */
export const wheelWords = (car: SheetCar, axle: AxleName, setup: SetupAxleDocument | undefined): string =>
  Object.entries(setup?.wheel ?? {})
    .flatMap(([key, value]) =>
      typeof value === 'number' ? [`${nameOfKey(key).toLowerCase()} ${wheelValue(car, axle, key, value)}`] : [],
    )
    .join(', ');

const axleRows = (car: SheetCar, axle: AxleName): readonly SettingRow[] => {
  const setup = car.setup.setup[axle];
  const document = car.document[axle]!;
  const rows: SettingRow[] = [];
  if (setup?.setToe !== undefined) rows.push(toeRow(car, axle, setup.setToe));
  if (setup?.rideHeight !== undefined) rows.push(heightRow(car, axle, setup.rideHeight));
  const spring = springWords(car, axle, setup);
  if (spring !== null) rows.push(sameRow('Springs', '', spring));
  if (document.antiRollBar !== undefined) {
    const [left, right] = SIDES.map((side) => words(barWords(car, axle, setup, side))) as [PartSetting, PartSetting];
    rows.push({ name: 'Anti-roll bar', detail: '', left, right, isPlain: false, locked: null });
  }
  const wheel = wheelWords(car, axle, setup);
  if (wheel !== '') rows.push(sameRow('Wheel', 'other than in the car file', wheel));
  return rows;
};

const noteOf = ({ question: { clock, parts } }: SheetCar): string => {
  if (!parts.drawings) return clock === 'file' ? 'clocks of the left side, along their axis; the right is the mirror image' : '';
  return clock === 'file'
    ? 'drawn as on the left, clocks along their axis; the right is the mirror image'
    : 'plates and wheels from above, front of the car up';
};

/** The settings of an axle: every adjuster in the order of the file, then what is set of the axle as a whole. */
export const settingsSection = (car: SheetCar, axle: AxleName): SettingsSection => {
  const adjusters = Object.entries(car.document[axle]?.adjusters ?? {});
  return {
    kind: 'settings',
    heading: `Settings, ${axleWord(axle).toLowerCase()}`,
    note: axle === car.question.axles[0] ? noteOf(car) : '',
    axle,
    rows: [...adjusters.map(([key, adjuster]) => adjusterRow(car, axle, key, adjuster)), ...axleRows(car, axle)],
  };
};

/** Why the rules hold a part where it is, and where that is: "leave at zero". */
export const lockedWords = ({ left, right }: SettingRow): string => `leave ${sideWords(left.words, right.words)}`;
