import { formatNumber } from '../../units/format';

/** A place on the sheet [mm], x to the right, y down. */
export type SheetPoint = readonly [number, number];

const TEXT = 3.4;
const ARROW = 2.2;
const PAST = 1.5;

const n = (value: number): string => Number(value.toFixed(3)).toString();
const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** What a line is for: each has its own weight and dashes, so that a print in black tells them apart. */
export type Stroke = 'link' | 'wheel' | 'ground' | 'middle' | 'construct' | 'axis' | 'thin';

const STROKES: Readonly<Record<Stroke, string>> = {
  link: 'stroke-width="0.7"',
  wheel: 'stroke-width="0.35"',
  ground: 'stroke-width="0.5"',
  middle: 'stroke-width="0.18" stroke-dasharray="6 1.2 1 1.2"',
  construct: 'stroke-width="0.25" stroke-dasharray="3 1.4"',
  axis: 'stroke-width="0.3" stroke-dasharray="8 1.5 1.5 1.5"',
  thin: 'stroke-width="0.18"',
};

/** A place of words: where their baseline begins, has its middle or ends. */
export interface WordPlace {
  readonly at: SheetPoint;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** Part of a sheet that is drawn where it is, and the lines in it that words keep clear of. */
export interface Drawn {
  readonly svg: string;
  readonly lines: readonly (readonly SheetPoint[])[];
}

/** Words that stand where there is room for them: their places, the best one first, and the point that they name. */
export interface Words {
  readonly text: string;
  readonly places: readonly WordPlace[];
  readonly names: SheetPoint;
}

export type SheetPart = Drawn | Words;

/** Edges on the sheet [mm]. */
export interface SheetBox {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Mean width of a letter, what stands over the baseline and under it, in sizes of the type: whatever face a program has. */
const LETTER = 0.58;
const [ASCENT, DESCENT] = [0.8, 0.24];

const widthOf = (text: string): number => text.length * TEXT * LETTER;

/** The room that words take at a place. */
export const wordsBox = (text: string, { at: [x, y], anchor }: WordPlace): SheetBox => {
  const wide = widthOf(text);
  const x0 = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
  return { x0, x1: x0 + wide, y0: y - ASCENT * TEXT, y1: y + DESCENT * TEXT };
};

const pathSvg = (stroke: Stroke, points: readonly SheetPoint[], closed: '' | 'Z' = ''): string =>
  `<path d="M${points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}${closed}" ${STROKES[stroke]}/>`;

export const path = (stroke: Stroke, points: readonly SheetPoint[], closed: '' | 'Z' = ''): Drawn => ({
  svg: pathSvg(stroke, points, closed),
  lines: [closed === 'Z' ? [...points, ...points.slice(0, 1)] : points],
});

/** Words at a place of their own, as in the head of a sheet. */
export const words = (text: string, [x, y]: SheetPoint, anchor: WordPlace['anchor'] = 'middle', size = TEXT): string =>
  `<text x="${n(x)}" y="${n(y)}" text-anchor="${anchor}" font-size="${n(size)}">${escaped(text)}</text>`;

const around = ([x, y]: SheetPoint, by: number): readonly SheetPoint[] => [
  [x - by, y],
  [x, y - by],
  [x + by, y],
  [x, y + by],
  [x - by, y],
];

export const joint = (at: SheetPoint): Drawn => ({
  svg: `<circle cx="${n(at[0])}" cy="${n(at[1])}" r="0.9" fill="#fff" stroke-width="0.35"/>`,
  lines: [around(at, 0.9)],
});

export const target = ([x, y]: SheetPoint): Drawn => {
  const lines: readonly (readonly SheetPoint[])[] = [
    [
      [x - 3.4, y],
      [x + 3.4, y],
    ],
    [
      [x, y - 3.4],
      [x, y + 3.4],
    ],
  ];
  const circle = `<circle cx="${n(x)}" cy="${n(y)}" r="2" stroke-width="0.35"/>`;
  return { svg: circle + lines.map((line) => pathSvg('thin', line)).join(''), lines };
};

/** What a point is called: over it, else under it, or beside. */
export const named = (text: string, [x, y]: SheetPoint): Words => ({
  text,
  names: [x, y],
  places: [
    { at: [x, y - 5], anchor: 'middle' },
    { at: [x, y + 7.4], anchor: 'middle' },
    { at: [x + 4.6, y + 1.2], anchor: 'start' },
    { at: [x - 4.6, y + 1.2], anchor: 'end' },
    { at: [x + 3, y - 4], anchor: 'start' },
    { at: [x - 3, y - 4], anchor: 'end' },
    { at: [x + 3, y + 6.6], anchor: 'start' },
    { at: [x - 3, y + 6.6], anchor: 'end' },
  ],
});

const head = ([x, y]: SheetPoint, [ux, uy]: SheetPoint): string =>
  `<path d="M${n(x)} ${n(y)}l${n(-ARROW * ux - 0.45 * uy)} ${n(-ARROW * uy + 0.45 * ux)}l${n(0.9 * uy)} ${n(-0.9 * ux)}z" fill="#000" stroke="none"/>`;

/** Room for a figure between the arrows of a dimension [mm]; under it arrows and figure stand outside. */
const roomFor = (text: string): number => widthOf(text) + 2 * ARROW + 2;

/** A length across: its line at `at` down the sheet, led out from both points. @param text - what it is and how long: "track 1,523.4" */
export const across = (a: SheetPoint, b: SheetPoint, at: number, text: string): readonly SheetPart[] => {
  const [left, right] = a[0] <= b[0] ? [a, b] : [b, a];
  const lead = ([x, y]: SheetPoint): readonly SheetPoint[] => [
    [x, y],
    [x, at + (at > y ? PAST : -PAST)],
  ];
  const wide = right[0] - left[0] >= roomFor(text);
  const heads = wide
    ? head([left[0], at], [-1, 0]) + head([right[0], at], [1, 0])
    : head([left[0], at], [1, 0]) + head([right[0], at], [-1, 0]);
  const from = wide ? left[0] : left[0] - 2 * ARROW;
  const to = wide ? right[0] : right[0] + 2 * ARROW;
  const middle = (left[0] + right[0]) / 2;
  const lines = [
    lead(left),
    lead(right),
    [
      [from, at],
      [to, at],
    ] as const,
  ];
  const within: readonly WordPlace[] = [0.5, 0.3, 0.7].flatMap((share) => {
    const x = left[0] + share * (right[0] - left[0]);
    return [at - 1, at + 3.6].map((y): WordPlace => ({ at: [x, y], anchor: 'middle' }));
  });
  const beside: readonly WordPlace[] = [
    { at: [to + 1, at + 1.2], anchor: 'start' },
    { at: [from - 1, at + 1.2], anchor: 'end' },
  ];
  return [
    { svg: lines.map((line) => pathSvg('thin', line)).join('') + heads, lines },
    { text, names: [middle, at], places: wide ? [...within, ...beside] : beside },
  ];
};

/** A height: its line at `at` across the sheet, led out from both points. */
export const upright = (low: SheetPoint, high: SheetPoint, at: number, text: string): readonly SheetPart[] => {
  const lead = ([x, y]: SheetPoint): readonly SheetPoint[] => [
    [x, y],
    [at + (at > x ? PAST : -PAST), y],
  ];
  const [top, foot] = low[1] < high[1] ? [low[1], high[1]] : [high[1], low[1]];
  const long = foot - top >= 2 * ARROW + 2;
  const heads = long ? head([at, top], [0, -1]) + head([at, foot], [0, 1]) : head([at, top], [0, 1]) + head([at, foot], [0, -1]);
  const [from, to] = long ? [top, foot] : [top - 2 * ARROW, foot + 2 * ARROW];
  const lines = [
    lead(low),
    lead(high),
    [
      [at, from],
      [at, to],
    ] as const,
  ];
  const beside: readonly WordPlace[] = [0.5, 0.25, 0.75].flatMap((share) => {
    const y = from + share * (to - from) + 1.2;
    return [
      { at: [at + 1.2, y], anchor: 'start' },
      { at: [at - 1.2, y], anchor: 'end' },
    ] as const;
  });
  const ends: readonly WordPlace[] = [
    { at: [at, from - 2], anchor: 'middle' },
    { at: [at, to + 4], anchor: 'middle' },
  ];
  return [
    { svg: lines.map((line) => pathSvg('thin', line)).join('') + heads, lines },
    { text, names: [at, (top + foot) / 2], places: [...beside, ...ends] },
  ];
};

/** The unit that a drawing is written in. */
export interface SheetUnit {
  readonly name: string;
  /** millimetres in one */
  readonly mm: number;
}

/**
 * A bar of round length that proves the scale after any print.
 * @param scale - millimetres of the car in one of the sheet
 */
export const scaleBar = ([x, y]: SheetPoint, scale: number, unit: SheetUnit): string => {
  const perMm = scale / unit.mm;
  const step = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].find((length) => length / perMm >= 9) ?? 1000;
  const figure = (value: number): string => formatNumber(value, Number.isInteger(step) ? 0 : 1);
  const marks = [0, 1, 2, 3, 4, 5];
  const at = (mark: number): number => x + (mark * step) / perMm;
  return [
    pathSvg('ground', [
      [at(0), y],
      [at(5), y],
    ]),
    ...marks.map(
      (mark) =>
        pathSvg('thin', [
          [at(mark), y - 2],
          [at(mark), y],
        ]) +
        words(
          mark === 5 ? `${figure(mark * step)} ${unit.name}` : figure(mark * step),
          [at(mark) - (mark === 5 ? 3 : 0), y + 4],
          mark === 5 ? 'start' : 'middle',
        ),
    ),
  ].join('');
};

/** The sheet as a file. @param width,height - [mm] */
export const sheet = (width: number, height: number, title: string, body: readonly string[]): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" viewBox="0 0 ${n(width)} ${n(height)}" font-family="Encode Sans, Segoe UI, Helvetica, Arial, sans-serif" fill="none" stroke="#000" stroke-linejoin="round" stroke-linecap="round"><title>${escaped(title)}</title><style>text{fill:#000;stroke:none}</style><rect width="${n(width)}" height="${n(height)}" fill="#fff" stroke="none"/>${body.join('')}</svg>\n`;
