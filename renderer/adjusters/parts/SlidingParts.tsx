import type { PerchDocument, SlideDocument, TurnbuckleDocument } from '../../../geometry/index';
import { shimsFor } from '../fitterWords';
import { hexagon, DialMarks, Rule } from './marks';

const clampTo = (value: number, most: number): number => Math.max(-most, Math.min(most, value));

/** A plate that slides under its four studs, seen from above, outboard to the right. */
export const TopPlatePart = ({ adjuster, value, mm }: { adjuster: SlideDocument; value: number; mm: number }) => {
  const widest = Math.max(Math.abs(adjuster.range[0]), Math.abs(adjuster.range[1])) * mm;
  const scale = Math.min(1.5, 15 / Math.max(widest, 1e-6));
  const along = adjuster.along === 'spindle' || Math.abs(adjuster.along[1]) >= Math.abs(adjuster.along[0]);
  const sign = adjuster.along !== 'spindle' && (along ? adjuster.along[1] : -adjuster.along[0]) < 0 ? -1 : 1;
  const shift = clampTo(value * mm * scale * sign, 16);
  return (
    <g transform={along ? undefined : 'rotate(90 60 60)'}>
      <rect className="body" x="6" y="16" width="108" height="88" rx="4" />
      <circle className="hole" cx="60" cy="60" r="34" />
      <Rule middle={60} pitch={Math.max(1.5, scale)} count={31} base={16} long={-8} short={-4} />
      <g transform={`translate(${60 + shift} 60)`}>
        <rect className="face" x="-40" y="-36" width="80" height="72" rx="6" />
        <rect className="hole" x="-34" y="-30.5" width="68" height="9" rx="4.5" />
        <rect className="hole" x="-34" y="21.5" width="68" height="9" rx="4.5" />
        <circle className="dark" r="17" />
        <circle className="face" r="11" />
        <circle className="hole" r="5" />
        <path className="scribed" d="M-22 0h44M0-22v44" />
        <path className="index" d="M0-44l-4.5 8h9z" />
      </g>
      {[
        [44, 34],
        [76, 34],
        [44, 86],
        [76, 86],
      ].map(([x, y]) => (
        <g key={`${x},${y}`} transform={`translate(${x} ${y})`}>
          <circle className="nut" r="6" />
          <path className="hole" d={hexagon(3.6)} />
        </g>
      ))}
    </g>
  );
};

/** A ball joint under its bracket with the shims that are between them. */
export const ShimStackPart = ({ adjuster, value, mm }: { adjuster: SlideDocument; value: number; mm: number }) => {
  const widest = Math.max(Math.abs(adjuster.range[0]), Math.abs(adjuster.range[1])) * mm;
  const scale = Math.min(4, 30 / Math.max(widest, 1e-6));
  const height = Math.abs(value) * mm * scale;
  const stock = adjuster.shims ?? [adjuster.step];
  const shims = shimsFor(value, stock) ?? [Math.abs(value)];
  let top = 30;
  return (
    <>
      <rect className="body" x="14" y="6" width="92" height="24" rx="2" />
      {shims.map((shim, index) => {
        const thickness = shim * mm * scale;
        const y = top;
        top += thickness;
        return <rect key={index} className={index % 2 === 0 ? 'face' : 'dark'} x="30" y={y} width="60" height={thickness} />;
      })}
      <g transform={`translate(0 ${30 + height})`}>
        <path className="face" d="M34 0h52v7h-52z" />
        <circle className="dark" cx="60" cy="30" r="25" />
        <circle className="face" cx="60" cy="30" r="16" />
        <path className="scribed" d="M46 30h28M60 16v28" />
      </g>
      <rect className="nut" x="56" y="0" width="8" height="30" />
      <rect className="nut" x="50" y="0" width="20" height="6" />
      <Rule middle={60} pitch={Math.max(2, scale)} count={21} base={112} long={-6} short={-3} upright />
      <path className="index" d={`M105 ${30 + height}l-8-4v8z`} />
    </>
  );
};

const End = () => (
  <>
    <rect className="dark" x="18" y="54" width="34" height="12" />
    <path className="scribed" d="M19 54l2.4 12M23 54l2.4 12M27 54l2.4 12M31 54l2.4 12" />
    <circle className="face" cx="10" cy="60" r="11" />
    <circle className="hole" cx="10" cy="60" r="5" />
    <rect className="nut" x="34" y="51" width="5" height="18" />
  </>
);

/** A sleeve with opposite threads: the ends come out or go in, and the sleeve's hexagon is seen on its end. */
export const TurnbucklePart = ({ adjuster, value, mm }: { adjuster: TurnbuckleDocument; value: number; mm: number }) => {
  const apart = clampTo(0.8 * adjuster.perTurn * mm * value, 9);
  const [left, right] = [10 - apart, 110 + apart];
  return (
    <>
      <g transform={`translate(${-apart} 0)`}>
        <End />
      </g>
      <g transform={`translate(${apart} 0) translate(120 0) scale(-1 1)`}>
        <End />
      </g>
      <rect className="face" x="40" y="46" width="40" height="28" rx="2" />
      <path className="scribed" d="M40 53h40M40 67h40" />
      <circle className="body" cx="60" cy="98" r="15" />
      <DialMarks cx={60} cy={98} inner={18.5} outer={15} every={45} />
      <g transform={`translate(60 98) rotate(${360 * value})`}>
        <path className="face" d={hexagon(11)} />
        <path className="index" d="M0-14.500l-3.5 7h7z" />
      </g>
      <path className="scribed" d={`M${left} 22v16M${right} 22v16`} strokeDasharray="2 2" />
      <path className="scribed" d={`M${left} 28H${right}`} />
      <path className="index" d={`M${left} 28l6-3v6zM${right} 28l-6-3v6z`} />
    </>
  );
};

/** A spring's ring on its thread, with the coils that stand on it. */
export const PerchPart = ({ adjuster, value, mm }: { adjuster: PerchDocument; value: number; mm: number }) => {
  const widest = Math.max(Math.abs(adjuster.range[0]), Math.abs(adjuster.range[1])) * adjuster.perTurn * mm;
  const scale = Math.min(1.6, 26 / Math.max(widest, 1e-6));
  const rise = clampTo(scale * adjuster.perTurn * mm * value, 34);
  return (
    <>
      <rect className="body" x="44" y="2" width="32" height="116" rx="2" />
      {Array.from({ length: 19 }, (_, index) => (
        <path key={index} className="scribed" d={`M44 ${8 + 6 * index}l32-3`} />
      ))}
      <g transform={`translate(0 ${72 - rise})`}>
        <rect className="dark" x="22" y="-3" width="76" height="6" rx="1" />
        <rect className="face" x="30" y="3" width="60" height="15" rx="1" />
        {[35, 47, 59, 71, 83].map((x) => (
          <rect key={x} className="hole" x={x} y="6" width="5" height="12" />
        ))}
        <rect className="dark" x="34" y="22" width="52" height="9" rx="1" />
        <path className="coil" d="M26-12C50-2 80-18 95-20" />
        <path className="coil" d="M26-32C50-22 80-38 95-40" />
        <path className="index" d="M99 0l9-4.500v9z" />
      </g>
      <Rule middle={72} pitch={Math.max(1.6, scale)} count={25} base={118} long={-8} short={-4} upright />
    </>
  );
};
