import type { AxleName, CarDocument, ReadingEntry } from '../../geometry/index';
import type { CurveOver } from '../compute/curves';
import { mmPerFileUnit } from '../units/fileLength';

/** One measured value. In mm and degrees, and the other units of the catalogue. */
export interface MeasuredPoint {
  readonly input: number;
  readonly value: number;
  /** standard uncertainty of the value; null where the file gives none */
  readonly sigma: number | null;
  readonly side: 'left' | 'right' | 'both';
}

/** One measurement of the file that belongs on a plot. */
export interface MeasuredSet {
  readonly name: string;
  readonly points: readonly MeasuredPoint[];
}

const INPUTS: Readonly<Record<CurveOver, 'travel' | 'roll' | 'rack'>> = { bump: 'travel', roll: 'roll', steer: 'rack' };

/**
 * The file's measurements of one reading over one motion. Those that were made at another setup than the ones shown are
 * left out: they say nothing about these curves.
 * @param number - the reading's dotted name
 */
export const measuredSets = (
  document: CarDocument,
  axle: AxleName,
  entry: ReadingEntry,
  number: string,
  over: CurveOver,
  setups: readonly string[],
): readonly MeasuredSet[] => {
  const mm = mmPerFileUnit(document);
  const inputFactor = over === 'roll' ? 1 : mm;
  const valueFactor = entry.quantity === 'length' ? mm : 1;
  return (document.measurements ?? [])
    .filter((one) => one.axle === axle && one.reading === number && one.input === INPUTS[over])
    .filter(({ setup }) => setup === undefined || setups.includes(setup))
    .map(({ name, rows, sigma, side }) => ({
      name,
      points: rows.map(([input, value]) => ({
        input: input * inputFactor,
        value: value * valueFactor,
        sigma: sigma === undefined ? null : sigma * valueFactor,
        side: side ?? 'both',
      })),
    }));
};
