import {
  findReading,
  type AxleName,
  type CarDocument,
  type ReachAnswer,
  type ReachAnswerRow,
  type StudyOrder,
} from '../../../geometry/index';
import type { PlainTable } from '../../lengths/lengthTables';
import { nameOfKey } from '../../adjusters/fitterWords';
import { mmPerFileUnit } from '../../units/fileLength';
import { shownQuantity, shownReading, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { gapText, shortPairOf, shownGap, type ShortPair } from '../answers/gapText';
import { columnsOf, effectsOf, shortName, type Effect, type EffectColumn } from '../answers/sideEffects';
import { turnedParts, type TurnedPart } from '../answers/turnedParts';
import { missWords, wantedName, type MissWords } from './reachWords';
import { stretchesOf, type Stretch } from './stretches';
import { toeTurns } from './toeTurns';

export type ReachOrder = Extract<StudyOrder, { study: 'reach' }> & { readonly from: string };

/** A wanted reading as one answer gives it. */
export interface WantedCell {
  readonly value: string;
  readonly miss: MissWords;
  readonly stretch: Stretch | null;
}

export interface ReachRow {
  readonly index: number;
  readonly answer: ReachAnswerRow;
  readonly parts: readonly TurnedPart[];
  /** free points: "tie-rod end 2.5 mm up" */
  readonly points: readonly string[];
  /** what sets the toe goes too: "tie rod about 0.76 turn shorter" */
  readonly toe: readonly string[];
  readonly wanted: readonly WantedCell[];
  readonly used: readonly { readonly label: string; readonly share: number | null }[];
  readonly effects: readonly Effect[];
  readonly score: string;
  /** the least gap as it is read; null: not known */
  readonly gap: string | null;
  /** what is short of its margin; null: nothing, or not known */
  readonly short: ShortPair | null;
}

export interface ReachTable {
  readonly wanted: readonly { readonly name: string; readonly unit: string; readonly over: string | null }[];
  readonly columns: readonly EffectColumn[];
  readonly rows: readonly ReachRow[];
  /** axles that side effects are shown of */
  readonly axles: number;
  /** unit of the least gaps; null: none is known */
  readonly gapUnit: string | null;
}

const scoreText = (score: number): string => (score === 0 ? '0' : score < 0.005 ? '< 0.01' : score.toFixed(2));

/** How far points of the drawing were moved, in words: "tie-rod end 2.5 mm along Z". */
const pointWords = (document: CarDocument, row: ReachAnswerRow, units: ShownUnits): readonly string[] => {
  const mm = mmPerFileUnit(document);
  const shown = shownQuantity({ quantity: 'length', decimals: 2 }, units);
  return (['front', 'rear'] as const).flatMap((axle) => {
    const moved = { ...row.points?.[axle]?.points };
    return Object.entries(moved).flatMap(([name, to]) => {
      const from = document[axle]?.points[name];
      if (!from || !to) return [];
      const by = (['X', 'Y', 'Z'] as const).flatMap((letter, at) => {
        const size = ((to[at] ?? 0) - (from[at] ?? 0)) * mm;
        return Math.abs(size) < 1e-9 ? [] : [`${letter} ${shown.formatChange(size)}`];
      });
      return [`${nameOfKey(name)} ${by.length === 0 ? 'where it is' : withUnit(by.join(', '), shown.unit)}`];
    });
  });
};

/** What the picture of such a table shows first. */
const usualOf = (axles: readonly (AxleName | 'wholeCar')[]): readonly string[] =>
  axles.flatMap((axle) => ['caster', 'kingpinInclination', 'scrubRadius', 'track'].map((key) => `${axle}.${key}`));

/** Rows of answers whose sparkline is worked out; past them there are hundreds, which nobody looks at one by one. */
const MOST_DRAWN = 30;

/**
 * Those that give everything come first, each kind by its score: a setting that leaves its band by a hair for a better value is
 * nearer by the score, and no answer to what was asked.
 */
const metFirst = (answers: ReachAnswer['answers']): ReachAnswer['answers'] => [
  ...answers.filter(({ met }) => met),
  ...answers.filter(({ met }) => !met),
];

/** The answers as a table. @param most - columns of side effects that there is room for */
export const reachTable = (order: ReachOrder, { answers }: ReachAnswer, units: ShownUnits, most: number): ReachTable => {
  const { document, question, from } = order;
  const axles = [...new Set(question.wanted.map(({ axle }) => axle ?? 'wholeCar'))];
  const withAxle = axles.length > 1;
  const isOfMany = new Set([...axles, ...question.may.map(({ axle }) => axle)]).size > 1;
  const rows = metFirst(answers).map((answer, index): ReachRow => {
    const stretches = index < MOST_DRAWN ? stretchesOf(document, question, from, answer) : [];
    const parts = turnedParts(document, answer.settings, units);
    const named = question.may.map((may) =>
      'point' in may ? { axle: may.axle, name: may.point } : { axle: may.axle, name: may.adjuster },
    );
    return {
      index,
      answer,
      parts,
      points: pointWords(document, answer, units),
      toe: index < MOST_DRAWN ? toeTurns(document, question, from, answer, units) : [],
      wanted: question.wanted.map((wanted, at) => {
        const entry = findReading(wanted.reading);
        const result = answer.wanted[at] ?? { worst: NaN, missBy: NaN };
        return {
          value: entry ? shownReading(entry, units).format(result.worst) : '–',
          miss: missWords(wanted, result, units),
          stretch: stretches[at] ?? null,
        };
      }),
      used: named.flatMap(({ axle, name }) => {
        const share = answer.rangeUsed[name] ?? answer.rangeUsed[`${axle}.${name}`];
        if (share === undefined) return [];
        return [{ label: document[axle]?.adjusters?.[name]?.label ?? nameOfKey(name), share }];
      }),
      effects: effectsOf(document, answer.changes),
      score: scoreText(answer.score),
      gap: gapText(answer.leastGap, units),
      short: shortPairOf(answer.leastSpare, units, isOfMany),
    };
  });
  const hasGaps = answers.some(({ leastGap }) => leastGap !== null);
  return {
    gapUnit: hasGaps ? shownGap(units).unit : null,
    wanted: question.wanted.map((wanted) => {
      const entry = findReading(wanted.reading);
      return {
        name: wantedName(wanted, withAxle),
        unit: entry ? shownReading(entry, units).unit : '',
        over: wanted.over === undefined ? null : wanted.over.motion,
      };
    }),
    columns: columnsOf(
      rows.map(({ effects }) => effects),
      hasGaps ? most - 1 : most,
      usualOf(axles),
    ),
    rows,
    axles: new Set(rows.flatMap(({ effects }) => effects.map(({ column }) => column.axle))).size,
  };
};

/** What is done in a row, in one line. */
export const rowWords = ({ parts, points, toe }: Pick<ReachRow, 'parts' | 'points' | 'toe'>): string =>
  [...parts.map(({ label, words }) => `${label} ${words}`), ...points, ...toe].join(' · ');

/** The table as it is copied and saved: full numbers in the units shown, every reading that changes. */
export const reachPlainTable = (order: ReachOrder, answer: ReachAnswer, units: ShownUnits): PlainTable => {
  const table = reachTable(order, answer, units, Infinity);
  const unitIn = (unit: string): string => (unit === '' ? '' : ` [${unit}]`);
  return {
    heads: [
      'rank',
      'settings',
      ...table.wanted.flatMap(({ name, unit, over }) => [
        `${name.toLowerCase()}${over === null ? '' : `, worst over ${over}`}${unitIn(unit)}`,
        `${name.toLowerCase()}: met?`,
      ]),
      'range used [%]',
      ...(table.gapUnit === null ? [] : [`least gap${unitIn(table.gapUnit)}`, 'short of its margin']),
      ...table.columns.map(
        ({ axle, entry }) =>
          `change of ${axle === 'wholeCar' ? 'car' : axle} ${shortName(entry).toLowerCase()}${unitIn(shownReading(entry, units).unit)}`,
      ),
      'score',
    ],
    rows: table.rows.map((row) => [
      row.index + 1,
      rowWords(row),
      ...row.wanted.flatMap(({ miss }, at) => {
        const entry = findReading(order.question.wanted[at]?.reading ?? '');
        const worst = row.answer.wanted[at]?.worst ?? null;
        return [entry && worst !== null ? shownReading(entry, units).toShown(worst) : null, miss.words];
      }),
      row.used.map(({ share }) => (share === null ? '–' : String(Math.round(100 * share)))).join(' + '),
      ...(table.gapUnit === null
        ? []
        : [row.answer.leastGap === null ? null : shownGap(units).toShown(row.answer.leastGap), row.short?.words ?? null]),
      ...table.columns.map((column) => {
        const change = row.effects.find((effect) => effect.column.key === column.key)?.change ?? null;
        return change === null ? null : shownReading(column.entry, units).toShown(change);
      }),
      row.answer.score,
    ]),
  };
};
