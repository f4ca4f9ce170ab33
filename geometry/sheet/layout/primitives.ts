import { flatten, scaledTo, type PathCommand } from '../../drawing/flatten';
import { PART_SIZE } from '../../drawing/partDrawing';
import type { Shape, ShapeRole } from '../../drawing/shape';
import { inTypeface, widthOf, type Weight } from '../typeface/typeface';

/** Greys of the sheet; a printer without colours prints them all. */
export type Ink = 'ink' | 'soft' | 'line' | 'mid' | 'pale' | 'paper';

/** What the greys are on paper and on the screen. */
export const INKS: Readonly<Record<Ink, string>> = {
  ink: '#12171a',
  soft: '#343d42',
  line: '#8d9898',
  mid: '#bcc4c2',
  pale: '#e3e7e5',
  paper: '#ffffff',
};

/** What a page is made of. Points (1/72 in) from the page's top left corner, y down. */
export type Primitive = TextPrimitive | PathPrimitive;

export interface TextPrimitive {
  readonly kind: 'text';
  readonly text: string;
  /** where the text begins, and its baseline */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: Weight;
  readonly ink: Ink;
}

export interface PathPrimitive {
  readonly kind: 'path';
  readonly commands: readonly PathCommand[];
  readonly fill: Ink | null;
  readonly stroke: Ink | null;
  readonly width: number;
  readonly dash: readonly number[] | null;
  readonly isRound: boolean;
}

export interface TextStyle {
  readonly size: number;
  readonly weight: Weight;
  readonly ink: Ink;
}

const round = (value: number): number => Math.round(value * 100) / 100 || 0;

/** A line of text that begins, ends or has its middle at x. */
export const textAt = (
  text: string,
  x: number,
  y: number,
  style: TextStyle,
  anchor: 'start' | 'middle' | 'end' = 'start',
): TextPrimitive => {
  const said = inTypeface(text);
  const width = anchor === 'start' ? 0 : widthOf(said, style.size, style.weight);
  return { kind: 'text', text: said, x: round(x - (anchor === 'middle' ? width / 2 : width)), y: round(y), ...style };
};

const path = (part: Partial<PathPrimitive> & Pick<PathPrimitive, 'commands'>): PathPrimitive => ({
  kind: 'path',
  fill: null,
  stroke: null,
  width: 0,
  dash: null,
  isRound: false,
  ...part,
});

export const lineAt = (x1: number, y1: number, x2: number, y2: number, width: number, ink: Ink): PathPrimitive =>
  path({
    commands: [
      ['M', round(x1), round(y1)],
      ['L', round(x2), round(y2)],
    ],
    stroke: ink,
    width,
  });

/** A line through points, with round ends. */
export const polyline = (
  points: readonly (readonly [number, number])[],
  { width, dash }: { readonly width: number; readonly dash: readonly number[] | null },
): PathPrimitive =>
  path({
    commands: points.map(([x, y], index) => [index === 0 ? 'M' : 'L', round(x), round(y)]),
    stroke: 'ink',
    width,
    dash,
    isRound: true,
  });

/** A rectangle: a box to tick or to write in, or a bar. */
export const boxAt = (
  x: number,
  y: number,
  width: number,
  height: number,
  { fill = null, stroke = null, line = 0 }: { readonly fill?: Ink | null; readonly stroke?: Ink | null; readonly line?: number },
): PathPrimitive =>
  path({
    commands: [
      ['M', round(x), round(y)],
      ['L', round(x + width), round(y)],
      ['L', round(x + width), round(y + height)],
      ['L', round(x), round(y + height)],
      ['Z'],
    ],
    fill,
    stroke,
    width: line,
  });

/** How each surface and line of a drawing is inked; widths in units of the drawing. */
const ROLES: Readonly<Record<ShapeRole, Pick<PathPrimitive, 'fill' | 'stroke' | 'width' | 'isRound'>>> = {
  body: { fill: 'pale', stroke: 'ink', width: 1.6, isRound: false },
  hole: { fill: 'paper', stroke: 'ink', width: 1.6, isRound: false },
  face: { fill: 'paper', stroke: 'ink', width: 1.8, isRound: false },
  dark: { fill: 'mid', stroke: 'ink', width: 1.4, isRound: false },
  nut: { fill: 'mid', stroke: 'ink', width: 1.6, isRound: false },
  scribed: { fill: null, stroke: 'ink', width: 1.2, isRound: false },
  centre: { fill: null, stroke: 'ink', width: 1.2, isRound: false },
  index: { fill: 'ink', stroke: null, width: 0, isRound: false },
  coil: { fill: null, stroke: 'mid', width: 7, isRound: true },
};

/** Marks stick out of the square by a little. */
const OVERHANG = 3;

/** A drawing of a part in a square with its corner at x, y. */
export const drawingAt = (shapes: readonly Shape[], x: number, y: number, size: number): readonly PathPrimitive[] => {
  const scale = size / (PART_SIZE + 2 * OVERHANG);
  return flatten(shapes, scaledTo(scale, x + OVERHANG * scale, y + OVERHANG * scale)).map(({ role, commands, dash }) => {
    const { width, ...ink } = ROLES[role];
    return path({ commands, ...ink, width: round(width * scale), dash: dash?.map((length) => round(length * scale)) ?? null });
  });
};

/** Left is a filled disc, right a hollow square: never by colour alone, and so on everything of the program. */
export const sideMark = (side: 'left' | 'right', x: number, baseline: number): readonly PathPrimitive[] => {
  const size = 6;
  const top = baseline - size;
  if (side === 'right') return [boxAt(x + 0.6, top + 0.6, size - 1.2, size - 1.2, { stroke: 'ink', line: 1.2 })];
  const shapes = flatten([{ kind: 'circle', role: 'index', cx: size / 2, cy: size / 2, r: size / 2 }], scaledTo(1, x, top));
  return shapes.map(({ commands }) => path({ commands, fill: 'ink' }));
};

/** A triangle with a stroke in it: look out. */
export const watchMark = (x: number, baseline: number): readonly PathPrimitive[] => [
  path({
    commands: [
      ['M', round(x + 4), round(baseline - 7)],
      ['L', round(x + 8), round(baseline)],
      ['L', round(x), round(baseline)],
      ['Z'],
    ],
    stroke: 'ink',
    width: 1,
  }),
  lineAt(x + 4, baseline - 4.6, x + 4, baseline - 1.4, 0.9, 'ink'),
];
