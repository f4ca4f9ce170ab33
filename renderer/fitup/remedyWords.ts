import {
  findReading,
  lockLostWords,
  mattersOf,
  type CarDocument,
  type ClearanceRemedy,
  type ClearanceRow,
} from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import { scaleOf } from '../compute/adjusterSteps';
import { formatShort } from '../units/format';
import { mmPerFileUnit } from '../units/fileLength';
import { shownQuantity, shownReading, withUnit } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import { inSentence } from '../readings/inSentence';

/** What would clear a pair, and what it costs, as it is read. */
export interface RemedyWords {
  readonly what: string;
  /** the clearance that it leaves, with its unit; whether that is proved, and which other setups stay short */
  readonly then: string;
  /** what changes most in the readings, of a stop of the rack the lock; empty: a stop of the travel changes none */
  readonly price: string;
}

/** A change of less than this part of what matters is not worth a word. */
const WORTH_SAYING = 0.1;
const MOST_PRICES = 5;

/** The heaviest changes of readings, left and right as one where they read alike. */
export const priceWords = (document: CarDocument, changes: ClearanceRemedy['changes'], units: ShownUnits): string => {
  const said = new Map<string, { readonly text: string; readonly weight: number }>();
  for (const [name, change] of Object.entries(changes)) {
    const parts = name.split('.');
    const key = parts.at(-1) ?? '';
    const entry = findReading(key);
    const matters = mattersOf(document, key);
    if (!entry || matters === undefined || change === null) continue;
    const weight = Math.abs(change) / matters;
    if (weight < WORTH_SAYING) continue;
    const shown = shownReading(entry, units);
    const text = withUnit(shown.formatChange(change), shown.unit);
    const twin = changes[name.includes('.left.') ? name.replace('.left.', '.right.') : name.replace('.right.', '.left.')];
    const isPair = parts.length === 3 && typeof twin === 'number' && shown.formatChange(twin) === shown.formatChange(change);
    const where = parts.slice(0, -1).filter((part) => part !== 'both' && part !== 'wholeCar' && !(isPair && part !== parts[0]));
    const title = [inSentence(entry.name), ...(where.length > 0 ? [`(${where.join(' ')})`] : [])].join(' ');
    if (!said.has(title)) said.set(title, { text: `${title} ${text}`, weight });
  }
  const sorted = [...said.values()].sort((a, b) => b.weight - a.weight).map(({ text }) => text);
  if (sorted.length === 0) return 'nothing else that matters changes';
  const more = sorted.length > MOST_PRICES ? [`and ${sorted.length - MOST_PRICES} more`] : [];
  return [...sorted.slice(0, MOST_PRICES), ...more].join(', ');
};

/** A setting of an adjuster in the units that are read. */
const settingWords = (
  document: CarDocument,
  axle: ClearanceRow['axle'],
  name: string,
  value: number | null,
  units: ShownUnits,
) => {
  const adjuster = document[axle]?.adjusters?.[name];
  if (value === null) return 'nothing fitted';
  if (!adjuster) return formatShort(value);
  switch (scaleOf(adjuster).measure) {
    case 'length': {
      const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
      return withUnit(shown.formatChange(value * mmPerFileUnit(document)), shown.unit);
    }
    case 'clock':
      return `${formatShort(value)}°`;
    case 'turns':
      return `${formatShort(value)} turns`;
  }
};

export const remedyWords = (
  document: CarDocument,
  row: Pick<ClearanceRow, 'axle' | 'side' | 'at' | 'needs' | 'surfaceOnly'>,
  { by, adjuster, setup, from, to, clearance, bound, stillShort, changes }: ClearanceRemedy,
  units: ShownUnits,
): RemedyWords => {
  const lengths = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const length = (value: number | null): string =>
    value === null ? 'none' : withUnit(lengths.formatChange(value), lengths.unit);
  const fine = shownQuantity({ quantity: 'length', decimals: 2 }, units);
  const gap = (value: number): string => withUnit(lengths.format(value), lengths.unit);
  const angles = shownQuantity({ quantity: 'angle', decimals: 1 }, units);
  const isProved = clearance - bound >= row.needs && row.surfaceOnly.length === 0;
  const doubt = isProved ? '' : `, not proved: it could be less by ${withUnit(fine.format(bound), fine.unit)}`;
  const others = stillShort.map((other) => `; ${other.setup} is short too, ${gap(other.clearance)}, and stays so`);
  const then = `${gap(clearance)}${doubt}${others.join('')}`;
  if (by === 'rack')
    return {
      what: `Rack stop at ${length(to)} instead of ${length(from)}`,
      then,
      price: lockLostWords(changes, row, (degrees) => withUnit(angles.format(degrees), angles.unit), gap),
    };
  if (by === 'travel') {
    const which = row.at.travel > 0 ? 'Bump' : 'Droop';
    return { what: `${which} stop at ${length(to)} of travel from design instead of ${length(from)}`, then, price: '' };
  }
  const name = adjuster ?? '';
  const label = document[row.axle]?.adjusters?.[name]?.label ?? nameOfKey(name);
  const words = (value: number | null): string => settingWords(document, row.axle, name, value, units);
  return {
    what: `${label} at ${words(to)} instead of ${words(from)}, both wheels, in ${setup ?? row.at.setup}`,
    then,
    price: priceWords(document, changes, units),
  };
};
