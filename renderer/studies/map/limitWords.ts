import { findReading, type CarDocument, type LimitDocument, type MapLimit } from '../../../geometry/index';
import { mmPerFileUnit } from '../../units/fileLength';
import { formatShort } from '../../units/format';
import { shownReading, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { labelOf } from '../answers/turnedParts';

/** The rule of a limit as it is written on its edge: "sample rules 4.1: track 1,530 … 1,590 mm". */
export const limitWords = ({ name, limit }: MapLimit, document: CarDocument, units: ShownUnits): string => {
  const [axle = '', side = ''] = name.split('.');
  const { source = limit.why } = limit;
  return `${source === undefined ? '' : `${source}: `}${boundWords(limit, axle, side, document, units)}`;
};

/** The same of a limit as the file has it: "front camber −4.00 … 0.00° (sample rules 5.2)". */
export const ruleWords = (limit: LimitDocument, document: CarDocument, units: ShownUnits): string => {
  const { axle = '', side = '', source = limit.why } = limit;
  const words = boundWords(limit, axle, side, document, units);
  const isReading = limit.reading !== undefined;
  return `${isReading && axle !== '' ? `${axle} ` : ''}${words}${source === undefined ? '' : ` (${source})`}`;
};

const boundWords = (limit: LimitDocument, axle: string, side: string, document: CarDocument, units: ShownUnits): string => {
  const { min, max } = limit;
  const entry = limit.reading === undefined ? undefined : findReading(limit.reading);
  const shown = entry && shownReading(entry, units);
  const scale = entry?.quantity === 'length' ? mmPerFileUnit(document) : 1;
  const write = (value: number): string => (shown ? shown.format(value * scale) : formatShort(value));
  const what = entry
    ? entry.name.toLowerCase()
    : labelOf(document, axle === 'rear' ? 'rear' : 'front', limit.setting ?? '').toLowerCase();
  const whose = side === 'left' || side === 'right' ? `${side} ` : '';
  const difference = limit.difference === true ? ', left less right,' : '';
  const bounds =
    min !== undefined && max !== undefined
      ? min === max
        ? `stays at ${withUnit(write(min), shown?.unit ?? '')}`
        : withUnit(`${write(min)} … ${write(max)}`, shown?.unit ?? '')
      : min !== undefined
        ? `at least ${withUnit(write(min), shown?.unit ?? '')}`
        : max !== undefined
          ? `at most ${withUnit(write(max), shown?.unit ?? '')}`
          : '';
  return `${whose}${what}${difference} ${bounds}`;
};
