import { axisLine, HATCHED_AT_LENGTH, offWords, titleOf, type TemplateDrawing } from './drawing';
import { besideBoxes, hatchOf } from './hatch';
import { grown, seatNames } from './labels';

type Point = readonly [number, number];

/** What is drawn on each layer, and its colour by the format's own numbers: 7 is black on white. */
const LAYERS = { OUTLINE: 7, HOLE: 1, HATCH: 9, POINTS: 5, BOLTS: 3, BARS: 8, WORDS: 8 } as const;
type Layer = keyof typeof LAYERS;

const TEXT_MM = 4;
const SMALL_MM = 2.5;
const BAR_MM = 100;
const ARROW_MM = 40;

/**
 * A template as DXF in its twelfth release, a unit a millimetre: outlines are closed polylines, everything else points, lines and
 * words beside them. The hatching is lines of a layer of its own, to be put out where a cutter must not follow them.
 *
 * Lines end as on the system that the format comes from. Letters past ASCII are written as `\U+`: of that age there is no other.
 * @param date - YYYY-MM-DD
 */
export function templateDxf(drawing: TemplateDrawing, date: string): string {
  const { outlines, points, axes, arrows } = drawing;
  const all = outlines.flatMap((outline) => outline.points);
  const pairs: string[] = [...header(all), ...layerTable(), ...group([0, 'SECTION'], [2, 'ENTITIES'])];
  for (const outline of outlines) pairs.push(...polyline(outline.isHole ? 'HOLE' : 'OUTLINE', outline.points));
  for (const { at } of points) pairs.push(...point('POINTS', at));
  for (const axis of axes) {
    const ends = axisLine(axis);
    pairs.push(...point('BOLTS', axis.at), ...(ends === null ? [] : line('BOLTS', ...ends)));
  }
  const named = [
    ...points.map(({ name, at, off }) => ({ layer: 'POINTS' as const, at, said: `${name}, ${offWords(off)}` })),
    ...axes.map(({ name, at, off }) => ({ layer: 'BOLTS' as const, at, said: `${name} bolt, ${offWords(off)}` })),
  ];
  const seats = seatNames(
    named.map(({ at, said }) => ({ at, width: SMALL_MM * said.length, height: 1.4 * SMALL_MM })),
    {
      area: null,
      marks: named.map(({ at }) => grown({ min: at, max: at }, 1)),
      lines: axes.flatMap((axis) => {
        const ends = axisLine(axis);
        return ends === null ? [] : [ends];
      }),
      outlines: outlines.flatMap((outline) => outline.points.map((from, i, all) => [from, all[(i + 1) % all.length]] as const)),
    },
  );
  named.forEach(({ layer, at, said }, i) => {
    const seat = seats[i];
    // so many names about one point that there is no place left: told beside it all the same
    const from: Point = seat === null ? [at[0] + 2, at[1] + 2] : [seat.box.min[0], seat.box.min[1] + 0.3 * SMALL_MM];
    if (seat?.leader) pairs.push(...line(layer, ...seat.leader));
    pairs.push(...text(layer, from, SMALL_MM, said));
  });
  const room = [...seats.flatMap((seat) => (seat === null ? [] : [seat.box])), ...points.map(({ at }) => ({ min: at, max: at }))];
  const hatch = besideBoxes(
    hatchOf(outlines),
    room.map((box) => grown(box, 1)),
  );
  for (const stroke of hatch) pairs.push(...line('HATCH', ...stroke));
  // under all that is named, wherever the points are
  const corners = [...all, ...seats.flatMap((seat) => (seat === null ? [] : [seat.box.min])), ...points.map(({ at }) => at)];
  const left = least(all, 0);
  const barY = least(corners, 1) - 25;
  pairs.push(...line('BARS', [left, barY], [left + BAR_MM, barY]), ...line('BARS', [left, barY], [left, barY - BAR_MM]));
  pairs.push(...text('BARS', [left + 3, barY + 2], SMALL_MM, '100 mm: measure both bars'));
  const heart: Point = [left + 170, barY - 50];
  const said: Point[] = [];
  for (const { direction, right, up, seen } of arrows) {
    if (seen !== 'along') continue;
    const tip: Point = [heart[0] + ARROW_MM * right, heart[1] + ARROW_MM * up];
    // beyond the tip, by its own length where it points to the left
    const wide = TEXT_MM * direction.length;
    const x = tip[0] + 3 * right + (right - 1) * 0.5 * wide;
    let y = tip[1] + (3 + 0.5 * TEXT_MM) * up - 0.5 * TEXT_MM;
    while (said.some(([px, py]) => Math.abs(px - x) < 2 * wide && Math.abs(py - y) < 1.5 * TEXT_MM)) y -= 1.5 * TEXT_MM;
    said.push([x, y]);
    pairs.push(...line('WORDS', heart, tip), ...text('WORDS', [x, y], TEXT_MM, direction));
  }
  const words = [
    ...inLines(titleOf(drawing)),
    ...[
      `${HATCHED_AT_LENGTH} Layer HATCH.`,
      ...drawing.facts,
      ...endOnWords(drawing),
      ...drawing.cautions,
      `Template of ${date}.`,
    ].flatMap(inLines),
  ];
  words.forEach((said, i) =>
    pairs.push(...text('WORDS', [left, barY - BAR_MM - 10 - 6 * i], i === 0 ? TEXT_MM : SMALL_MM, said)),
  );
  pairs.push(...group([0, 'ENDSEC'], [0, 'EOF']));
  return pairs.join('\r\n') + '\r\n';
}

