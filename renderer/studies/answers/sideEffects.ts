import {
  findReading,
  mattersOf,
  type AxleName,
  type CarDocument,
  type Numbers,
  type ReadingEntry,
} from '../../../geometry/index';
import { shownReading } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';

/** A reading of one axle or of the whole car, left and right together: what a column of changes is of. */
export interface EffectColumn {
  readonly key: string;
  readonly axle: AxleName | 'wholeCar';
  readonly entry: ReadingEntry;
  /** the change that counts, in contract units; null: neither the file nor the defaults say */
  readonly matters: number | null;
}

/** How a reading has changed there. */
export interface Effect {
  readonly column: EffectColumn;
  /** of the wheel where it changed more, in contract units; null: no value here */
  readonly change: number | null;
  /** the wheel where it changed more; null: both the same, or a reading of the axle */
  readonly side: 'left' | 'right' | null;
  /** change ÷ what matters; null where nothing says what matters */
  readonly share: number | null;
}

/** Past this many times what matters the bar is full. */
export const FULL_BAR = 1.5;

/** Two wheels whose change differs by less have the same. */
const ALIKE = 1e-9;

const columnOf = (document: CarDocument, name: string): EffectColumn | null => {
  const [axle = '', owner, ownKey] = name.split('.');
  const key = axle === 'wholeCar' ? owner : ownKey;
  const entry = key === undefined ? undefined : findReading(key);
  if (!entry) return null;
  return {
    key: `${axle}.${entry.key}`,
    axle: axle as EffectColumn['axle'],
    entry,
    matters: mattersOf(document, entry.key) ?? null,
  };
};

/** What changed, wheel by wheel put together, in catalogue order. */
export const effectsOf = (document: CarDocument, changes: Numbers): readonly Effect[] => {
  const found = new Map<string, { column: EffectColumn; left: number | null; right: number | null; isCorner: boolean }>();
  for (const [name, change] of Object.entries(changes)) {
    const column = columnOf(document, name);
    if (!column) continue;
    const known = found.get(column.key) ?? { column, left: null, right: null, isCorner: false };
    const owner = name.split('.')[1];
    const isCorner = owner === 'left' || owner === 'right';
    const next = owner === 'right' ? { ...known, right: change } : { ...known, left: change };
    found.set(column.key, { ...next, isCorner });
  }
  return [...found.values()].map(({ column, left, right, isCorner }) => {
    const both = isCorner && left !== null && right !== null;
    const isAlike = both && Math.abs(left - right) <= ALIKE * Math.max(1, Math.abs(left));
    const isRight = isCorner && right !== null && (left === null || Math.abs(right) > Math.abs(left) + ALIKE);
    const change = isRight ? right : left;
    const side = !isCorner || isAlike || change === null ? null : isRight ? 'right' : 'left';
    return { column, change, side, share: change === null || column.matters === null ? null : change / column.matters };
  });
};

/** Columns in the order in which one asks: what a move of camber does to the rest. */
const ORDER = [
  'camber',
  'toe',
  'rollCentreHeight',
  'caster',
  'kingpinInclination',
  'mechanicalTrail',
  'scrubRadius',
  'bumpSteer',
  'track',
  'bodyHeight',
  'camberGain',
];

/**
 * The columns of a table of answers: readings that have a tolerance, the worst first found, then set in the order in which one
 * asks.
 * @param usual - columns that stand there even where nothing changes in them
 */
export const columnsOf = (
  rows: readonly (readonly Effect[])[],
  most: number,
  usual: readonly string[],
): readonly EffectColumn[] => {
  const worst = new Map<string, { column: EffectColumn; share: number }>();
  for (const effects of rows)
    for (const { column, share } of effects) {
      if (share === null) continue;
      const known = worst.get(column.key);
      const size = Math.abs(share);
      if (!known || size > known.share) worst.set(column.key, { column, share: size });
    }
  const rank = ({ column: { entry, axle } }: { readonly column: EffectColumn }): number => {
    const at = ORDER.indexOf(entry.key);
    return (at < 0 ? ORDER.length : at) + (axle === 'front' ? 0 : axle === 'rear' ? 0.3 : 0.6);
  };
  return [...worst.values()]
    .sort((a, b) => Number(usual.includes(b.column.key)) - Number(usual.includes(a.column.key)) || b.share - a.share)
    .slice(0, most)
    .sort((a, b) => rank(a) - rank(b))
    .map(({ column }) => column);
};

/** Names that fit the head of a narrow column. */
const SHORT: Readonly<Record<string, string>> = {
  rollCentreHeight: 'Roll centre',
  kingpinInclination: 'Kingpin incl.',
  mechanicalTrail: 'Trail',
  scrubRadius: 'Scrub',
};
export const shortName = ({ key, name }: ReadingEntry): string => SHORT[key] ?? name;

/** "+4.0", "L +4.0": the change as it stands over its bar. */
export const effectText = ({ change, side, column }: Effect, units: ShownUnits): string => {
  if (change === null) return '–';
  const text = shownReading(column.entry, units).formatChange(change);
  return side === null ? text : `${side === 'left' ? 'L' : 'R'} ${text}`;
};
