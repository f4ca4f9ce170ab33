import { fitterWords, type CarDocument, type MapAxis } from '../../../geometry/index';
import { mmPerFileUnit } from '../../units/fileLength';
import { formatSigned } from '../../units/format';
import { shownQuantity, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { labelOf } from '../answers/turnedParts';
import { MOTION_WORDS } from './mapForm';

/** One side of a map as it is read. */
export interface ShownAxis {
  readonly label: string;
  readonly unit: string;
  /** what its numbers are in the unit shown */
  readonly toShown: (value: number) => number;
  readonly format: (value: number) => string;
  /** words for its lesser and its greater end; empty where there are none */
  readonly less: string;
  readonly more: string;
}

const LAST_WORDS = /(?:,\s*|\s)((?:top )?\p{L}+)$/u;

const same: Pick<ShownQuantity, 'toShown'> = { toShown: (value) => value };

export const shownAxis = (axis: MapAxis, document: CarDocument, units: ShownUnits): ShownAxis => {
  if (axis.kind !== 'adjuster') {
    const quantity = axis.kind === 'roll' ? 'angle' : 'length';
    const shown = shownQuantity({ quantity, decimals: axis.kind === 'roll' ? 2 : 1 }, { ...units, angle: 'degrees' });
    const name = MOTION_WORDS[axis.kind];
    const [less, more] = axis.kind === 'travel' ? ['droop', 'bump'] : ['', ''];
    return {
      label: name.charAt(0).toUpperCase() + name.slice(1),
      unit: shown.unit,
      toShown: shown.toShown,
      format: shown.formatChange,
      less,
      more,
    };
  }
  const adjuster = document[axis.axle]?.adjusters?.[axis.name];
  const label = labelOf(document, axis.axle, axis.name);
  if (!adjuster) return { label, unit: '', ...same, format: String, less: '', more: '' };
  const mm = mmPerFileUnit(document);
  const wordOf = (step: number): string =>
    adjuster.kind === 'offset-bushing' ? '' : (LAST_WORDS.exec(fitterWords(adjuster, step, mm, units).short)?.[1] ?? '');
  const step = adjuster.kind === 'slide' || adjuster.kind === 'turnbuckle' || adjuster.kind === 'perch' ? adjuster.step : 1;
  const ends = { less: wordOf(-step), more: wordOf(step) };
  if (adjuster.kind === 'slide') {
    const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
    return {
      label,
      unit: shown.unit,
      toShown: (value) => shown.toShown(value * mm),
      format: (value) => shown.formatChange(value * mm),
      ...ends,
    };
  }
  const isTurned = adjuster.kind === 'turnbuckle' || adjuster.kind === 'perch';
  return {
    label,
    unit: isTurned ? 'turns' : '°',
    ...same,
    format: (value) => formatSigned(value, isTurned ? 3 : 1),
    ...ends,
  };
};

/** "Top plate, across, mm": and which way is plus. */
export const axisTitle = ({ label, unit, less, more }: ShownAxis): string => {
  const ends = more === '' ? '' : less === '' ? ` ${more} →` : ` ← ${less} · ${more} →`;
  return `${label}, ${unit}${ends}`;
};
