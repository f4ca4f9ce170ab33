import type { AxleName } from '../car/document';
import { toDegrees, type Radians } from '../core/angle';
import { withUnit, type ShownQuantity } from '../format/shownQuantity';
import { lengthWords } from '../format/lengthWords';
import { findReading } from '../readings/catalogue';
import { sweepAxle } from '../readings/readings';
import type { FiguresSection, Labelled } from './sheet';
import { readingAt, readingWords, shownOn, type SheetCar } from './sheetCar';

/** Travel from standing over which bump steer is told [mm]: the first that the axle can do. */
const STRETCHES = [40, 30, 20, 10] as const;
/** Positions of a stretch, the ends and the middle among them. */
const POSITIONS = 9;

/** Readings that an axle makes, beside those that it is set to; of a steered axle only, or of any. */
const OF_STEERED = ['kingpinInclination', 'mechanicalTrail', 'scrubRadius'] as const;
const OF_CORNER = ['camberGain', 'wheelRate'] as const;

/** How far toe wanders over a stretch of travel, from end to end [degrees]; null where a position cannot be reached or is past a stop. */
const wander = (car: SheetCar, axle: AxleName, reach: number): { readonly left: number; readonly right: number } | null => {
  const travels = Array.from({ length: POSITIONS }, (_, index) => -reach + (2 * reach * index) / (POSITIONS - 1));
  const rows = sweepAxle(
    car.assembled,
    axle,
    travels.map((travel) => ({ travel })),
  );
  const isWhole = rows.every((row) => row.ok && !row.value.warnings.some(({ code }) => code === 'travel-past-end'));
  if (!isWhole) return null;
  const over = (side: 'left' | 'right'): number => {
    const toes = rows.map((row) => (row.ok ? row.value[side].toe : 0));
    return toDegrees((Math.max(...toes) - Math.min(...toes)) as Radians);
  };
  return { left: over('left'), right: over('right') };
};

/** One number where both sides have the same, else both and the unit once. */
const sidesInWords = (shown: ShownQuantity, left: number, right: number): string => {
  const [l, r] = [shown.format(left), shown.format(right)];
  return l === r ? withUnit(l, shown.unit) : `L ${l}, R ${withUnit(r, shown.unit)}`;
};

const bumpSteer = (car: SheetCar, axle: AxleName): Labelled | null => {
  const shown = shownOn(car, axle, 'toe');
  if (shown === null) return null;
  for (const reach of STRETCHES) {
    const all = wander(car, axle, reach);
    if (all === null) continue;
    const label = `Bump steer ±${lengthWords(reach, 0, car.question.units)}`;
    return { label, value: sidesInWords(shown, all.left, all.right) };
  }
  return null;
};

const ofCorner = (car: SheetCar, axle: AxleName, key: string): Labelled | null => {
  const shown = shownOn(car, axle, key);
  const [left, right] = (['left', 'right'] as const).map((side) => readingAt(car.readings, axle, side, key)) as [
    number | null,
    number | null,
  ];
  if (shown === null || left === null || right === null) return null;
  return { label: findReading(key)?.name ?? key, value: sidesInWords(shown, left, right) };
};

const ofAxle = (car: SheetCar, axle: AxleName, key: string): Labelled | null => {
  const value = readingWords(car, axle, 'both', key);
  return value === null ? null : { label: findReading(key)?.name ?? key, value };
};

const figuresOf = (car: SheetCar, axle: AxleName): readonly Labelled[] => {
  const isSteered = car.document[axle]?.steering !== undefined;
  const figures = [
    ofAxle(car, axle, 'rollCentreHeight'),
    bumpSteer(car, axle),
    ...OF_CORNER.map((key) => ofCorner(car, axle, key)),
    ...(isSteered ? OF_STEERED.map((key) => ofCorner(car, axle, key)) : []),
  ];
  return figures.flatMap((figure) => (figure === null ? [] : [{ ...figure, label: `${figure.label}, ${axle}` }]));
};

/** What the setup makes of the axles on the sheet, as far as the file lets it be known. */
export const makesSection = (car: SheetCar): FiguresSection => ({
  kind: 'figures',
  heading: 'What it makes',
  figures: car.question.axles.flatMap((axle) => figuresOf(car, axle)),
});
