import type { CarDocument, MapAnswer, MapLimit, MapValues } from '../../../geometry/index';
import type { ShownUnits } from '../../units/unitChoice';
import { decimalsOfStep, ticksOf, valueStep } from '../../curves/plotScale';
import { formatNumber } from '../../units/format';
import { contourAreas, rangeOfMap, type ContourArea, type MapPoint } from './contourLines';
import { limitWords } from './limitWords';
import type { MapMarks } from './mapSteps';

/** Everything on a map that only its answer and what is marked decide, in parts of its width and height. */
export interface MapPicture {
  /** areas in rising tone, the first the palest */
  readonly tones: readonly ContourArea[];
  readonly lines: readonly { readonly level: number; readonly text: string; readonly lines: ContourArea['lines'] }[];
  /** the step between two lines, in the unit shown */
  readonly step: number;
  /** tone grows towards lesser values */
  readonly isFalling: boolean;
  readonly wanted: {
    /** within the tolerance: what is over its lower end and not over its upper */
    readonly band: readonly (readonly MapPoint[])[];
    readonly lines: ContourArea['lines'];
    readonly text: string;
  } | null;
  readonly second: {
    readonly lines: readonly { readonly text: string; readonly lines: ContourArea['lines'] }[];
    readonly threshold: { readonly text: string; readonly lines: ContourArea['lines'] } | null;
    readonly step: number;
  } | null;
  readonly limits: readonly { readonly words: string; readonly area: ContourArea }[];
  /** where there is no value */
  readonly blank: readonly (readonly MapPoint[])[];
}

/** Lines of a map, at most. */
const MOST_LINES = 11;
const MOST_SECOND = 7;
/** A limit that is just met is kept: an edge lies where it is broken by more than rounding. */
const BROKEN = 1e-7;
/** A limit that cannot be judged is broken by this much. */
const FAR = 1e6;

interface Shown {
  readonly toShown: (value: number) => number;
}

const shownValues = (values: MapValues, { toShown }: Shown): MapValues =>
  values.map((row) => row.map((value) => (value === null ? null : toShown(value))));

const levelsOf = (values: MapValues, most: number): { readonly step: number; readonly levels: readonly number[] } => {
  const range = rangeOfMap(values);
  if (!range || range[1] - range[0] < 1e-9) return { step: 0, levels: [] };
  const step = valueStep(range[1] - range[0], most);
  return { step, levels: ticksOf(range, step) };
};

const negative = (values: MapValues): MapValues => values.map((row) => row.map((value) => (value === null ? null : -value)));

/** What is over the first level and not over the second: outer rings of one with those of the other as holes. */
const between = (values: MapValues, low: number, high: number): readonly (readonly MapPoint[])[] =>
  contourAreas(values, [low, high]).flatMap(({ rings }) => rings);

const broken = (z: MapValues, { spare }: MapLimit): MapValues =>
  z.map((row, index) =>
    row.map((value, column) => {
      if (value === null) return null;
      const left = spare[index]?.[column] ?? null;
      return left === null ? FAR : -left;
    }),
  );

const isBrokenSomewhere = (values: MapValues): boolean =>
  values.some((row) => row.some((value) => value !== null && value > BROKEN));

/** Left and right of a limit are one where they are broken at the same places. */
const isSame = (a: MapValues, b: MapValues): boolean =>
  a.every((row, index) => row.every((value, column) => Math.abs((value ?? FAR) - (b[index]?.[column] ?? FAR)) < 1e-9));

const limitsOf = (z: MapValues, limits: readonly MapLimit[], document: CarDocument, units: ShownUnits): MapPicture['limits'] => {
  const kept: { readonly limit: MapLimit; readonly values: MapValues }[] = [];
  for (const limit of limits) {
    const values = broken(z, limit);
    if (!isBrokenSomewhere(values)) continue;
    if (kept.some((other) => other.limit.limit === limit.limit && isSame(other.values, values))) continue;
    kept.push({ limit, values });
  }
  return kept.flatMap(({ limit, values }) => {
    const twins = kept.filter((other) => other.limit.limit === limit.limit).length;
    const words = limitWords(
      twins > 1 ? limit : { ...limit, name: limit.name.replace(/\.(left|right)\./, '.both.') },
      document,
      units,
    );
    return contourAreas(values, [BROKEN]).map((area) => ({ words, area }));
  });
};

/** @param first - how the reading is read; @param second - how the second one is */
export const mapPicture = (
  answer: MapAnswer,
  marks: MapMarks,
  first: Shown,
  second: Shown | null,
  document: CarDocument,
  units: ShownUnits,
): MapPicture => {
  const values = shownValues(answer.z, first);
  const range = rangeOfMap(values);
  const isFalling = range !== null && -range[0] > Math.abs(range[1]);
  const { step, levels } = levelsOf(values, MOST_LINES);
  const decimals = decimalsOfStep(step || 1);
  const wantedLevel = marks.wanted === null ? null : first.toShown(marks.wanted.value);
  // the wanted line has a figure of its own
  const unwanted = levels.filter((level) => wantedLevel === null || Math.abs(level - wantedLevel) > 1e-9);
  const lines = contourAreas(values, unwanted).map(({ level, lines: own }) => ({
    level,
    text: formatNumber(level, decimals),
    lines: own,
  }));
  const tones = isFalling
    ? contourAreas(
        negative(values),
        levels.map((level) => -level),
      )
    : contourAreas(values, levels);
  const other = answer.second && second ? shownValues(answer.second, second) : null;
  const others = other ? levelsOf(other, MOST_SECOND) : null;
  const threshold = marks.threshold && second ? second.toShown(marks.threshold.value) : null;
  const blank = answer.z.some((row) => row.includes(null))
    ? contourAreas(
        answer.z.map((row) => row.map((value) => (value === null ? 1 : 0))),
        [0.5],
      ).flatMap(({ rings }) => rings)
    : [];
  return {
    tones: [...tones].sort((a, b) => a.level - b.level),
    lines,
    step,
    isFalling,
    wanted:
      marks.wanted === null
        ? null
        : {
            band: between(
              values,
              first.toShown(marks.wanted.value - marks.wanted.tolerance),
              first.toShown(marks.wanted.value + marks.wanted.tolerance),
            ),
            lines: contourAreas(values, [first.toShown(marks.wanted.value)]).flatMap(({ lines: own }) => own),
            text: formatNumber(first.toShown(marks.wanted.value), Math.max(2, decimals)),
          },
    second:
      other && others
        ? {
            lines: contourAreas(
              other,
              others.levels.filter((level) => threshold === null || Math.abs(level - threshold) > 1e-9),
            ).map(({ level, lines: own }) => ({ text: formatNumber(level, decimalsOfStep(others.step || 1)), lines: own })),
            threshold:
              threshold === null
                ? null
                : {
                    text: formatNumber(threshold, decimalsOfStep(others.step || 1)),
                    lines: contourAreas(other, [threshold]).flatMap(({ lines: own }) => own),
                  },
            step: others.step,
          }
        : null,
    limits: limitsOf(answer.z, answer.limits ?? [], document, units),
    blank,
  };
};
