import type { EnvelopeRow } from '../../geometry/index';
import { formatNumber } from '../units/format';
import { shownQuantity, withUnit } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';

/** Positions that cannot be reached, with their reason: nothing is known there. */
export const Unreached = ({ envelope, units }: { readonly envelope: readonly EnvelopeRow[]; readonly units: ShownUnits }) => {
  const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const length = (value: number): string => withUnit(shown.formatChange(value), shown.unit);
  return envelope.flatMap(({ setup, axle, side, unreachable }) => {
    const [first] = unreachable;
    if (first === undefined) return [];
    const count = unreachable.length === 1 ? 'one position' : `${formatNumber(unreachable.length, 0)} positions`;
    return [
      <p key={`${setup} ${axle} ${side}`} className="fitupnote watch">
        <b>Not reached:</b> {axle} {side}, {setup}: {count}, the first at travel {length(first.travel)}, rack {length(first.rack)}
        . {first.message} Nothing there is clear.
      </p>,
    ];
  });
};
