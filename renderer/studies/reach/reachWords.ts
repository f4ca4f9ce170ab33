import { findReading, nameOfKey, type CarDocument, type Help, type QuestionDocument } from '../../../geometry/index';
import { scaleOf } from '../../compute/adjusterSteps';
import { formatNumber, formatShort } from '../../units/format';
import { mmPerFileUnit } from '../../units/fileLength';
import { lengthWords } from '../../units/lengthWords';
import { shownQuantity, shownReading, withUnit, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { shortName } from '../answers/sideEffects';
import { labelOf } from '../answers/turnedParts';

type WantedDocument = QuestionDocument['wanted'][number];
type ReachMotion = NonNullable<WantedDocument['over']>['motion'];

/** How the moved quantity of a stretch is read: bump and rack are lengths, roll an angle. */
export const shownMotion = (motion: ReachMotion, units: ShownUnits) =>
  shownQuantity({ quantity: motion === 'roll' ? 'angle' : 'length', decimals: 0 }, units);

const bare = (value: number): string => formatShort(value, 3);

/** "bump −40…+40", as it stands on a button. */
export const stretchWords = (motion: ReachMotion, from: number | null, to: number | null, units: ShownUnits): string => {
  const shown = shownMotion(motion, units);
  const text = (value: number | null): string => {
    if (value === null) return '?';
    const number = shown.toShown(value);
    return number > 0 ? `+${bare(number)}` : bare(number);
  };
  return `${motion} ${text(from)}…${text(to)}`;
};

/** "Camber", "Toe change": with its axle and wheel where the question has more than one. */
export const wantedName = (wanted: WantedDocument, withAxle: boolean): string => {
  const entry = findReading(wanted.reading);
  const name = entry ? shortName(entry) : wanted.reading;
  const side = wanted.side === 'left' || wanted.side === 'right' ? `${wanted.side} ` : '';
  const axle = withAxle && wanted.axle !== undefined ? `${wanted.axle} ` : '';
  const words = `${axle}${side}${axle !== '' || side !== '' ? name.toLowerCase() : name}${wanted.change === true ? ' change' : ''}`;
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

/** A wanted reading is there, or by how much it is not. */
export interface MissWords {
  readonly isMet: boolean;
  /** "met", "0.11° short", "2.0 mm over" */
  readonly words: string;
}

/** What a range may miss by and still be met: rounding. */
const MET = 1e-9;

/** How much, in the digits that are shown; what they do not show is less than their last one, not nothing. */
const amountWords = (shown: ShownQuantity, amount: number): string => {
  const text = shown.format(amount);
  return amount > 0 && !/[1-9]/.test(text) ? `< ${text.replace(/0$/, '1')}` : text;
};

/** @param result - of an answer: the value that misses most, and by how much, in contract units */
export const missWords = (
  wanted: WantedDocument,
  { worst, missBy }: { readonly worst: number; readonly missBy: number },
  units: ShownUnits,
): MissWords => {
  if (missBy <= (wanted.value === undefined ? 0 : wanted.tolerance) + MET) return { isMet: true, words: 'met' };
  const entry = findReading(wanted.reading);
  if (!entry) return { isMet: false, words: 'missed' };
  const shown = shownReading(entry, units);
  const amount = withUnit(amountWords(shown, missBy), shown.unit);
  if (wanted.value !== undefined) {
    if (wanted.value === 0) return { isMet: false, words: `${amount} off` };
    return { isMet: false, words: `${amount} ${Math.abs(worst) < Math.abs(wanted.value) ? 'short' : 'over'}` };
  }
  const isOneSidedShort = wanted.range?.[1] === null;
  return { isMet: false, words: `${amount} ${isOneSidedShort ? 'short' : 'over'}` };
};

const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;

/** "camber stops 0.11° short; roll centre and toe change are met". */
export const nearestWords = (names: readonly string[], misses: readonly MissWords[]): string => {
  const small = (index: number): string => (names[index] ?? '').toLowerCase();
  const missed = misses.flatMap(({ isMet, words }, index) => (isMet ? [] : [`${small(index)} is ${words}`]));
  const met = misses.flatMap(({ isMet }, index) => (isMet ? [small(index)] : []));
  return [missed.join(', '), met.length === 0 ? '' : `${list(met)} ${met.length === 1 ? 'is' : 'are'} met`]
    .filter((part) => part !== '')
    .join('; ');
};

/** "all 4,394 combinations tried", "searched from 24 starts, 20 of which agreed; 9,132 combinations tried". */
export const proofWords = (answer: {
  readonly tried: number;
  readonly all: boolean;
  readonly starts?: { readonly of: number; readonly agreed: number };
}): string => {
  const tried = formatNumber(answer.tried, 0);
  if (answer.all) return answer.tried === 1 ? 'the one combination tried' : `all ${tried} combinations tried`;
  const starts = answer.starts ? `searched from ${answer.starts.of} starts, ${answer.starts.agreed} ended on the best; ` : '';
  return `${starts}${tried} combinations tried, not all`;
};

/** What of the question would help to let out: "Top plate, across: one step past −12 mm"; and what stops it there. */
export const helpWords = (
  document: CarDocument,
  help: Help,
  units: ShownUnits,
): { readonly what: string; readonly why: string } => {
  const axle =
    help.axle === null ? '' : ` (${help.axle}${help.side === 'left' || help.side === 'right' ? `, ${help.side}` : ''})`;
  if (help.kind === 'limit') {
    const entry = findReading(help.name);
    const name = entry?.name ?? nameOfKey(help.name);
    const limit = (document.limits ?? []).find(
      (one) =>
        (one.reading ?? one.setting) === help.name &&
        (one.axle === undefined || one.axle === help.axle) &&
        one[help.end] !== undefined,
    );
    const shown = entry ? shownReading(entry, units) : null;
    const mm = entry?.quantity === 'length' ? mmPerFileUnit(document) : 1;
    const end = limit?.[help.end];
    const at = end === undefined || !shown ? '' : ` ${withUnit(shown.format(end * mm), shown.unit)}`;
    const by = shown ? withUnit(shown.format(help.by), shown.unit) : bare(help.by);
    const why = [limit?.why, limit?.source].filter((part) => part !== undefined).join(', ');
    return { what: `${name}${axle}: the limit${at} let out by ${by}`, why: why === '' ? 'limit of the file' : why };
  }
  const adjuster = help.axle === null ? undefined : document[help.axle]?.adjusters?.[help.name];
  if (help.axle === null || !adjuster) {
    const by = lengthWords(help.by, 2, units);
    return {
      what: `${nameOfKey(help.name)}${axle}: ${by} further ${help.end === 'min' ? 'down' : 'up'} its line`,
      why: 'end of what was asked',
    };
  }
  const scale = scaleOf(adjuster);
  const end = scale[help.end];
  const mm = mmPerFileUnit(document);
  const at =
    scale.measure === 'length' ? lengthWords(end * mm, 2, units) : `${bare(end)}${scale.measure === 'clock' ? '°' : ' turns'}`;
  return { what: `${labelOf(document, help.axle, help.name)}${axle}: one ${scale.stepName} past ${at}`, why: 'end of its range' };
};

/** "26 steps of 1 mm, −18…+7", "13 marks of 15°". */
export const stepsWords = (document: CarDocument, axle: 'front' | 'rear', name: string, units: ShownUnits): string => {
  const adjuster = document[axle]?.adjusters?.[name];
  if (!adjuster) return '';
  const { measure, min, max, step, stepName } = scaleOf(adjuster);
  const mm = mmPerFileUnit(document);
  const [first, last] = [Math.ceil(min / step - 1e-9), Math.floor(max / step + 1e-9)];
  const count = last - first + (adjuster.kind === 'offset-bushing' ? 0 : 1);
  const plural = count === 1 ? stepName : `${stepName}s`;
  const signed = (value: number): string => (value > 0 ? `+${bare(value)}` : bare(value));
  if (measure === 'clock') return `${count} ${plural} of ${bare(step)}°`;
  if (measure === 'turns') return `${count} ${plural} of ${bare(step)} turn, ${signed(first * step)}…${signed(last * step)}`;
  const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const inUnits = (value: number): number => shown.toShown(value * mm);
  return `${count} ${plural} of ${bare(inUnits(step))} ${shown.unit}, ${signed(inUnits(first * step))}…${signed(inUnits(last * step))}`;
};
