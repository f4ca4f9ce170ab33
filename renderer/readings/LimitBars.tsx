import { findReading } from '../../geometry/index';
import type { JudgedLimit } from '../compute/limits';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { formatShort } from '../units/format';
import { shownReading } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import { isMoved } from './positionWords';

const shareOf = (limit: JudgedLimit, value: number): number => {
  if (limit.min === null || limit.max === null) return 0;
  return Math.min(1, Math.max(0, (value - limit.min) / (limit.max - limit.min)));
};

const Pointer = ({ share, kind, d }: { readonly share: number; readonly kind: string; readonly d: string }) => (
  <svg x={`${100 * share}%`} y="0" width="1" height="16" overflow="visible">
    <path className={`pointer ${kind}`} d={d} />
  </svg>
);

/**
 * How much of a limit is left. @param moved - the car is not shown where it stands, while limits are judged only there
 */
export const spareWords = (limit: Pick<JudgedLimit, 'of' | 'spare'>, moved: boolean, units: ShownUnits): string => {
  const entry = findReading(limit.of);
  const where = moved ? 'standing: ' : '';
  if (limit.spare === null || !entry) return `${where}no value`;
  const amount = shownReading(entry, units).format(Math.abs(limit.spare));
  return `${where}${amount} ${limit.spare < 0 ? 'out' : 'spare'}`;
};

/** An end of a limit: as many decimals as it needs, no noughts behind. */
const limitText = ({ of }: Pick<JudgedLimit, 'of'>, value: number, units: ShownUnits): string => {
  const entry = findReading(of);
  return (entry ? shownReading(entry, units).format(value) : formatShort(value, 2))
    .replace(/(\.\d*?)0+(?=′?$)/, '$1')
    .replace(/\.(?=′?$)/, '');
};

const DIAMOND = 'M0 3.5l4.5 4.5-4.5 4.5-4.5-4.5z';
const UPPER_HALF = 'M0 3.5l4.5 4.5h-9z';
const LOWER_HALF = 'M0 12.5l4.5-4.5h-9z';

/** Where the compared setup stands: a diamond; its halves where its wheels part, the left above the bar like the left's own. */
export const comparedMarks = ({ left, right }: JudgedLimit['values']): readonly { value: number; d: string }[] => {
  if (left === right || right === null) return left === null ? [] : [{ value: left, d: DIAMOND }];
  if (left === null) return [{ value: right, d: DIAMOND }];
  return [
    { value: left, d: UPPER_HALF },
    { value: right, d: LOWER_HALF },
  ];
};

const Bar = ({ limit, compared }: LimitPair) => {
  const { left, right } = limit.values;
  const moved = useBench(({ position }) => isMoved(position));
  const others = compared ? comparedMarks(compared.values) : [];
  const units = useUnits();
  const endText = (value: number): string => limitText(limit, value, units);
  return (
    <div
      className={`limitbar ${limit.verdict}`}
      title={`Limit, judged where the setup stands${limit.why ? `: ${limit.why}` : ''}`}
    >
      <span>
        {limit.difference && 'L − R '}
        {limit.min === null ? '' : endText(limit.min)}
      </span>
      {limit.min !== null && limit.max !== null ? (
        <svg aria-hidden="true">
          <line className="bar" x1="0" x2="100%" y1="8" y2="8" />
          <line className="end" x1="0" x2="0" y1="4" y2="12" />
          <line className="end" x1="100%" x2="100%" y1="4" y2="12" />
          {others.map(({ value, d }) => (
            <Pointer key={d} share={shareOf(limit, value)} kind="compared" d={d} />
          ))}
          {left !== null && <Pointer share={shareOf(limit, left)} kind="left" d="M0 7l-4-7h8z" />}
          {right !== null && <Pointer share={shareOf(limit, right)} kind="right" d="M0 9l-4 7h8z" />}
        </svg>
      ) : (
        <span>{limit.min === null ? 'at most' : 'at least'}</span>
      )}
      <span>
        {limit.max === null ? '' : endText(limit.max)} <span className="spare">{spareWords(limit, moved, units)}</span>
      </span>
    </div>
  );
};

/** A limit with the same one of the compared setup. */
export interface LimitPair {
  readonly limit: JudgedLimit;
  readonly compared: JudgedLimit | undefined;
}

/** The limits of one reading under its line: the range, where left, right and the compared setup stand in it, what is spare. */
export const LimitBars = ({ limits, columns }: { readonly limits: readonly LimitPair[]; readonly columns: number }) =>
  limits.map((pair, index) => (
    <tr key={index} className="limit">
      <td colSpan={columns}>
        <Bar {...pair} />
      </td>
    </tr>
  ));
