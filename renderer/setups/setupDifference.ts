import type { AdjusterDocument, AxleName, CarDocument, SetupDocument } from '../../geometry/index';
import { fitterWords, nameOfKey } from '../adjusters/fitterWords';
import { sideWords } from '../adjusters/sideWords';
import { settingOf, setupNamed } from '../state/settings';
import { mmPerFileUnit } from '../units/fileLength';
import { formatNumber, formatShort } from '../units/format';
import { lengthWords } from '../units/lengthWords';
import { shownQuantity, withUnit } from '../units/shownQuantity';
import type { ShownUnits, UnitChoice } from '../units/unitChoice';

const AXLES = ['front', 'rear'] as const;
const SIDES = ['left', 'right'] as const;

interface Between {
  readonly now: number | null;
  readonly then: number | null;
}

/** Every part is said where it now stands and where it stood, as on its card and on the sheet. */
const adjusterMoved = (
  adjuster: AdjusterDocument,
  between: Between,
  mm: number,
  units: UnitChoice,
  side: 'both' | 'left' | 'right',
): string => {
  const words = (value: number | null) => fitterWords(adjuster, value, mm, units, undefined, side).short;
  const [now, then] = [words(between.now), words(between.then)];
  // Two numbers may have the same words: a quarter of a mark, or turns of more than two decimals.
  if (now === then) return `${formatShort(between.now ?? 0, 4)}, was ${formatShort(between.then ?? 0, 4)}`;
  return `${now}, was ${then}`;
};

const changedOf = (axle: AxleName, name: string, now: SetupDocument, then: SetupDocument) =>
  Object.fromEntries(
    SIDES.map((side) => [side, { now: settingOf(now, axle, name, side), then: settingOf(then, axle, name, side) }]),
  ) as Record<'left' | 'right', Between>;

const isChanged = ({ now, then }: Between): boolean => now !== then;
const isSame = (a: Between, b: Between): boolean => a.now === b.now && a.then === b.then;

interface Amount {
  readonly what: string;
  readonly key: 'setToe' | 'rideHeight' | 'springRate' | 'barRate';
  readonly words: (value: number, mm: number, units: ShownUnits) => string;
  readonly none: string;
}

const toeWords = (degrees: number, units: ShownUnits): string => {
  const shown = shownQuantity({ quantity: 'angle', decimals: 2, isToe: true }, units);
  return shown.unit === '°' ? `${formatNumber(degrees, 2)}°` : withUnit(shown.format(degrees), shown.unit);
};

const rateWords = (rate: number, units: ShownUnits): string => {
  const shown = shownQuantity({ quantity: 'forcePerLength', decimals: 1 }, units);
  return withUnit(formatShort(shown.toShown(rate), 1), shown.unit);
};

/** The units with what toe across the rim is read at on this axle. */
const unitsOn = (document: CarDocument, axle: AxleName, units: UnitChoice): ShownUnits => {
  const diameter = document[axle]?.wheel.toeDiameter;
  return { ...units, toeDiameter: diameter === undefined ? null : diameter * mmPerFileUnit(document) };
};

const AMOUNTS: readonly Amount[] = [
  { what: 'toe', key: 'setToe', words: (value, _, units) => `set to ${toeWords(value, units)}`, none: 'as the rods leave it' },
  {
    what: 'ride height',
    key: 'rideHeight',
    words: (value, mm, units) =>
      value === 0 ? 'as drawn' : `${lengthWords(Math.abs(value) * mm, 1, units)} ${value > 0 ? 'higher' : 'lower'} than drawn`,
    none: 'not given',
  },
  { what: 'spring rate', key: 'springRate', words: (value, _, units) => rateWords(value, units), none: 'that of the axle' },
  { what: 'bar rate', key: 'barRate', words: (value, _, units) => rateWords(value, units), none: 'that of the axle' },
];

/** A number of a setup in words and the units chosen: "5.0 mm lower than drawn"; null: it is none of those. @param document - the car that the value is of */
export const amountWords = (
  key: string,
  value: unknown,
  document: CarDocument,
  axle: AxleName,
  units: UnitChoice,
): string | null => {
  const amount = AMOUNTS.find((one) => one.key === key);
  if (!amount || (value !== undefined && typeof value !== 'number')) return null;
  return value === undefined ? amount.none : amount.words(value, mmPerFileUnit(document), unitsOn(document, axle, units));
};

const holeWords = (hole: NonNullable<SetupDocument['front']>['barHole']): string =>
  hole === undefined
    ? 'as the file has it'
    : typeof hole === 'string'
      ? `hole “${hole}”`
      : sideWords(`hole “${hole.left}”`, `hole “${hole.right}”`);

/**
 * What one setup does otherwise than another, part by part, as one would say it to the fitter.
 * @param document - the car of `name`
 * @param other - the car of `than`: the same, as it was saved, or another one
 * @returns "Front plate across: 5 mm further inboard", …; empty where nothing differs
 */
export const setupDifference = (
  document: CarDocument,
  name: string,
  other: CarDocument,
  than: string,
  units: UnitChoice,
): readonly string[] => {
  const mm = mmPerFileUnit(document);
  const [now, then] = [setupNamed(document, name), setupNamed(other, than)];
  const sentences: string[] = [];
  for (const axle of AXLES) {
    const say = (what: string, words: string) => sentences.push(`${axle === 'front' ? 'Front' : 'Rear'} ${what}: ${words}`);
    for (const [key, adjuster] of Object.entries(document[axle]?.adjusters ?? {})) {
      if (!other[axle]?.adjusters?.[key]) continue;
      const { left, right } = changedOf(axle, key, now, then);
      if (!isChanged(left) && !isChanged(right)) continue;
      const label = (adjuster.label ?? nameOfKey(key)).toLowerCase();
      if (isSame(left, right)) say(label, adjusterMoved(adjuster, left, mm, units, 'both'));
      else {
        const words = (side: 'left' | 'right', between: Between) =>
          isChanged(between) ? `${side} ${adjusterMoved(adjuster, between, mm, units, side)}` : null;
        say(label, [words('left', left), words('right', right)].filter((part) => part !== null).join('; '));
      }
    }
    for (const { what, key, words, none } of AMOUNTS) {
      const [is, was] = [now[axle]?.[key], then[axle]?.[key]];
      if (is === was) continue;
      const tell = (value: number | undefined) => (value === undefined ? none : words(value, mm, unitsOn(document, axle, units)));
      say(what, `${tell(is)}, was ${tell(was)}`);
    }
    if (JSON.stringify(now[axle]?.barHole) !== JSON.stringify(then[axle]?.barHole))
      say('bar', `${holeWords(now[axle]?.barHole)}, was ${holeWords(then[axle]?.barHole)}`);
    if (JSON.stringify(now[axle]?.wheel) !== JSON.stringify(then[axle]?.wheel)) say('wheel', 'another one');
  }
  return sentences;
};
