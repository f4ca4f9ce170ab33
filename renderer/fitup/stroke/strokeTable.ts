import { toDegrees, type AxleName } from '../../../geometry/index';
import type { PlainTable } from '../../lengths/lengthTables';
import { formatNumber } from '../../units/format';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { lengthsIn, travelWords } from '../clearance/clearanceTable';
import type { StrokeLine, StrokeValue } from './strokeLines';

/** A line as it is read. */
export interface ShownStroke {
  readonly value: string;
  readonly unit: string;
  /** what is said under the value: how far a thread reaches, the least of a hose */
  readonly beside: string;
  readonly allowed: string;
  readonly verdictWords: string;
  readonly at: string;
  /** parts of the bar: what is used or left, and its end; null: nothing to draw */
  readonly bar: { readonly share: number; readonly mark: number | null } | null;
}

type Line = Pick<StrokeLine, 'kind' | 'measure'>;

interface Words {
  readonly length: (value: number) => string;
  readonly lengthUnit: string;
  readonly amount: (value: number) => string;
  readonly amountUnit: string;
}

const wordsFor = ({ measure }: Line, units: ShownUnits): Words => {
  const lengths = lengthsIn(units);
  const angles = shownQuantity({ quantity: 'angle', decimals: 1 }, units);
  const plain = { length: lengths.format, lengthUnit: lengths.unit };
  switch (measure) {
    case 'length':
      return { ...plain, amount: lengths.format, amountUnit: lengths.unit };
    case 'angle':
      return { ...plain, amount: (value) => angles.format(toDegrees(value)), amountUnit: angles.unit };
    case 'times':
      return { ...plain, amount: (value) => formatNumber(value, 2), amountUnit: '× diameter' };
  }
};

/** What is left, or how much too much it is; a thread's spare is a length, all else is as its value. */
const verdictWords = (line: Line, { state, spare, verdict, allowed, value }: StrokeValue, words: Words): string => {
  if (value === null) return 'not known';
  const isLength = line.measure !== 'angle';
  const said = (amount: number): string =>
    isLength ? withUnit(words.length(amount), words.lengthUnit) : withUnit(words.amount(amount), words.amountUnit);
  if (state === 'loose') return spare === null ? 'loose' : `loose ${said(-spare)} before open`;
  if (state === 'binds') return spare === null ? 'binds' : `binds ${said(-spare)} before solid`;
  if (state === 'never') return line.kind === 'spring' && spare !== null ? `${said(spare)} left` : 'never';
  if (state === 'on rubber') return 'on its rubber';
  if (line.kind === 'bar') return 'no end in the file';
  if (line.kind === 'thread') {
    if (verdict === null) return 'material not given';
    if (spare === null || allowed === null) return 'not known';
    return spare < 0 ? `${said(-spare)} below ${formatNumber(allowed, 1)} × d` : `${said(spare)} spare`;
  }
  if (spare === null) return 'no end in the file';
  if (spare < 0)
    return line.kind === 'span'
      ? `${said(-spare)} short`
      : line.kind === 'damper'
        ? `${said(-spare)} past`
        : `${said(-spare)} too much`;
  return line.kind === 'damper' ? `${said(spare)} left` : line.kind === 'span' ? `${said(spare)} slack` : `${said(spare)} spare`;
};

/** The mark of what is allowed stands here on its bar, so that what is past it is seen. */
const MARK = 0.8;

const barOf = ({ kind }: Line, { value, allowed, share, state }: StrokeValue): ShownStroke['bar'] => {
  if (kind === 'damper' || state === 'never')
    return share === null ? null : { share: Math.min(1, Math.max(0, share)), mark: null };
  if (value === null || allowed === null || allowed <= 0) return null;
  if (kind === 'thread') return { share: Math.min(1, value / (2 * allowed)), mark: 0.5 };
  return { share: Math.min(1, (MARK * value) / allowed), mark: MARK };
};

/** A value of a line as it is read. */
export const shownStroke = (line: Line, value: StrokeValue, units: ShownUnits): ShownStroke => {
  const words = wordsFor(line, units);
  const isTravel = value.state === 'loose' || value.state === 'binds';
  const beside =
    value.beside === null
      ? ''
      : line.kind === 'thread'
        ? withUnit(words.length(value.beside), words.lengthUnit)
        : line.kind === 'span'
          ? `least ${words.length(value.beside)}`
          : `other wheel ${travelWords(value.beside, units)}`;
  return {
    value: value.value === null ? '–' : isTravel ? travelWords(value.value, units) : words.amount(value.value),
    unit: words.amountUnit,
    beside,
    allowed: value.allowed === null ? '' : line.kind === 'thread' ? formatNumber(value.allowed, 1) : words.amount(value.allowed),
    verdictWords: verdictWords(line, value, words),
    at: value.at === null ? '' : `${travelWords(value.at.travel, units)}, ${lengthsIn(units).formatChange(value.at.rack)}`,
    bar: barOf(line, value),
  };
};

/** Every line in every setup as it is copied and saved: full numbers, lengths as they are read, angles in degrees. */
export const strokePlain = (axle: AxleName, lines: readonly StrokeLine[], units: ShownUnits): PlainTable => {
  const { unit, toShown } = lengthsIn(units);
  const length = (value: number | null): number | null => (value === null ? null : toShown(value));
  return {
    heads: [
      'axle', 'side', 'what', 'of', 'setup', 'value', 'allowed', 'left', 'unit', 'verdict',
      `travel from design [${unit}]`, `rack [${unit}]`, `beside [${unit}]`, 'why there is none',
    ], // prettier-ignore
    rows: lines.flatMap(({ side, name, note, measure, kind, every }) =>
      every.map((one) => {
        const amount = (value: number | null): number | null =>
          value === null ? null : measure === 'angle' ? toDegrees(value) : measure === 'length' ? toShown(value) : value;
        return [
          axle,
          side,
          name,
          note,
          one.setup,
          amount(one.value),
          amount(one.allowed),
          measure === 'times' ? length(one.spare) : amount(one.spare),
          measure === 'angle' ? 'deg' : measure === 'times' ? `× diameter, left in ${unit}` : unit,
          one.state ?? one.verdict,
          length(one.at?.travel ?? null),
          length(one.at?.rack ?? null),
          kind === 'bar' || kind === 'span' || kind === 'thread' ? length(one.beside) : null,
          one.why,
        ];
      }),
    ),
  };
};
