import { formatSigned } from '../../format/format';
import type { CurvePlot, CurvesSection, SheetCurve } from '../sheet';
import { widthOf } from '../typeface/typeface';
import { baseline, column, lineHeight, NAME, SOFT, type Block, type Flow } from './block';
import type { Density } from './density';
import { headOf } from './heading';
import { boxAt, lineAt, polyline, textAt, type Primitive } from './primitives';

const COLUMNS = 4;
const BETWEEN = 12;
const FRAME = 44;
/** Between the frame and the numbers beside it. */
const GAP = 3;

/** How the lines differ without colours: as everywhere in the program left is solid, right dashed, what is compared dotted. */
const LINES: Readonly<Record<SheetCurve['of'], { readonly width: number; readonly dash: readonly number[] | null }>> = {
  left: { width: 1.2, dash: null },
  both: { width: 1.2, dash: null },
  right: { width: 1.2, dash: [5, 2.6] },
  was: { width: 1.1, dash: [0.6, 2.4] },
};

/** Ends of what is drawn: all values, at least a few times what can be read. */
const boundsOf = ({ lowest, highest, span }: CurvePlot): readonly [number, number] => {
  const [low, high] = [lowest.value, highest.value];
  const room = Math.max(span - (high - low), 0) / 2;
  return [low - room, high + room];
};

/** Numbers under each other beside the frame, apart enough to be read. */
const numbers = (
  ends: readonly { readonly said: string; readonly at: number }[],
): readonly { readonly said: string; readonly at: number }[] => {
  const [above, below] = ends;
  if (!above || !below) return ends;
  const lift = Math.max(0, lineHeight(SOFT) - (below.at - above.at)) / 2;
  return [
    { ...above, at: above.at - lift },
    { ...below, at: below.at + lift },
  ];
};

const plotBlock = (plot: CurvePlot, width: number): Block => {
  const name = column([[plot.unit === '' ? plot.name : `${plot.name}, ${plot.unit}`, NAME]], width);
  const [low, high] = boundsOf(plot);
  // ends that are read the same are one number, in the middle
  const ends = plot.lowest.said === plot.highest.said ? [plot.lowest] : [plot.highest, plot.lowest];
  const beside = Math.max(...ends.map(({ said: text }) => widthOf(text, SOFT.size, SOFT.weight))) + GAP;
  const first = plot.travels[0] ?? 0;
  const last = plot.travels.at(-1) ?? 0;
  const height = name.height + FRAME + lineHeight(SOFT) + 5;
  return {
    height,
    draw: (x, y) => {
      const [left, top] = [x + beside, y + name.height + 3];
      const wide = width - beside - 1;
      const acrossOf = (travel: number): number => left + (wide * (travel - first)) / (last - first);
      const downOf = (value: number): number => top + 3 + ((FRAME - 6) * (high - value)) / (high - low);
      const under = baseline(top + FRAME + 1, SOFT);
      const end = `${formatSigned(last, 0)} ${plot.travelUnit}`;
      const drawn: Primitive[] = [
        ...name.draw(x, y),
        boxAt(left, top, wide, FRAME, { stroke: 'line', line: 0.6 }),
        lineAt(acrossOf(0), top, acrossOf(0), top + FRAME, 0.6, 'line'),
        ...(low < 0 && high > 0 ? [lineAt(left, downOf(0), left + wide, downOf(0), 0.6, 'line')] : []),
        ...numbers(ends.map(({ value, said }) => ({ said, at: downOf(value) }))).map(({ said, at }) =>
          textAt(said, left - GAP, at + SOFT.size * 0.35, SOFT, 'end'),
        ),
        textAt(formatSigned(first, 0), left, under, SOFT),
        textAt('0', acrossOf(0), under, SOFT, 'middle'),
        textAt(end, left + wide, under, SOFT, 'end'),
      ];
      for (const { of, values } of plot.curves)
        drawn.push(
          polyline(
            values.map(({ value }, index) => [acrossOf(plot.travels[index] ?? 0), downOf(value)]),
            LINES[of],
          ),
        );
      return drawn;
    },
  };
};

/** Small plots beside each other, four a row. */
export const curvesFlow = ({ heading, note, plots }: CurvesSection, width: number, density: Density): Flow => {
  const each = (width - BETWEEN * (COLUMNS - 1)) / COLUMNS;
  const rows: Block[] = [];
  for (let at = 0; at < plots.length; at += COLUMNS) {
    const cells = plots.slice(at, at + COLUMNS).map((plot) => plotBlock(plot, each));
    rows.push({
      height: Math.max(...cells.map((cell) => cell.height)) + 2,
      draw: (x, y) => cells.flatMap((cell, index) => cell.draw(x + index * (each + BETWEEN), y + 2)),
    });
  }
  return {
    head: headOf(heading, note, width, null, density),
    continued: headOf(`${heading}, continued`, '', width, null, density),
    rows,
  };
};
