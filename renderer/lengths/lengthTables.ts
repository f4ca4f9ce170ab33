import {
  lengthsOf,
  MM_PER_POINT_UNIT,
  pointPlaces,
  tapeBetween,
  type AxleDocument,
  type LengthUnit,
  type PartLength,
  type PlacedAxle,
  type SideName,
  type Vector,
} from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';

/** A table as it is copied and saved: heads and rows of full numbers. */
export interface PlainTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** One part of the table of lengths [mm]; `change` is this setup less the compared one, null where there is none. */
export interface LengthRow {
  readonly id: string;
  readonly name: string;
  readonly left: number;
  readonly right: number | null;
  readonly change: { readonly left: number | null; readonly right: number | null };
}

const LEGS: Readonly<Record<string, string>> = { armFront: 'Arm, front leg', armRear: 'Arm, rear leg' };

const nameOf = ({ kind, name }: PartLength): string => {
  switch (kind) {
    case 'armLeg':
      return LEGS[name] ?? nameOfKey(name);
    case 'rod': {
      const words = nameOfKey(name);
      return /rod|link|arm$/i.test(words) ? words : `${words} rod`;
    }
    case 'strut':
      return 'Strut, top to foot';
    case 'spring':
      return 'Spring, seat to seat';
    case 'damper':
    case 'barLink':
    case 'barArm':
      return nameOfKey(kind);
  }
};

/** Every length of an axle, and what differs from the compared setup. */
export const lengthRows = (placed: PlacedAxle, compared: PlacedAxle | null): readonly LengthRow[] => {
  const others = compared ? lengthsOf(compared) : [];
  return lengthsOf(placed).map((part) => {
    const other = others.find(({ kind, name }) => kind === part.kind && name === part.name)?.value;
    const less = (now: number | null, then: number | null | undefined): number | null =>
      now === null || then === null || then === undefined ? null : now - then;
    const { left, right } = part.value;
    return {
      id: `${part.kind}.${part.name}`,
      name: nameOf(part),
      left,
      right,
      change: { left: less(left, other?.left), right: less(right, other?.right) },
    };
  });
};

/** A length as it goes out, in the unit that its head names. */
const inUnit = (mm: number, unit: LengthUnit): number => mm / MM_PER_POINT_UNIT[unit];
const changeIn = (mm: number | null, unit: LengthUnit): number | null => (mm === null ? null : inUnit(mm, unit));

/** @param unit - of the table, said in its heads */
export const lengthTable = (rows: readonly LengthRow[], against: string | null, unit: LengthUnit): PlainTable => ({
  heads: [
    'part',
    `left [${unit}]`,
    `right [${unit}]`,
    ...(against === null ? [] : [`left less ${against} [${unit}]`, `right less ${against} [${unit}]`]),
  ],
  rows: rows.map(({ name, left, right, change }) => [
    name,
    inUnit(left, unit),
    changeIn(right, unit),
    ...(against === null ? [] : [changeIn(change.left, unit), changeIn(change.right, unit)]),
  ]),
});

export interface PlaceRow {
  readonly name: string;
  readonly now: Vector;
  readonly design: Vector;
}

/** Points of a side as they are now beside the file's. @param mm - millimetres in one unit of the file */
export const placeRows = (axle: AxleDocument, placed: PlacedAxle, side: SideName, mm: number): readonly PlaceRow[] =>
  pointPlaces(axle, placed, side, mm);

/** @param unit - of the table, said in its heads */
export const placeTable = (rows: readonly PlaceRow[], side: SideName, unit: LengthUnit): PlainTable => ({
  heads: ['point', 'side', ...['', 'design '].flatMap((of) => ['x', 'y', 'z'].map((axis) => `${of}${axis} [${unit}]`))],
  rows: rows.map(({ name, now, design }) => [name, side, ...[...now, ...design].map((mm) => inUnit(mm, unit))]),
});

/** What a tape reads: its length and its shares along the car [mm], for the setup and less the compared one. */
export interface TapeReading {
  readonly now: readonly [number, number, number, number];
  readonly change: readonly [number, number, number, number] | null;
}

const read = (placed: PlacedAxle, from: TapeEnd, to: TapeEnd): readonly [number, number, number, number] | null => {
  const [a, b] = [placed[from.side].points[from.point], placed[to.side].points[to.point]];
  if (!a || !b) return null;
  const { length, apart } = tapeBetween(a, b);
  return [length, apart[0], apart[1], apart[2]];
};

export interface TapeEnd {
  readonly side: SideName;
  readonly point: string;
}

export const tapeReading = (placed: PlacedAxle, compared: PlacedAxle | null, from: TapeEnd, to: TapeEnd): TapeReading | null => {
  const now = read(placed, from, to);
  const then = compared && read(compared, from, to);
  if (!now) return null;
  return { now, change: then ? [now[0] - then[0], now[1] - then[1], now[2] - then[2], now[3] - then[3]] : null };
};

/** The table of a position that cannot be reached: no number of another one in it, and in every row why. */
export const unreachedTable = ({ heads, rows }: PlainTable, why: string): PlainTable => {
  const head = 'why missing';
  const place = heads.includes(head) ? heads.indexOf(head) : heads.length;
  return {
    heads: [...heads.slice(0, place), head],
    rows: rows.map((row) => [...row.slice(0, place).map((cell) => (typeof cell === 'number' ? null : cell)), why]),
  };
};

/** Tab-separated, as a spreadsheet takes it from the clipboard. */
export const tabbed = ({ heads, rows }: PlainTable): string =>
  [heads, ...rows]
    .map((row) => row.map((cell) => (cell === null ? '' : String(cell).replaceAll('\t', ' '))).join('\t'))
    .join('\n');
