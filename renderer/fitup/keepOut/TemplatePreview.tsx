import { useEffect, useMemo, useRef, useState } from 'react';
import { axisLine, offWords, seatNames, type Outline, type PaperBox, type TemplateDrawing } from '../../../geometry/index';
import { formatNumber } from '../../units/format';
import type { TemplateSide } from '../../compute/fitup/fitUpOrder';

type Drawn = Extract<TemplateSide, { readonly drawing: unknown }>;
type Point = readonly [number, number];

const LETTER_PX = 6.4;
const NAME_PX = 15;
const EDGE_PX = 26;
const BAR_MM = 100;
const CROSS_PX = 5;
const ARROW_PX = 22;

/** The box around the section, and around the sheets that it is on [mm]. */
const boxOf = ({ drawing, grid }: Drawn): PaperBox => {
  const corners: Point[] = drawing.outlines.flatMap(({ points }) => [...points]);
  if (!('fault' in grid)) corners.push(...grid.tiles.flatMap(({ min, max }) => [min, max]));
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const least = (all: readonly number[]): number => all.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (all: readonly number[]): number => all.reduce((a, b) => Math.max(a, b), -Infinity);
  return { min: [least(xs), least(ys)], max: [most(xs), most(ys)] };
};

const pathOf = (outlines: readonly Outline[], at: (point: Point) => Point): string =>
  outlines
    .map(
      ({ points }) =>
        `M${points
          .map((point) =>
            at(point)
              .map((value) => value.toFixed(1))
              .join(' '),
          )
          .join('L')}Z`,
    )
    .join('');

/** Width and height of a section, in words that are read. */
const sizeOf = ({ outlines }: TemplateDrawing): string => {
  const all = outlines.flatMap(({ points }) => points);
  const span = (i: 0 | 1): number =>
    all.reduce((most, point) => Math.max(most, point[i]), -Infinity) -
    all.reduce((least, point) => Math.min(least, point[i]), Infinity);
  return `${formatNumber(span(0), 0)} × ${formatNumber(span(1), 0)} mm`;
};

