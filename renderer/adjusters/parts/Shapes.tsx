import type { Placement, Shape } from '../../../geometry/index';

const placed = (step: Placement): string => {
  switch (step.kind) {
    case 'move':
      return `translate(${step.by[0]} ${step.by[1]})`;
    case 'turn':
      return `rotate(${step.degrees} ${step.about[0]} ${step.about[1]})`;
    case 'mirror':
      return `translate(${2 * step.about} 0) scale(-1 1)`;
  }
};

const Drawn = ({ shape }: { readonly shape: Shape }) => {
  switch (shape.kind) {
    case 'path':
      return <path className={shape.role} d={shape.d} strokeDasharray={shape.dash?.join(' ')} />;
    case 'rect':
      return <rect className={shape.role} x={shape.x} y={shape.y} width={shape.width} height={shape.height} rx={shape.radius} />;
    case 'circle':
      return <circle className={shape.role} cx={shape.cx} cy={shape.cy} r={shape.r} />;
    case 'line':
      return <line className={shape.role} x1={shape.from[0]} y1={shape.from[1]} x2={shape.to[0]} y2={shape.to[1]} />;
    case 'numeral':
      return (
        <text className="numeral" x={shape.x} y={shape.y} textAnchor="middle">
          {shape.text}
        </text>
      );
    case 'group':
      return (
        <g transform={shape.place.map(placed).join(' ')}>
          <Shapes of={shape.shapes} />
        </g>
      );
  }
};

/** A drawing of plain shapes as elements of an SVG; the style sheet colours them by their roles. */
export const Shapes = ({ of }: { readonly of: readonly Shape[] }) =>
  of.map((shape, index) => <Drawn key={index} shape={shape} />);
