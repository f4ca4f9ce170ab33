import { formatShort } from '../../units/format';
import { shownReading } from '../../units/shownQuantity';
import { useUnits } from '../../look/units';
import type { ReadingEntry } from '../../../geometry/index';
import { sparkPoints } from './sparkPoints';
import type { Stretch } from './stretches';

interface SparklineProps {
  readonly stretch: Stretch;
  readonly entry: ReadingEntry;
  readonly width: number;
  readonly height: number;
}

/** A wanted reading over its stretch, in the band that is wanted; positions that miss are dotted in the out colour. */
export const Sparkline = ({ stretch, entry, width, height }: SparklineProps) => {
  const units = useUnits();
  const shown = shownReading(entry, units);
  const { band, zero, lines } = sparkPoints(stretch, width, height);
  const [first = 0, last = 0] = [stretch.inputs[0], stretch.inputs.at(-1)];
  const missed = lines.reduce((sum, line) => sum + line.points.filter((point) => point.isMissed).length, 0);
  const ends = stretch.lines.map(({ values }) => `${shown.format(values[0] ?? NaN)} to ${shown.format(values.at(-1) ?? NaN)}`);
  const words = `${entry.name} from ${formatShort(first)} to ${formatShort(last)}: ${ends.join(' and ')}; ${missed} of ${stretch.inputs.length * lines.length} positions miss`;
  return (
    <svg className="sparkline" width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
      {band && <rect className="band" x="1" y={band.top} width={width - 2} height={Math.max(1, band.height)} />}
      {zero !== null && <path className="axis" d={`M${zero} 2V${height - 2}`} />}
      {lines.map(({ side, points }) => (
        <g key={side} className={side}>
          <path className="course" d={`M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`} />
          {points.map(({ x, y, isMissed }, index) => (
            <circle key={index} className={isMissed ? 'missed' : 'within'} cx={x} cy={y} r={isMissed ? 3 : 2} />
          ))}
        </g>
      ))}
    </svg>
  );
};
