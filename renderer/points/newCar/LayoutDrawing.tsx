import type { LayoutName } from '../../state/begunCar';
import { TYPICAL_AXLES } from './typicalAxles';

const KNUCKLE = 5;
const BODY = 7;

/** A layout from the front, drawn from its typical points: y to the right, z up. */
export const LayoutDrawing = ({ layout }: { readonly layout: LayoutName }) => {
  const { points, rods, trailingArm } = TYPICAL_AXLES[layout];
  const at = (name: string): readonly [number, number] => {
    const [, y, z] = points[name] ?? [0, 0, 0];
    return [y - 220, 900 - z];
  };
  const line = (from: string, to: string, className: string) => {
    const [x1, y1] = at(from);
    const [x2, y2] = at(to);
    return <line key={`${from} ${to}`} className={className} x1={x1} y1={y1} x2={x2} y2={y2} />;
  };
  const links: readonly (readonly [string, string])[] = rods
    ? Object.values(rods)
    : [
        ['armFront', 'ballJoint'],
        ['rackEnd', 'tieRodEnd'],
      ];
  const [wheelY, wheelZ] = at('wheelCentre');
  const outer = links.map(([, end]) => at(end)).sort((a, b) => a[1] - b[1]);
  const knuckle = [...outer, ...(rods ? [] : [at('strutFoot')])].map((p) => p.join(',')).join(' ');
  return (
    <svg className="layout" viewBox="0 40 680 900" aria-hidden="true">
      <line className="middle-line" x1="20" y1="60" x2="20" y2="920" />
      <line className="floor" x1="0" y1="900" x2="680" y2="900" />
      <rect className="tyre" x={wheelY - 20} y={wheelZ - 310} width="120" height="620" rx="30" />
      <polyline className="knuckle" points={knuckle} />
      <line className="knuckle" x1={outer[0]?.[0]} y1={wheelZ} x2={wheelY} y2={wheelZ} />
      {!rods && line('strutTop', 'strutFoot', 'strut')}
      {trailingArm && line(trailingArm.pivot, 'wheelCentre', 'blade')}
      {links.map(([inner, end]) => line(inner, end, 'link'))}
      {links.flatMap(([inner, end]) => [
        <circle key={inner} className="inner" cx={at(inner)[0]} cy={at(inner)[1]} r={BODY * 2} />,
        <circle key={end} className="outer" cx={at(end)[0]} cy={at(end)[1]} r={KNUCKLE * 2} />,
      ])}
    </svg>
  );
};
