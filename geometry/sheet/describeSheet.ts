import type { CarMechanism } from '../car/mechanism';
import { succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { formatShort } from '../format/format';
import { withUnit } from '../format/shownQuantity';
import { findReading } from '../readings/catalogue';
import { assembleCar } from '../setup/assembleCar';
import { judgeLimits, type LimitJudgement } from '../setup/judgeLimits';
import { SHEET_CAUTIONS } from './cautions';
import { changesSection } from './changes';
import { cornersSection, recordLines } from './corners';
import { curvesSection } from './curves';
import { makesSection } from './makes';
import { nameOfAdjuster, settingsSection } from './settingRows';
import type { CautionsSection, Labelled, NotesSection, Sheet, SheetQuestion, SheetSection } from './sheet';
import { axleWord, sheetCar, shownOn, type SheetCar } from './sheetCar';
import { isInTargets, rangeWords, targetsSection } from './targets';

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** "16 May 2026" of "2026-05-16"; what is no such day is left as it is. */
export const dayWords = (date: string): string => {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? date : `${Number(day)} ${name} ${year}`;
};

const headOf = ({ document, question }: SheetCar): readonly Labelled[] => [
  { label: 'Setup', value: question.setup.name },
  ...(question.onCar === null ? [] : [{ label: 'On the car now', value: question.onCar.name }]),
  ...(document.revision === undefined ? [] : [{ label: 'Revision', value: document.revision }]),
  { label: 'Date', value: dayWords(question.date) },
  ...(question.fileName === null ? [] : [{ label: 'Car file', value: question.fileName }]),
];

const isOfSheet = (car: SheetCar, { name }: LimitJudgement): boolean =>
  car.question.axles.some((axle) => name.startsWith(`${axle}.`)) || name.startsWith('wholeCar.');

/** "Camber", or the adjuster's name: what a limit is of. */
const limitOf = (car: SheetCar, { limit, name }: LimitJudgement): string => {
  const [axle = ''] = name.split('.');
  const where = axle === 'wholeCar' ? '' : `, ${axle}`;
  if (limit.reading !== undefined) return `${findReading(limit.reading)?.name ?? limit.reading}${where}`;
  const key = limit.setting ?? '';
  const adjuster = axle === 'front' || axle === 'rear' ? car.document[axle]?.adjusters?.[key] : undefined;
  return `${adjuster ? nameOfAdjuster(key, adjuster) : key}${where}`;
};

/** How a number of a limit is written: the reading's own way, with as many decimals as the rule has; a setting as the file has it. */
const limitNumber = (
  car: SheetCar,
  { limit, name }: LimitJudgement,
): { readonly unit: string; readonly say: (value: number) => string } => {
  const [axle] = name.split('.');
  const shown = limit.reading === undefined ? null : shownOn(car, axle === 'rear' ? 'rear' : 'front', limit.reading);
  return { unit: shown?.unit ?? '', say: (value) => formatShort(shown ? shown.toShown(value) : value, 3) };
};

/** A limit of a part that the rules lock: its row among the settings says so. */
const isOfLocked = (car: SheetCar, { limit, name }: LimitJudgement): boolean => {
  const [axle] = name.split('.');
  const adjusters = axle === 'front' || axle === 'rear' ? car.document[axle]?.adjusters : undefined;
  return limit.setting !== undefined && limit.difference !== true && adjusters?.[limit.setting]?.locked !== undefined;
};

/** The rules of the file that stand beside no target: what is allowed, why and where it stands. */
const ruleLines = (car: SheetCar, judged: readonly LimitJudgement[]): readonly string[] => {
  const lines = judged
    .filter((one) => !isInTargets(one) && !isOfLocked(car, one))
    .map((one) => {
      const { limit } = one;
      const isLength = findReading(limit.reading ?? '')?.quantity === 'length';
      const { unit, say } = limitNumber(car, one);
      const range = rangeWords(limit, isLength ? car.mm : 1, say);
      const what = limit.difference === true ? `${limitOf(car, one)}, left less right` : limitOf(car, one);
      const why = [limit.source, limit.why].filter((part) => part !== undefined && part !== '').join(': ');
      return `${what}: ${range === '' ? 'not limited' : withUnit(range, unit)}${why === '' ? '' : ` (${why})`}`;
    });
  const once = [...new Set(lines)];
  return once.length === 0 ? [] : [`What else the rules allow: ${once.join('; ')}.`];
};

/** The person's own words about the setup, what is recorded with it that is of no corner, and rules that are of no target. */
const notesSection = (car: SheetCar, judged: readonly LimitJudgement[]): NotesSection | null => {
  const { notes = '' } = car.setup.setup;
  const lines = [
    ...notes
      .split(/\r?\n/)
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    ...recordLines(car),
    ...(car.question.parts.rules ? ruleLines(car, judged) : []),
  ];
  return lines.length === 0 ? null : { kind: 'notes', heading: 'Notes', lines };
};

const faultsOf = (car: SheetCar, judged: readonly LimitJudgement[]): readonly string[] => {
  const broken = judged
    .filter(({ ok }) => !ok)
    .map((one) => {
      const side = one.name.split('.')[1];
      const which = side === 'left' || side === 'right' ? `, ${side}` : '';
      const { unit, say } = limitNumber(car, one);
      const by = one.spare === null ? 'cannot be judged' : `is ${withUnit(say(-one.spare), unit)} past the rule`;
      const source = one.limit.source === undefined ? '' : ` (${one.limit.source})`;
      return `${limitOf(car, one)}${which} ${by}${source}.`;
    });
  const resets = car.question.axles.flatMap((axle) => {
    const reset = car.assembled[axle]?.toeReset;
    if (!reset || reset.inRange) return [];
    const adjuster = car.document[axle]?.adjusters?.[reset.adjuster];
    const name = adjuster ? nameOfAdjuster(reset.adjuster, adjuster) : reset.adjuster;
    return [`${axleWord(axle)} toe as asked needs ${name} past the end of its range.`];
  });
  const unreachable = car.question.axles.flatMap((axle) => {
    const row = car.readings[axle];
    return row !== null && !row.ok ? [`${axleWord(axle)}: ${row.failure.message}`] : [];
  });
  return [...broken, ...resets, ...unreachable];
};

const cautionsSection = (car: SheetCar, judged: readonly LimitJudgement[]): CautionsSection => ({
  kind: 'cautions',
  heading: 'Before it runs',
  faults: faultsOf(car, judged),
  lines: SHEET_CAUTIONS,
});

const sectionsOf = (car: SheetCar): readonly SheetSection[] => {
  const { axles, parts, onCar } = car.question;
  const judged = judgeLimits(car.assembled).filter((one) => isOfSheet(car, one));
  const sections: readonly (SheetSection | null)[] = [
    ...axles.map((axle) => settingsSection(car, axle)),
    parts.changes && onCar !== null ? changesSection(car, onCar) : null,
    targetsSection(car, judged),
    cornersSection(car),
    parts.makes ? makesSection(car) : null,
    parts.curves ? curvesSection(car, onCar) : null,
    notesSection(car, judged),
    cautionsSection(car, judged),
  ];
  return sections.filter((section) => section !== null);
};

/**
 * What stands on the set-up sheet of a car: settings in the fitter's words and as the parts stand, what to change from the
 * setup now on the car, targets with tolerances and rules, what it makes, and the cautions.
 *
 * @param mechanism - from `toMechanism`
 * @param question - setup, axles of the car that are asked for, units, and the day
 * @returns the sheet, or why the setup cannot be put together
 */
export const describeSheet = (mechanism: CarMechanism, question: SheetQuestion): Result<Sheet, Failure> => {
  const assembled = assembleCar(mechanism, question.setup.setup);
  if (!assembled.ok) return assembled;
  const axles = question.axles.filter((axle) => mechanism[axle] !== null);
  const car = sheetCar(assembled.value, { ...question, axles });
  return succeed({ car: mechanism.document.name, head: headOf(car), sections: sectionsOf(car) });
};