/** One side's section to the scale of all: outlines, points and bolts by name, its sheets, a bar of 100 mm. */
const SideDrawing = ({
  one,
  scale,
  width,
  height,
}: {
  readonly one: Drawn;
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}) => {
  const { drawing, grid, side } = one;
  const placed = useMemo(() => {
    const box = boxOf(one);
    const middle: Point = [0.5 * (box.min[0] + box.max[0]), 0.5 * (box.min[1] + box.max[1])];
    const at = ([x, y]: Point): Point => [0.5 * width + scale * (x - middle[0]), 0.5 * height - scale * (y - middle[1])];
    const isIn = ([x, y]: Point): boolean => x >= 0 && x <= width && y >= 0 && y <= height;
    const points = drawing.points.map((point) => ({ ...point, px: at(point.at) })).filter(({ px }) => isIn(px));
    const axes = drawing.axes.flatMap((axis) => {
      const ends = axisLine(axis);
      return ends === null ? [] : [[at(ends[0]), at(ends[1])] as const];
    });
    const seats = seatNames(
      points.map(({ name, px }) => ({ at: px, width: LETTER_PX * name.length + 4, height: NAME_PX })),
      {
        area: { min: [2, 22], max: [width - 2, height - EDGE_PX] },
        marks: [
          ...points.map(({ px: [x, y] }) => ({ min: [x - CROSS_PX, y - CROSS_PX], max: [x + CROSS_PX, y + CROSS_PX] }) as const),
          { min: [width - 96, height - 100], max: [width, height] },
        ],
        lines: axes,
        outlines: [],
      },
    );
    const tiles =
      'fault' in grid
        ? []
        : grid.tiles.map(({ row, column, min, max }) => ({
            key: `${row} ${column}`,
            from: at([min[0], max[1]]),
            to: at([max[0], min[1]]),
          }));
    return { at, points, axes, seats, tiles, d: pathOf(drawing.outlines, at) };
  }, [one, drawing, grid, scale, width, height]);
  const { points, axes, seats, tiles, d } = placed;
  const heart: Point = [width - 52, height - 58];
  const bar = BAR_MM * scale;
  const sheets =
    'fault' in grid ? `no paper: ${grid.message}` : `${grid.tiles.length} ${grid.tiles.length === 1 ? 'sheet' : 'sheets'}`;
  const outlines = drawing.outlines.filter(({ isHole }) => !isHole).length;
  const words = `Section on the ${side} side, ${sizeOf(drawing)}, ${outlines} ${outlines === 1 ? 'outline' : 'outlines'}, ${sheets}. ${points.map(({ name, off }) => `${name} ${offWords(off)}`).join(', ')}`;
  return (
    <svg className="templateside" width={width} height={height} role="img" aria-label={words}>
      {tiles.map(({ key, from, to }) => (
        <rect key={key} className="templatetile" x={from[0]} y={from[1]} width={to[0] - from[0]} height={to[1] - from[1]} />
      ))}
      <path className="templateswept" d={d} fillRule="evenodd" />
      {axes.map(([from, to], i) => (
        <path key={i} className="templatebolt" d={`M${from.join(' ')}L${to.join(' ')}`} />
      ))}
      {points.map(({ name, px: [x, y], off }, i) => {
        const seat = seats[i];
        return (
          <g key={name}>
            <title>{`${name}, ${offWords(off)}`}</title>
            <path className="templatepoint" d={`M${x - CROSS_PX} ${y}h${2 * CROSS_PX}M${x} ${y - CROSS_PX}v${2 * CROSS_PX}`} />
            {seat?.leader && <path className="templateleader" d={`M${seat.leader[0].join(' ')}L${seat.leader[1].join(' ')}`} />}
            {seat && (
              <text className="templatename" x={seat.box.min[0] + 2} y={seat.box.max[1] - 3}>
                {name}
              </text>
            )}
          </g>
        );
      })}
      <text className="templatehead" x={8} y={16}>
        {side === 'left' ? 'Left' : 'Right'}, {sizeOf(drawing)}
      </text>
      <path className="templatebar" d={`M8 ${height - 10}h${bar}M8 ${height - 14}v8M${8 + bar} ${height - 14}v8`} />
      <text className="templatename" x={8} y={height - 16}>
        100 mm
      </text>
      {drawing.arrows
        .filter(({ seen }) => seen === 'along')
        .map(({ direction, right, up }) => {
          const tip: Point = [heart[0] + ARROW_PX * right, heart[1] - ARROW_PX * up];
          return (
            <g key={direction}>
              <path className="templatebar" d={`M${heart.join(' ')}L${tip.join(' ')}`} />
              <text
                className="templatename"
                x={tip[0] + 4 * right}
                y={tip[1] - 6 * up + 4}
                textAnchor={right > 0.5 ? 'start' : right < -0.5 ? 'end' : 'middle'}
              >
                {direction === 'OUTBOARD' ? 'OUT' : direction}
              </text>
            </g>
          );
        })}
    </svg>
  );
};

/** The sections as they go to paper, all to one scale; the sheets are the thin frames. */
export const TemplatePreview = ({ sides }: { readonly sides: readonly TemplateSide[] }) => {
  const host = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<readonly [number, number]>([0, 0]);
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const measure = () => setSize([element.clientWidth, element.clientHeight]);
    const sized = new ResizeObserver(measure);
    sized.observe(element);
    measure();
    return () => sized.disconnect();
  }, []);
  const drawn = sides.filter((one): one is Drawn => 'drawing' in one);
  const width = Math.floor(size[0] / Math.max(1, drawn.length));
  const scale = drawn
    .map((one) => {
      const { min, max } = boxOf(one);
      return Math.min((width - 2 * EDGE_PX) / (max[0] - min[0]), (size[1] - 2 * EDGE_PX) / (max[1] - min[1]));
    })
    .reduce((least, one) => Math.min(least, one), Infinity);
  return (
    <div ref={host} className="templatepreview" role="group" aria-label="Template, to scale">
      {width > 60 &&
        scale > 0 &&
        Number.isFinite(scale) &&
        drawn.map((one) => <SideDrawing key={one.side} one={one} scale={scale} width={width} height={size[1]} />)}
    </div>
  );
};
