import { toRadians } from '../core/angle';
import type { Placement, Shape, ShapeRole } from './shape';

/** One stroke of a pen: to a place, along a line, along a Bézier curve, back to the start. Coordinates one after another. */
export type PathCommand =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/** A shape laid where it stands, as strokes alone. */
export interface FlatPath {
  readonly role: ShapeRole;
  readonly commands: readonly PathCommand[];
  /** in drawing units */
  readonly dash: readonly number[] | null;
}

/** x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type Affine = readonly [number, number, number, number, number, number];

export const scaledTo = (scale: number, x: number, y: number): Affine => [scale, 0, 0, scale, x, y];

const after = ([a, b, c, d, e, f]: Affine, [g, h, i, j, k, l]: Affine): Affine => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];

const placement = (step: Placement): Affine => {
  switch (step.kind) {
    case 'move':
      return [1, 0, 0, 1, ...step.by];
    case 'mirror':
      return [-1, 0, 0, 1, 2 * step.about, 0];
    case 'turn': {
      const angle = toRadians(step.degrees);
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const [x, y] = step.about;
      return [cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y];
    }
  }
};

/** Hundredths of a point are finer than any printer. */
const round = (value: number): number => Math.round(value * 100) / 100 || 0;

const at = ([a, b, c, d, e, f]: Affine, x: number, y: number): readonly [number, number] => [
  round(a * x + c * y + e),
  round(b * x + d * y + f),
];

/** Length of a Bézier curve's arms for a quarter of a circle of radius 1. */
const QUARTER = (4 / 3) * (Math.SQRT2 - 1);

/** A rectangle with rounded corners of radii rx and ry; a circle is one without straight sides. */
const rounded = (x: number, y: number, width: number, height: number, rx: number, ry: number, m: Affine): PathCommand[] => {
  const [kx, ky] = [rx * (1 - QUARTER), ry * (1 - QUARTER)];
  const [right, bottom] = [x + width, y + height];
  return [
    ['M', ...at(m, x + rx, y)],
    ['L', ...at(m, right - rx, y)],
    ['C', ...at(m, right - kx, y), ...at(m, right, y + ky), ...at(m, right, y + ry)],
    ['L', ...at(m, right, bottom - ry)],
    ['C', ...at(m, right, bottom - ky), ...at(m, right - kx, bottom), ...at(m, right - rx, bottom)],
    ['L', ...at(m, x + rx, bottom)],
    ['C', ...at(m, x + kx, bottom), ...at(m, x, bottom - ky), ...at(m, x, bottom - ry)],
    ['L', ...at(m, x, y + ry)],
    ['C', ...at(m, x, y + ky), ...at(m, x + kx, y), ...at(m, x + rx, y)],
    ['Z'],
  ];
};

const ring = (cx: number, cy: number, r: number, m: Affine): PathCommand[] =>
  rounded(cx - r, cy - r, 2 * r, 2 * r, r, r, m).filter(([command]) => command !== 'L');

const square = (x: number, y: number, width: number, height: number, m: Affine): PathCommand[] => [
  ['M', ...at(m, x, y)],
  ['L', ...at(m, x + width, y)],
  ['L', ...at(m, x + width, y + height)],
  ['L', ...at(m, x, y + height)],
  ['Z'],
];

const TOKEN = /([MmLlHhVvCcZz])|([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)/g;
const TAKES: Readonly<Record<string, number>> = { m: 2, l: 2, h: 1, v: 1, c: 6, z: 0 };

/** Strokes of a path as SVG writes it: lines and cubic curves, absolute or from where the pen is. */
const strokes = (d: string, m: Affine): PathCommand[] => {
  const commands: PathCommand[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  let letter = '';
  let numbers: number[] = [];
  const take = (): void => {
    const isRelative = letter === letter.toLowerCase();
    const [fromX, fromY] = isRelative ? [x, y] : [0, 0];
    const [p = 0, q = 0, r = 0, s = 0, t = 0, u = 0] = numbers;
    numbers = [];
    switch (letter.toLowerCase()) {
      case 'm':
        [x, y] = [fromX + p, fromY + q];
        [startX, startY] = [x, y];
        commands.push(['M', ...at(m, x, y)]);
        letter = isRelative ? 'l' : 'L';
        return;
      case 'l':
        [x, y] = [fromX + p, fromY + q];
        break;
      case 'h':
        x = fromX + p;
        break;
      case 'v':
        y = fromY + p;
        break;
      case 'c':
        commands.push(['C', ...at(m, fromX + p, fromY + q), ...at(m, fromX + r, fromY + s), ...at(m, fromX + t, fromY + u)]);
        [x, y] = [fromX + t, fromY + u];
        return;
      case 'z':
        [x, y] = [startX, startY];
        commands.push(['Z']);
        return;
    }
    commands.push(['L', ...at(m, x, y)]);
  };
  for (const [, command, number] of d.matchAll(TOKEN)) {
    if (command !== undefined) letter = command;
    else numbers.push(Number(number));
    if (letter !== '' && numbers.length === TAKES[letter.toLowerCase()]) take();
  }
  return commands;
};

const strokesOf = (shape: Exclude<Shape, { kind: 'group' | 'numeral' }>, m: Affine): PathCommand[] => {
  switch (shape.kind) {
    case 'path':
      return strokes(shape.d, m);
    case 'rect': {
      const { x, y, width, height } = shape;
      const radius = Math.min(shape.radius ?? 0, width / 2, height / 2);
      return radius > 0 ? rounded(x, y, width, height, radius, radius, m) : square(x, y, width, height, m);
    }
    case 'circle':
      return ring(shape.cx, shape.cy, shape.r, m);
    case 'line':
      return [
        ['M', ...at(m, ...shape.from)],
        ['L', ...at(m, ...shape.to)],
      ];
  }
};

/**
 * Every shape of a drawing as strokes laid where they stand, groups opened. Numerals are left out: a drawing of a thumb's
 * width has no room for letters that can be read.
 */
export const flatten = (shapes: readonly Shape[], m: Affine): readonly FlatPath[] =>
  shapes.flatMap((shape): readonly FlatPath[] => {
    if (shape.kind === 'numeral') return [];
    if (shape.kind === 'group')
      return flatten(
        shape.shapes,
        shape.place.reduce((sum, step) => after(sum, placement(step)), m),
      );
    return [{ role: shape.role, commands: strokesOf(shape, m), dash: shape.kind === 'path' ? (shape.dash ?? null) : null }];
  });
