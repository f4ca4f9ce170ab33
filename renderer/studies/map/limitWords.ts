import { findReading, type CarDocument, type MapLimit } from '../../../geometry/index';
import { mmPerFileUnit } from '../../units/fileLength';
import { formatShort } from '../../units/format';
import { shownReading, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { labelOf } from '../answers/turnedParts';

/** The rule of a limit as it is written on its edge: "sample rules 4.1: track 1,530 … 1,590 mm". */
export const limitWords = ({ name, limit }: MapLimit, document: CarDocument, units: ShownUnits): string => {
  const { min, max } = limit;
  const entry = limit.reading === undefined ? undefined : findReading(limit.reading);
  const [axle = '', side = ''] = name.split('.');
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
  const source = limit.source ?? limit.why;
  return `${source === undefined ? '' : `${source}: `}${whose}${what}${difference} ${bounds}`;
};
