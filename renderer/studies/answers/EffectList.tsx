import { useUnits } from '../../look/units';
import { shownReading, withUnit } from '../../units/shownQuantity';
import type { ShortPair } from './gapText';
import { effectText, type Effect } from './sideEffects';

/** Side effects past this part of what matters are named. */
const NAMED = 0.5;
const MOST = 12;

interface EffectListProps {
  readonly effects: readonly Effect[];
  readonly from: string;
  /** the pair of parts that does not keep its margin there, by its names */
  readonly short: ShortPair | null;
}

/** What else the chosen row changes, the worst against its tolerance first: of every reading, not only of those with a column. */
export const EffectList = ({ effects, from, short }: EffectListProps) => {
  const units = useUnits();
  const axles = new Set(effects.map(({ column }) => column.axle)).size;
  const worth = effects
    .filter(({ share }) => share !== null && Math.abs(share) >= NAMED)
    .sort((a, b) => Math.abs(b.share ?? 0) - Math.abs(a.share ?? 0));
  return (
    <p className="effectlist">
      <b>Chosen row, against {from}:</b>{' '}
      {worth.length === 0
        ? 'no other reading changes by as much as half its tolerance.'
        : worth.slice(0, MOST).map((effect, index) => {
            const { column, share } = effect;
            const { unit } = shownReading(column.entry, units);
            const axle = axles > 1 && column.axle !== 'wholeCar' ? `${column.axle} ` : '';
            return (
              <span key={column.key} className={Math.abs(share ?? 0) > 1 + 1e-9 ? 'over' : undefined}>
                {index > 0 && ', '}
                {axle}
                {column.entry.name.toLowerCase()} {withUnit(effectText(effect, units), unit)}
              </span>
            );
          })}
      {worth.length > MOST && ` and ${worth.length - MOST} more`}
      {short && (
        <>
          ; <span className="over">{short.words}</span>
        </>
      )}
    </p>
  );
};
