import {
  findReading,
  type AxleName,
  type BrokenLimit,
  type CarDocument,
  type Reached,
  type Way,
  type Ways,
} from '../../../geometry/index';
import { scaleOf } from '../../compute/adjusterSteps';
import type { Verdict } from '../../compute/limits';
import type { PlainTable } from '../../lengths/lengthTables';
import { mmPerFileUnit } from '../../units/fileLength';
import { formatShort } from '../../units/format';
import { lengthWords } from '../../units/lengthWords';
import { shownReading, withUnit, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { gapText, shortPairOf, shownGap, type ShortPair } from '../answers/gapText';
import { columnsOf, effectsOf, shortName, type Effect, type EffectColumn } from '../answers/sideEffects';
import { labelOf, turnedParts, type TurnedPart } from '../answers/turnedParts';
import type { WaysOrder } from './waysForm';

/** One adjuster alone, two together, or what comes nearer and stops, or reaches and breaks a limit. */
export type WayGroup = 'alone' | 'pairs' | 'short';

export interface WayRow {
  /** its place in the answer */
  readonly index: number;
  readonly way: Way;
  readonly group: WayGroup;
  readonly parts: readonly TurnedPart[];
  /** value reached on real marks, as it is read */
  readonly value: string;
  /** it breaks a limit of the file: shown, not taken */
  readonly isWalled: boolean;
  readonly verdict: Verdict;
  /** "reaches", "0.17° off", "1.80° short", "track 15.2 mm past" */
  readonly verdictWords: string;
  readonly effects: readonly Effect[];
  /** by part, in the order of `parts`; null: a bushing has no end */
  readonly used: readonly (number | null)[];
  /** the least gap as it is read; null: not known */
  readonly gap: string | null;
  /** what is short of its margin; null: nothing, or not known */
  readonly short: ShortPair | null;
}

export interface WaysTable {
  readonly columns: readonly EffectColumn[];
  readonly groups: readonly { readonly group: WayGroup; readonly rows: readonly WayRow[] }[];
  /** unit of the least gaps; null: none is known */
  readonly gapUnit: string | null;
}

const worseOf = (reached: Reached, wanted: number): number => {
  if (typeof reached === 'number') return reached;
  return Math.abs(reached.right - wanted) > Math.abs(reached.left - wanted) ? reached.right : reached.left;
};

/** "−2.83", "L −2.83 R −2.79". */
export const reachedText = (reached: Reached, shown: ShownQuantity): string => {
  if (typeof reached === 'number') return shown.format(reached);
  const [left, right] = [shown.format(reached.left), shown.format(reached.right)];
  return left === right ? left : `L ${left} R ${right}`;
};

/** Between the marks the value is met where it is to a hair. */
const MET_BETWEEN = 1e-6;

const rowOf = (order: WaysOrder, from: Reached, way: Way, index: number, units: ShownUnits): WayRow => {
  const { document, question } = order;
  const shown = shownReading(question.entry, units);
  const { value: wanted } = question;
  const isCrossed = Math.abs(worseOf(way.continuous.value, wanted) - wanted) <= MET_BETWEEN * Math.max(1, Math.abs(wanted));
  const group: WayGroup = way.reaches || isCrossed ? (way.adjusters.length > 1 ? 'pairs' : 'alone') : 'short';
  const miss = withUnit(shown.format(way.missBy), shown.unit);
  const [now, then] = [worseOf(from, wanted) - wanted, worseOf(way.value, wanted) - wanted];
  const isOver = now > 0 !== then > 0;
  return {
    index,
    way,
    group,
    isWalled: false,
    parts: turnedParts(document, way.settings, units),
    value: reachedText(way.value, shown),
    verdict: way.reaches ? 'within' : group === 'short' ? 'broken' : 'close',
    verdictWords: way.reaches ? 'reaches' : group !== 'short' ? `${miss} off` : isOver ? `${miss} over` : `${miss} short`,
    effects: effectsOf(document, way.changes),
    used: turnedParts(document, way.settings, units).map(({ name }) => way.rangeUsed[name] ?? null),
    gap: gapText(way.leastGap, units),
    short: shortPairOf(way.leastSpare, units),
  };
};

/** How much of a part's setting, in the words of its unit. @param size - in the file's unit */
const settingSize = (document: CarDocument, axle: AxleName, adjuster: string, size: number, units: ShownUnits): string => {
  const part = document[axle]?.adjusters?.[adjuster];
  const measure = part && scaleOf(part).measure;
  switch (measure) {
    case 'length':
      return lengthWords(size * mmPerFileUnit(document), 2, units);
    case 'clock':
      return `${formatShort(size, 1)}°`;
    case 'turns':
      return `${formatShort(size, 3)} ${size === 1 ? 'turn' : 'turns'}`;
    case undefined:
      return formatShort(size, 3);
  }
};

/** "track 15.2 mm past", "Front arm bolt 15° past its rule": what a row breaks. */
const brokenWords = (document: CarDocument, axle: AxleName, broken: readonly BrokenLimit[], units: ShownUnits): string =>
  broken
    .map(({ of, kind, by }) => {
      const entry = kind === 'reading' ? findReading(of) : undefined;
      if (!entry) {
        const name = labelOf(document, axle, of);
        return by === null ? `${name} not judged` : `${name} ${settingSize(document, axle, of, by, units)} past its rule`;
      }
      const shown = shownReading(entry, units);
      const name = shortName(entry).toLowerCase();
      return by === null ? `${name} not judged` : `${name} ${withUnit(shown.format(by), shown.unit)} past`;
    })
    .join(', ');

/** What the picture of such a table always shows. */
const usualOf = (axle: AxleName): readonly string[] =>
  ['camber', 'rollCentreHeight', 'caster', 'kingpinInclination', 'mechanicalTrail', 'scrubRadius', 'bumpSteer', 'track'].map(
    (key) => `${axle}.${key}`,
  );

/** The answer as a table. @param most - columns of changes that there is room for */
export const waysTable = (order: WaysOrder, { from, ways, walls = [] }: Ways, units: ShownUnits, most: number): WaysTable => {
  const { document, question } = order;
  const rows = [
    ...ways.map((way, index) => rowOf(order, from, way, index, units)),
    ...walls.map((wall, index): WayRow => ({
      ...rowOf(order, from, wall, ways.length + index, units),
      group: 'short',
      verdict: 'broken',
      verdictWords: brokenWords(document, question.axle, wall.broken, units),
      isWalled: true,
    })),
  ];
  const groups = (['alone', 'pairs', 'short'] as const).map((group) => ({
    group,
    rows: rows.filter((row) => row.group === group),
  }));
  const hasGaps = ways.some(({ leastGap }) => leastGap !== null);
  return {
    gapUnit: hasGaps ? shownGap(units).unit : null,
    columns: columnsOf(
      rows.map(({ effects }) => effects),
      hasGaps ? most - 1 : most,
      usualOf(order.question.axle),
    ),
    groups: groups.filter((group) => group.rows.length > 0),
  };
};

/** "Top plate, across 8 mm inboard + Clamp bolt 2 marks, top in". */
export const partsText = (parts: readonly TurnedPart[]): string =>
  parts.map(({ label, words }) => `${label} ${words}`).join(' + ');

export const GROUP_WORDS: Readonly<Record<WayGroup, string>> = {
  alone: 'Alone',
  pairs: 'By pairs',
  short: 'Stops short or breaks a limit',
};

/** The table as it is copied and saved: full numbers in the units shown, every reading that changes. */
export const waysPlainTable = (document: CarDocument, order: WaysOrder, answer: Ways, units: ShownUnits): PlainTable => {
  const table = waysTable(order, answer, units, Infinity);
  const { entry } = order.question;
  const shown = shownReading(entry, units);
  const unitIn = (unit: string): string => (unit === '' ? '' : ` [${unit}]`);
  const sides = (reached: Reached): readonly [number, number | null] =>
    typeof reached === 'number' ? [shown.toShown(reached), null] : [shown.toShown(reached.left), shown.toShown(reached.right)];
  return {
    heads: [
      'way',
      'group',
      `${entry.name} left or axle${unitIn(shown.unit)}`,
      `${entry.name} right${unitIn(shown.unit)}`,
      'on real marks',
      'range used [%]',
      ...(table.gapUnit === null ? [] : [`least gap${unitIn(table.gapUnit)}`, 'short of its margin']),
      ...table.columns.map(
        ({ axle, entry: column }) =>
          `change of ${axle} ${shortName(column).toLowerCase()}${unitIn(shownReading(column, units).unit)}`,
      ),
    ],
    rows: table.groups.flatMap(({ group, rows }) =>
      rows.map((row) => [
        partsText(row.parts),
        GROUP_WORDS[group].toLowerCase(),
        ...sides(row.way.value),
        row.verdictWords,
        row.used.map((share) => (share === null ? '–' : String(Math.round(100 * share)))).join(' + '),
        ...(table.gapUnit === null
          ? []
          : [row.way.leastGap === null ? null : shownGap(units).toShown(row.way.leastGap), row.short?.words ?? null]),
        ...table.columns.map((column) => {
          const change = row.effects.find((effect) => effect.column.key === column.key)?.change ?? null;
          return change === null ? null : shownReading(column.entry, units).toShown(change);
        }),
      ]),
    ),
  };
};
