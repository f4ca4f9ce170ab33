import {
  toDegrees,
  toRadians,
  type ClampEccentricDocument,
  type EccentricBoltDocument,
  type OffsetBushingDocument,
} from '../../../geometry/index';
import { clockSeen } from '../clockWords';
import { DialMarks, hexagon, Rule } from './marks';

/** Drawn size of a displacement: to scale, and never more than the part has room for. */
const scaleFor = (mm: number, room: number, most: number): number => Math.min(most, room / Math.max(mm, 1e-6));

/** A cam bolt between its fences, seen along the bolt: it turns about the bolt, which slides in its slot. */
export const EccentricBoltPart = ({ adjuster, value, mm }: { adjuster: EccentricBoltDocument; value: number; mm: number }) => {
  const scale = scaleFor(adjuster.throw * mm, 14, 2.2);
  const reach = scale * adjuster.throw * mm;
  const at = 60 + reach * Math.sin(toRadians(value));
  return (
    <>
      <rect className="body" x="4" y="12" width="112" height="96" rx="2" />
      <rect className="hole" x={52 - reach} y="51" width={16 + 2 * reach} height="18" rx="9" />
      <rect className="dark" x="17" y="12" width="8" height="96" />
      <rect className="dark" x="95" y="12" width="8" height="96" />
      <g transform={`translate(${at} 60) rotate(${value})`}>
        <circle className="face" cy={reach} r={33 - Math.max(0, reach - 11)} />
        <DialMarks cx={0} cy={reach} inner={24} outer={32 - Math.max(0, reach - 11)} every={adjuster.mark} from={-90} to={90} />
        <path className="nut" d={hexagon(12)} />
        <circle className="dark" r="7" />
        <path className="scribed" d="M0-4V4M-4 0H4" />
      </g>
      <path className="index" d="M60 10l-5-8h10z" />
      <Rule middle={60} pitch={scale} count={11} base={113} long={-9} short={-5} />
      <path className="index" d={`M${at} 103l-4-7h8z`} />
    </>
  );
};

/** A bushing with its hole off centre, in the eye of the arm, with the clock that the fitter reads. */
export const OffsetBushingPart = ({
  adjuster,
  value,
  mm,
  side,
}: {
  adjuster: OffsetBushingDocument;
  value: number | null;
  mm: number;
  side: 'left' | 'right';
}) => {
  const scale = scaleFor(adjuster.offset * mm, 14, 2.2);
  const offset = value === null ? 0 : scale * adjuster.offset * mm;
  const seen = clockSeen(value ?? 0, adjuster.axis, adjuster.seenFrom, side);
  return (
    <>
      <circle className="body" cx="60" cy="60" r="45" />
      <circle className="hole" cx="60" cy="60" r="37" />
      <DialMarks cx={60} cy={60} inner={51} outer={45.5} every={adjuster.index} />
      <text className="numeral" x="60" y="8.5" textAnchor="middle">
        12
      </text>
      <text className="numeral" x="115" y="64.5" textAnchor="middle">
        3
      </text>
      <text className="numeral" x="60" y="120" textAnchor="middle">
        6
      </text>
      <text className="numeral" x="5" y="64.5" textAnchor="middle">
        9
      </text>
      <g transform={`rotate(${seen} 60 60)`}>
        <circle className="face" cx="60" cy="60" r="36" />
        <circle className="dark" cx="60" cy={60 - offset} r="20" />
        <circle className="hole" cx="60" cy={60 - offset} r="13" />
        <path className="scribed" d={`M60 ${43 - offset}v34M43 ${60 - offset}h34`} />
        {value !== null && <path className="index" d="M60 14.500l-5 9h10z" />}
      </g>
      <path className="centre" d="M54 60h12M60 54v12" />
    </>
  );
};

const asin = (sine: number): number => toDegrees(Math.asin(Math.max(-1, Math.min(1, sine))));

/** The strut's bracket: a plain bolt above, a cam bolt below, and the knuckle that turns about the upper one. */
export const ClampEccentricPart = ({
  adjuster,
  value,
  mm,
  pivotToBolt,
}: {
  adjuster: ClampEccentricDocument;
  value: number;
  mm: number;
  pivotToBolt: number | undefined;
}) => {
  const tilt = pivotToBolt ? asin((adjuster.throw * Math.sin(toRadians(value))) / pivotToBolt) : 0;
  const cam = Math.min(3.5, adjuster.throw * mm * 1.15);
  return (
    <>
      <rect className="body" x="12" y="0" width="30" height="120" />
      <path className="scribed" d="M27 0v120" strokeDasharray="9 3 2 3" />
      <rect className="dark" x="38" y="14" width="44" height="92" rx="3" />
      <g transform={`rotate(${-tilt} 62 32)`}>
        <path className="face" d="M52 20h18c6 0 10 4 10 10v40l34 14v22l-44-6c-8-1-18-4-18-14z" />
        <rect className="hole" x="53" y="82" width="18" height="14" rx="7" />
      </g>
      <circle className="nut" cx="62" cy="32" r="11" />
      <g transform="translate(62 32)">
        <path className="face" d={hexagon(7)} />
      </g>
      <g transform={`translate(62 88) rotate(${value})`}>
        <circle className="face" cy={cam} r="19" />
        <DialMarks cx={0} cy={cam} inner={12} outer={18} every={adjuster.mark} from={-90} to={90} />
        <path className="nut" d={hexagon(8.5)} />
      </g>
      <path className="index" d="M62 68.500l-4-7h8z" />
    </>
  );
};
