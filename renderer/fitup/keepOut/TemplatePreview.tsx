import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { axisLine, HATCHED, seatNames, type Outline, type PaperBox } from '../../../geometry/index';
import { useUnits } from '../../look/units';
import type { TemplateSide } from '../../compute/fitup/fitUpOrder';
import { offRead, sizeRead } from './templateWords';

type Drawn = Extract<TemplateSide, { readonly drawing: unknown }>;
type PaperArrow = Drawn['drawing']['arrows'][number];
type Point = readonly [number, number];

const LETTER_PX = 6.4;
const NAME_PX = 15;
const EDGE_PX = 26;
/** Along the top for what it is, along the bottom for the bar and the arrows: the drawing and its names lie between. */
const HEAD_PX = 40;
const FOOT_PX = 34;
/** The bar in the corner: a round length of the unit that is read. */
const BARS = { mm: { mm: 100, words: '100 mm' }, in: { mm: 101.6, words: '4 in' } } as const;
/** Left and right of it. */
const BAR_PX = 8;
const CROSS_PX = 5;
const ARROW_PX = 9;
/** A capital of the words beside the arrows, and what is free on either side of such a word. */
const CAPITAL_PX = 8;
const WORD_GAP_PX = 4;
const HATCH_PX = 7;

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

interface ArrowSeat {
  readonly arrow: PaperArrow;
  readonly word: string;
  /** the middle of the arrow, where its word begins, and where the next one has its place, from the first */
  readonly middle: number;
  readonly text: number;
  readonly end: number;
}

/** The arrows in the paper side by side, each with its word: whichever way they point, none is on another. */
const arrowSeats = (arrows: readonly PaperArrow[]): readonly ArrowSeat[] =>
  arrows
    .filter(({ seen }) => seen === 'along')
    .reduce<readonly ArrowSeat[]>((seats, arrow) => {
      const from = seats.at(-1)?.end ?? 0;
      const word = arrow.direction === 'OUTBOARD' ? 'OUT' : arrow.direction;
      const text = from + 2 * ARROW_PX + WORD_GAP_PX;
      const end = text + CAPITAL_PX * word.length + 2 * WORD_GAP_PX;
      return [...seats, { arrow, word, middle: from + ARROW_PX, text, end }];
    }, []);

/** A line with two short ones at its end. */
const arrowOf = ([x0, y0]: Point, [x1, y1]: Point): string => {
  const [x, y] = [0.22 * (x1 - x0), 0.22 * (y1 - y0)];
  return `M${x0} ${y0}L${x1} ${y1}M${x1 - x - y} ${y1 - y + x}L${x1} ${y1}L${x1 - x + y} ${y1 - y - x}`;
};

/** One side's section to the scale of all: outlines, points and bolts by name, its sheets, a bar of a round length. */
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
  const units = useUnits();
  const placed = useMemo(() => {
    const box = boxOf(one);
    const middle: Point = [0.5 * (box.min[0] + box.max[0]), 0.5 * (box.min[1] + box.max[1])];
    const heart: Point = [0.5 * width, 0.5 * (HEAD_PX + height - FOOT_PX)];
    const at = ([x, y]: Point): Point => [heart[0] + scale * (x - middle[0]), heart[1] - scale * (y - middle[1])];
    const isIn = ([x, y]: Point): boolean =>
      x >= CROSS_PX && x <= width - CROSS_PX && y >= HEAD_PX + CROSS_PX && y <= height - FOOT_PX - CROSS_PX;
    const points = drawing.points.map((point) => ({ ...point, px: at(point.at) })).filter(({ px }) => isIn(px));
    const axes = drawing.axes.flatMap((axis) => {
      const ends = axisLine(axis);
      return ends === null || !isIn(at(axis.at)) ? [] : [[at(ends[0]), at(ends[1])] as const];
    });
    const seats = seatNames(
      points.map(({ name, px }) => ({ at: px, width: LETTER_PX * name.length + 4, height: NAME_PX })),
      {
        area: { min: [2, HEAD_PX], max: [width - 2, height - FOOT_PX] },
        marks: points.map(
          ({ px: [x, y] }) => ({ min: [x - CROSS_PX, y - CROSS_PX], max: [x + CROSS_PX, y + CROSS_PX] }) as const,
        ),
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
  const hatch = useId();
  const { mm: barMm, words: barWords } = BARS[units.length];
  const bar = barMm * scale;
  const sheets =
    'fault' in grid ? `no paper: ${grid.message}` : `${grid.tiles.length} ${grid.tiles.length === 1 ? 'sheet' : 'sheets'}`;
  // each by itself along the bottom: beside the outline there is no room that is always free
  const legend = arrowSeats(drawing.arrows);
  const legendAt = width - (legend.at(-1)?.end ?? 0);
  const outlines = drawing.outlines.filter(({ isHole }) => !isHole).length;
  const words = `Section on the ${side} side, ${sizeRead(drawing.outlines, units)}, ${outlines} ${outlines === 1 ? 'outline' : 'outlines'}, ${sheets}, ${drawing.seen}. ${HATCHED} ${points.map(({ name, off }) => `${name} ${offRead(off, units)}`).join(', ')}`;
  return (
    <svg className="templateside" width={width} height={height} role="img" aria-label={words}>
      {tiles.map(({ key, from, to }) => (
        <rect key={key} className="templatetile" x={from[0]} y={from[1]} width={to[0] - from[0]} height={to[1] - from[1]} />
      ))}
      <defs>
        <pattern id={hatch} width={HATCH_PX} height={HATCH_PX} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="templatehatch" d={`M0 0V${HATCH_PX}`} />
        </pattern>
      </defs>
      <path className="templateswept" d={d} fillRule="evenodd" fill={`url(#${hatch})`} />
      {axes.map(([from, to], i) => (
        <path key={i} className="templatebolt" d={`M${from.join(' ')}L${to.join(' ')}`} />
      ))}
      {points.map(({ name, px: [x, y], off }, i) => {
        const seat = seats[i];
        return (
          <g key={name}>
            <title>{`${name}, ${offRead(off, units)}`}</title>
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
        {side === 'left' ? 'Left' : 'Right'}, {sizeRead(drawing.outlines, units)},{' '}
        {drawing.seen.replace(/^(seen from where the normal points), .*$/, '$1')}
      </text>
      <text className="templatename" x={8} y={32}>
        {HATCHED}
      </text>
      <path
        className="templatebar"
        d={`M${BAR_PX} ${height - 8}h${bar}M${BAR_PX} ${height - 12}v8M${BAR_PX + bar} ${height - 12}v8`}
      />
      <text className="templatename" x={BAR_PX} y={height - 16}>
        {barWords}
      </text>
      {legend.map(({ arrow: { direction, right, up }, word, middle, text }) => {
        const [x, y] = [legendAt + middle, height - 13];
        const [dx, dy] = [ARROW_PX * right, -ARROW_PX * up];
        return (
          <g key={direction}>
            <path className="templatebar" d={arrowOf([x - dx, y - dy], [x + dx, y + dy])} />
            <text className="templatename" x={legendAt + text} y={y + 4}>
              {word}
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
  const units = useUnits();
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
      const legend = arrowSeats(one.drawing.arrows).at(-1)?.end ?? 0;
      const { min, max } = boxOf(one);
      const [across, upright] = [width - 2 * EDGE_PX, size[1] - HEAD_PX - FOOT_PX - 8];
      // the bar has its place beside the arrows
      return Math.min(
        across / (max[0] - min[0]),
        upright / (max[1] - min[1]),
        (width - legend - 2 * BAR_PX) / BARS[units.length].mm,
      );
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
