import type { AxleName, SetupDocument } from '../car/document';
import { formatNumber, formatShort } from '../format/format';
import { nameOfKey } from '../words/nameOfKey';
import type { CornerRow, CornersSection } from './sheet';
import type { SheetCar } from './sheetCar';

const CORNERS = {
  front: ['frontLeft', 'frontRight'],
  rear: ['rearLeft', 'rearRight'],
} as const;

const KG_TO_POUNDS = 1 / 0.45359237;

type RecordLine = NonNullable<SetupDocument['record']>[number];

const text = (value: number | string | undefined): string => (typeof value === 'number' ? formatShort(value, 3) : (value ?? ''));

const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const ALL_CORNERS: readonly string[] = [...CORNERS.front, ...CORNERS.rear];

const isOfCorners = ({ values }: RecordLine): boolean => Object.keys(values).some((key) => ALL_CORNERS.includes(key));

const recordRow = (line: RecordLine, axles: readonly AxleName[]): CornerRow => ({
  name: upper(line.label),
  unit: line.unit ?? '',
  values: axles.flatMap((axle) => CORNERS[axle].map((corner) => text(line.values[corner]))),
});

const blankRow = (name: string, unit: string, axles: readonly AxleName[]): CornerRow => ({
  name,
  unit,
  values: axles.flatMap(() => ['', '']),
});

/** A mass in what the reader weighs in. */
const massWords = (kg: number, isPounds: boolean): string =>
  isPounds ? `${formatNumber(kg * KG_TO_POUNDS, 0)} lb` : `${formatShort(kg, 1)} kg`;

/**
 * What the file knows of the car's weight. The share of one corner is not among it: masses and shares leave the diagonal open,
 * and only scales tell.
 */
const weightWords = (car: SheetCar): string => {
  const { body, masses = [] } = car.document;
  const isPounds = car.question.units.force === 'pound';
  const known = [
    body?.mass === undefined ? null : massWords(body.mass, isPounds),
    body?.frontShare === undefined ? null : `${formatNumber(100 * body.frontShare, 1)} % front`,
    body?.leftShare === undefined ? null : `${formatNumber(100 * body.leftShare, 1)} % left`,
    ...masses.map(
      ({ name, mass, included }) => `${included === true ? 'with' : 'and besides'} ${name} ${massWords(mass, isPounds)}`,
    ),
  ].filter((part) => part !== null);
  return known.length === 0 ? '' : `by the car file ${known.join(', ')}`;
};

/** What is recorded of the four corners with the setup, then pressures and weights to write in where none are recorded. */
export const cornersSection = (car: SheetCar): CornersSection | null => {
  const { axles, parts, units } = car.question;
  const recorded = (car.setup.setup.record ?? []).filter(isOfCorners);
  const isRecorded = (word: RegExp): boolean => recorded.some(({ label }) => word.test(label));
  const blanks = [
    ...(isRecorded(/pressure/i) ? [] : [blankRow('Tyre pressure', '', axles)]),
    ...(isRecorded(/weight|scale/i) ? [] : [blankRow('Corner weight', units.force === 'pound' ? 'lb' : 'kg', axles)]),
  ];
  const rows = [...recorded.map((line) => recordRow(line, axles)), ...(parts.boxes ? blanks : [])];
  if (rows.length === 0) return null;
  return { kind: 'corners', heading: 'Pressures and weights', note: weightWords(car), axles, rows, hasBoxes: parts.boxes };
};

/** What is recorded with the setup that is not of the four corners. */
export const recordLines = (car: SheetCar): readonly string[] =>
  (car.setup.setup.record ?? []).flatMap(({ label, unit, values }) => {
    const others = Object.entries(values).filter(([key]) => !ALL_CORNERS.includes(key));
    if (others.length === 0) return [];
    const said = others.map(([key, value]) => `${nameOfKey(key).toLowerCase()} ${text(value)}`);
    return [`${upper(label)}: ${said.join(', ')}${unit === undefined ? '' : ` ${unit}`}`];
  });