/** A text of the format is a line of 255 letters at most, those past ASCII as seven each; none has so many of them. */
const LINE_LETTERS = 110;

function inLines(said: string): readonly string[] {
  const lines: string[] = [];
  for (const word of said.split(/\s+/)) {
    const longer = `${lines.at(-1) ?? ''} ${word}`;
    if (lines.length > 0 && longer.length <= LINE_LETTERS) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** Directions that no arrow can show. */
export const endOnWords = ({ arrows }: Pick<TemplateDrawing, 'arrows'>): string[] =>
  arrows.flatMap(({ direction, seen }) =>
    seen === 'along'
      ? []
      : [`${direction} points ${seen === 'towards' ? 'out of the paper, towards you' : 'into the paper, away from you'}`],
  );

type Pair = readonly [code: number, value: string | number];

/** Every second line a code, every other its value. */
const group = (...pairs: readonly Pair[]): string[] =>
  pairs.flatMap(([code, value]) => [String(code), typeof value === 'string' ? value : numeral(value)]);

/** Codes of counts and flags hold whole numbers, the rest reals: neither may have an exponent. */
const numeral = (value: number): string => (Number.isInteger(value) ? String(value === 0 ? 0 : value) : value.toFixed(9));

const ordinate = (value: number): string => value.toFixed(9);

const least = (points: readonly Point[], i: 0 | 1): number => points.reduce((min, point) => Math.min(min, point[i]), Infinity);
const most = (points: readonly Point[], i: 0 | 1): number => points.reduce((max, point) => Math.max(max, point[i]), -Infinity);

const header = (all: readonly Point[]): string[] =>
  group(
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$EXTMIN'],
    [10, ordinate(least(all, 0))],
    [20, ordinate(least(all, 1))],
    [9, '$EXTMAX'],
    [10, ordinate(most(all, 0))],
    [20, ordinate(most(all, 1))],
    [0, 'ENDSEC'],
  );

const layerTable = (): string[] => {
  const layers = Object.entries(LAYERS).flatMap(([name, colour]) =>
    group([0, 'LAYER'], [2, name], [70, 0], [62, colour], [6, 'CONTINUOUS']),
  );
  return [
    ...group([0, 'SECTION'], [2, 'TABLES'], [0, 'TABLE'], [2, 'LTYPE'], [70, 1], [0, 'LTYPE'], [2, 'CONTINUOUS'], [70, 0]),
    ...group([3, 'Solid'], [72, 65], [73, 0], [40, '0.0'], [0, 'ENDTAB'], [0, 'TABLE'], [2, 'LAYER']),
    ...group([70, Object.keys(LAYERS).length]),
    ...layers,
    ...group([0, 'ENDTAB'], [0, 'ENDSEC']),
  ];
};

const polyline = (layer: Layer, points: readonly Point[]): string[] => [
  ...group([0, 'POLYLINE'], [8, layer], [66, 1], [10, '0.0'], [20, '0.0'], [30, '0.0'], [70, 1]),
  ...points.flatMap(([x, y]) => group([0, 'VERTEX'], [8, layer], [10, ordinate(x)], [20, ordinate(y)], [30, '0.0'])),
  ...group([0, 'SEQEND'], [8, layer]),
];

const point = (layer: Layer, [x, y]: Point): string[] =>
  group([0, 'POINT'], [8, layer], [10, ordinate(x)], [20, ordinate(y)], [30, '0.0']);

const line = (layer: Layer, from: Point, to: Point): string[] =>
  group(
    [0, 'LINE'],
    [8, layer],
    [10, ordinate(from[0])],
    [20, ordinate(from[1])],
    [30, '0.0'],
    [11, ordinate(to[0])],
    [21, ordinate(to[1])],
    [31, '0.0'],
  );

const text = (layer: Layer, [x, y]: Point, height: number, said: string): string[] =>
  group([0, 'TEXT'], [8, layer], [10, ordinate(x)], [20, ordinate(y)], [30, '0.0'], [40, ordinate(height)], [1, inAscii(said)]);

/** Line breaks would end the value; a caret and what follows it is a control character to those who read the format. */
const inAscii = (said: string): string =>
  [...said.normalize('NFC').replace(/\s|\p{Cc}/gu, ' ')]
    .map((letter) => {
      if (letter === '^') return '^ ';
      const code = letter.codePointAt(0) ?? 0;
      return code < 127 ? letter : code > 0xffff ? '?' : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    })
    .join('');
