import type { ReadingEntry } from '../../../geometry/index';
import { formatNumber } from '../../units/format';
import { shownReading, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { turnedParts } from '../answers/turnedParts';
import type { ShownAxis } from './mapAxis';
import type { MapOrder } from './mapForm';
import type { MapPicture } from './mapPicture';
import type { Sides } from './mapPlaces';
import { stepSettings, type MapMarks, type MapStep } from './mapSteps';

/** A value with its unit: "−2.48°". */
export const written = (value: number | null, entry: ReadingEntry, units: ShownUnits): string => {
  const shown = shownReading(entry, units);
  return value === null ? 'no value' : withUnit(shown.format(value), shown.unit);
};

const sideWords = ({ shown }: { readonly shown: ShownAxis }, value: number): string =>
  `${shown.label} ${withUnit(shown.format(value), shown.unit)}`;

/** A step as it is spoken: both settings, the readings, and whether it may be. */
export const stepWords = (
  step: MapStep,
  sides: Sides,
  entry: ReadingEntry,
  second: ReadingEntry | null,
  units: ShownUnits,
): string => {
  const verdict = step.value === null ? 'cannot be reached' : step.isAllowed ? (step.fits ? 'fits' : 'allowed') : 'not allowed';
  const values = [
    `${entry.name} ${written(step.value, entry, units)}`,
    ...(second ? [`${second.name} ${written(step.second, second, units)}`] : []),
  ];
  return `${sideWords(sides.x, step.x)}, ${sideWords(sides.y, step.y)}: ${values.join(', ')}; ${verdict}`;
};

/** What a step turns, in the fitter's words. */
export const partWords = (step: MapStep, { document, question }: MapOrder, units: ShownUnits): string =>
  turnedParts(document, stepSettings(question, step), units)
    .map(({ label, words }) => `${label} ${words}`)
    .join(', ');

export const everyWords = (step: number, entry: ReadingEntry, units: ShownUnits): string =>
  `every ${withUnit(formatNumber(step, Math.max(0, -Math.floor(Math.log10(step || 1)))), shownReading(entry, units).unit || '°')}`;

/** The same for a picture that is saved. */
export const legendWords = (
  picture: MapPicture,
  entry: ReadingEntry,
  second: ReadingEntry | null,
  { wanted, threshold }: MapMarks,
  units: ShownUnits,
): readonly string[] => [
  ...(picture.step > 0 ? [`lines: ${entry.name.toLowerCase()}, ${everyWords(picture.step, entry, units)}`] : []),
  ...(wanted
    ? [`heavy line in a pale band: ${written(wanted.value, entry, units)} ± ${written(wanted.tolerance, entry, units)}`]
    : []),
  ...(second
    ? [`dotted: ${second.name.toLowerCase()}${threshold ? `; dashed: ${written(threshold.value, second, units)}` : ''}`]
    : []),
  ...picture.limits.map(({ words }) => `hatched: not allowed by ${words}`),
  'dots: real steps; ring and cross: where the car stands',
];
