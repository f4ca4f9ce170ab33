import { PartDrawing } from '../../adjusters/parts/PartDrawing';
import type { Verdict } from '../../compute/limits';
import { VerdictShape } from '../../look/controls/VerdictShape';
import { useUnits } from '../../look/units';
import { shownReading, withUnit } from '../../units/shownQuantity';
import { effectText, FULL_BAR, shortName, type Effect, type EffectColumn } from './sideEffects';
import type { ShortPair } from './gapText';
import type { TurnedPart } from './turnedParts';

/** Parts drawn as they would stand. */
export const PartShapes = ({ parts, size }: { readonly parts: readonly TurnedPart[]; readonly size: number }) => (
  <span className="partshapes">
    {parts.map((part) => (
      <PartDrawing
        key={`${part.axle}.${part.name}`}
        adjuster={part.adjuster}
        value={part.left}
        mm={part.mm}
        pivotToBolt={part.pivotToBolt}
        size={size}
        className="mini"
      />
    ))}
  </span>
);

interface PickRowProps {
  readonly group: string;
  readonly label: string;
  readonly checked: boolean;
  readonly onPick: () => void;
}

/** What makes a row the chosen one; the arrow keys go from row to row. */
export const PickRow = ({ group, label, checked, onPick }: PickRowProps) => (
  <input type="radio" className="pickrow" name={group} aria-label={label} checked={checked} onChange={onPick} />
);

/** Head of a column of changes: name, and its unit under it. */
export const EffectHead = ({ column, axles }: { readonly column: EffectColumn; readonly axles: number }) => {
  const units = useUnits();
  const { unit } = shownReading(column.entry, units);
  const axle = axles > 1 && column.axle !== 'wholeCar' ? column.axle : '';
  return (
    <th scope="col" className="number" title={`${column.entry.name}: ${column.entry.meaning}`}>
      {shortName(column.entry)}
      <br />
      <span className="unit">{[axle, unit].filter((part) => part !== '').join(' · ') || '\u00a0'}</span>
    </th>
  );
};

/** A change: number over a bar from a centre tick, scaled to its tolerance and hatched past it. */
export const EffectCell = ({
  effect,
  over,
}: {
  readonly effect: Effect | undefined;
  /** stands over it */ readonly over?: string;
}) => {
  const units = useUnits();
  const head = over !== undefined && <span className="number quiet overchange">{over}</span>;
  if (!effect || effect.change === null)
    return (
      <td className="effect">
        {head}
        <span className="number quiet">–</span>
      </td>
    );
  const { column, share } = effect;
  const text = effectText(effect, units);
  const isOver = share !== null && Math.abs(share) > 1 + 1e-9;
  const isNothing = !/[1-9]/.test(text);
  const width = share === null ? 0 : 50 * Math.min(1, Math.abs(share) / FULL_BAR);
  const shown = shownReading(column.entry, units);
  const matters = column.matters === null ? '' : `; counts from ${withUnit(shown.format(column.matters), shown.unit)}`;
  return (
    <td className="effect" title={`${column.entry.name} ${withUnit(text, shown.unit)}${matters}`}>
      {head}
      <span className={`number${isOver ? ' over' : isNothing ? ' quiet' : ''}`}>
        {text}
        {isOver && <span className="unseen"> over its tolerance</span>}
      </span>
      <span className="effectbar" aria-hidden="true">
        <i
          className={isOver ? 'over' : undefined}
          style={{ left: `${(share ?? 0) < 0 ? 50 - width : 50}%`, width: `max(1px, ${width}%)` }}
        />
      </span>
    </td>
  );
};

/** How much of each part's range is used, one bar a part; a bushing has no end. */
export const RangeUsed = ({
  parts,
}: {
  readonly parts: readonly { readonly label: string; readonly share: number | null }[];
}) => {
  const words = parts
    .map(({ label, share }) => `${label} ${share === null ? 'has no end' : `${Math.round(100 * share)} %`}`)
    .join(', ');
  return (
    <span className="usedbars" role="img" aria-label={`range used: ${words}`} title={words}>
      {parts.map(({ label, share }) =>
        share === null ? (
          <span key={label} className="usedbar endless" />
        ) : (
          <span key={label} className="usedbar">
            <i style={{ width: `${Math.min(100, 100 * share)}%` }} />
          </span>
        ),
      )}
    </span>
  );
};

export const VerdictChip = ({ verdict, children }: { readonly verdict: Verdict; readonly children: string }) => (
  <span className={`chip ${verdict}`}>
    <VerdictShape verdict={verdict} />
    {children}
  </span>
);

/** The head over least gaps. */
export const GapHead = ({ unit }: { readonly unit: string }) => (
  <th scope="col" className="number" title="Of any two parts of the axle, over all travel and lock in that combination">
    Least gap
    <br />
    <span className="unit">{unit}</span>
  </th>
);

interface GapCellProps {
  readonly text: string | null;
  /** stands under it, with its verdict */
  readonly short: ShortPair | null;
  readonly why: string | undefined;
}

export const GapCell = ({ text, short, why }: GapCellProps) => (
  <td className="number" title={text === null ? why : undefined}>
    {text ?? '–'}
    {short && (
      <span className="shortpair" title={short.words}>
        <VerdictChip verdict={short.verdict}>{short.brief}</VerdictChip>
        <span className="unseen">: {short.words}</span>
      </span>
    )}
  </td>
);
