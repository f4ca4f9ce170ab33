import type { AxleName, LimitDocument } from '../car/document';
import { setWithin } from '../car/tolerances';
import { formatShort } from '../format/format';
import type { ShownQuantity } from '../format/shownQuantity';
import { findReading } from '../readings/catalogue';
import type { LimitJudgement } from '../setup/judgeLimits';
import type { TargetRow, TargetsSection } from './sheet';
import { acrossWords, axleWord, readingAt, shownOn, type SheetCar } from './sheetCar';

/** What an alignment is set to, in the order of the sheet; caster only where the wheels steer. */
const SET_TO = ['camber', 'toe', 'caster', 'bodyHeight'] as const;

const DASH = '–';

/** "−4.00 … 0.00", "≥ 145.0", "≤ 1,590.0"; a tick at neither end is empty. @param scale - contract units in one of the file's */
export const rangeWords = ({ min, max }: LimitDocument, scale: number, format: (value: number) => string): string => {
  const [low, high] = [min, max].map((end) => (end === undefined ? null : format(end * scale))) as [string | null, string | null];
  if (low !== null && high !== null) return low === high ? low : `${low} … ${high}`;
  return low !== null ? `≥ ${low}` : high !== null ? `≤ ${high}` : '';
};

const isOf = (judgement: LimitJudgement, axle: AxleName, key: string): boolean =>
  judgement.limit.reading === key && judgement.name.startsWith(`${axle}.`);

const ruleOf = (
  car: SheetCar,
  judged: readonly LimitJudgement[],
  axle: AxleName,
  key: string,
  shown: ShownQuantity,
): Pick<TargetRow, 'rule' | 'isBroken'> => {
  const mine = judged.filter((one) => isOf(one, axle, key));
  const scale = findReading(key)?.quantity === 'length' ? car.mm : 1;
  const limits = [...new Set(mine.map(({ limit }) => limit))];
  const said = limits.map((limit) => {
    const range = rangeWords(limit, scale, shown.format);
    const side = limit.side === 'left' || limit.side === 'right' ? `${limit.side} ` : '';
    const source = limit.source === undefined || limit.source === '' ? '' : ` (${limit.source})`;
    return range === '' ? '' : `${limit.difference === true ? 'L − R ' : side}${range}${source}`;
  });
  return { rule: said.filter((range) => range !== '').join('; '), isBroken: mine.some(({ ok }) => !ok) };
};

const rowOf = (car: SheetCar, judged: readonly LimitJudgement[], axle: AxleName, key: string): TargetRow | null => {
  const entry = findReading(key);
  const shown = shownOn(car, axle, key);
  if (!entry || !shown || entry.of === 'car') return null;
  const isToe = key === 'toe' || key === 'totalToe';
  const value = (owner: 'left' | 'right' | 'both'): string | null => {
    const number = readingAt(car.readings, axle, owner, key);
    return number === null ? null : isToe ? shown.formatChange(number) : shown.format(number);
  };
  const [left, right, both] = [value('left'), value('right'), value('both')];
  const rule = ruleOf(car, judged, axle, key, shown);
  if (left === null && right === null && both === null && rule.rule === '') return null;
  const within = setWithin(car.document, key);
  return {
    name:
      key === 'bodyHeight'
        ? heightName(car, axle)
        : `${entry.name}, ${axle}${key === 'toe' ? ', each wheel' : ''}${isToe ? acrossWords(car, axle) : ''}`,
    unit: shown.unit,
    value: entry.of === 'axle' ? (both ?? DASH) : { left: left ?? DASH, right: right ?? DASH },
    tolerance: within === undefined ? '' : `± ${toleranceWords(key, within, shown)}`,
    ...rule,
  };
};

/** A tolerance has the decimals that it needs, and no fewer than a hundredth of a degree. */
const toleranceWords = (key: string, within: number, shown: ShownQuantity): string =>
  shown.unit === 'mm' ? formatShort(shown.toShown(within), 2) : shown.format(within);

const heightName = (car: SheetCar, axle: AxleName): string =>
  `${axleWord(axle)} height, ${car.document[axle]?.heightAt?.name ?? 'body'}`;

const rowsOfAxle = (car: SheetCar, judged: readonly LimitJudgement[], axle: AxleName): readonly TargetRow[] => {
  const isSteered = car.document[axle]?.steering !== undefined;
  const set = SET_TO.filter((key) => key !== 'caster' || isSteered);
  const limited = judged
    .filter(({ name }) => name.startsWith(`${axle}.`))
    .flatMap(({ limit }) =>
      limit.reading === undefined || (SET_TO as readonly string[]).includes(limit.reading) ? [] : [limit.reading],
    );
  return [...set, 'track', ...limited.filter((key) => key !== 'track')]
    .filter((key, index, all) => all.indexOf(key) === index)
    .flatMap((key) => rowOf(car, judged, axle, key) ?? []);
};

/** Where the driver and the fuel of the file's masses are on board, an alignment is meant with them. */
const noteOf = (car: SheetCar): string => {
  const aboard = (car.document.masses ?? []).filter(({ included }) => included === true).map(({ name }) => name);
  return aboard.length === 0
    ? 'where it stands, wheels straight ahead'
    : `where it stands, wheels straight ahead, with ${aboard.join(', ')}`;
};

/** Whether a limit stands beside a target, and need not be said again. */
export const isInTargets = ({ limit, name }: LimitJudgement): boolean =>
  limit.reading !== undefined && !name.startsWith('wholeCar.');

/** What to set to and measure, on the axles of the sheet. @param judged - every limit of the file, held against the setup */
export const targetsSection = (car: SheetCar, judged: readonly LimitJudgement[]): TargetsSection => {
  const { axles, parts } = car.question;
  return {
    kind: 'targets',
    heading: 'Alignment',
    note: noteOf(car),
    rows: axles.flatMap((axle) => rowsOfAxle(car, judged, axle)),
    hasRules: parts.rules,
    hasBoxes: parts.boxes,
  };
};
