import { textAt, type Primitive, type TextStyle } from './primitives';
import { inTypeface, widthOf } from '../typeface/typeface';
import { wrapText } from './wrapText';

/** Something that stays together on one page. `draw` lays it at the page's left margin, its top at y. */
export interface Block {
  readonly height: number;
  readonly draw: (x: number, y: number) => readonly Primitive[];
}

/** A heading with what stands under it; the head is said again where the section goes on on the next page. */
export interface Flow {
  readonly head: Block;
  readonly continued: Block;
  readonly rows: readonly Block[];
}

export const TITLE: TextStyle = { size: 19, weight: 'bold', ink: 'ink' };
export const HEADING: TextStyle = { size: 11.5, weight: 'bold', ink: 'ink' };
export const STRONG: TextStyle = { size: 10.5, weight: 'bold', ink: 'ink' };
export const NAME: TextStyle = { size: 9.5, weight: 'bold', ink: 'ink' };
export const BODY: TextStyle = { size: 9, weight: 'regular', ink: 'ink' };
export const SOFT: TextStyle = { size: 9, weight: 'regular', ink: 'soft' };

/** Distance of two baselines, as a share of the letters' size. */
const LEADING = 1.22;
/** From the top of a line to its baseline. */
const ASCENT = 0.93;

export const lineHeight = ({ size }: TextStyle): number => size * LEADING;

/** Lines of several styles, one under the other, in a column. */
export interface Column {
  readonly height: number;
  readonly draw: (x: number, y: number) => readonly Primitive[];
}

/** Texts under each other, each wrapped to the width; an empty one takes no room. */
export const column = (parts: readonly (readonly [string, TextStyle])[], width: number): Column => {
  const lines = parts.flatMap(([text, style]) =>
    wrapText(text, style.size, style.weight, width).map((line) => ({ line, style })),
  );
  return {
    height: lines.reduce((sum, { style }) => sum + lineHeight(style), 0),
    draw: (x, y) => {
      let top = y;
      return lines.map(({ line, style }) => {
        const placed = textAt(line, x, top + ASCENT * style.size, style);
        top += lineHeight(style);
        return placed;
      });
    },
  };
};

/** Baseline of one line in the middle of a row. */
export const middleOf = (y: number, height: number, { size }: TextStyle): number => y + height / 2 + size * 0.35;

export const baseline = (y: number, { size }: TextStyle): number => y + ASCENT * size;

/** A text that runs on behind another: what does not fit beside it goes on under it. */
export const runOn = (
  [first, firstStyle]: readonly [string, TextStyle],
  [second, secondStyle]: readonly [string, TextStyle],
  width: number,
): Column => {
  const heads = wrapText(first, firstStyle.size, firstStyle.weight, width);
  const start = widthOf(heads.at(-1) ?? '', firstStyle.size, firstStyle.weight) + 5;
  const words = inTypeface(second).split(' ');
  const fits = (count: number): boolean =>
    start + widthOf(words.slice(0, count).join(' '), secondStyle.size, secondStyle.weight) <= width;
  let count = 0;
  while (count < words.length && fits(count + 1)) count += 1;
  const above = column([[first, firstStyle]], width);
  const below = column([[words.slice(count).join(' '), secondStyle]], width);
  const line = above.height - lineHeight(firstStyle);
  return {
    height: above.height + below.height,
    draw: (x, y) => [
      ...above.draw(x, y),
      ...(count === 0 || second === ''
        ? []
        : [textAt(words.slice(0, count).join(' '), x + start, baseline(y + line, firstStyle), secondStyle)]),
      ...below.draw(x, y + above.height),
    ],
  };
};

/** Two texts beside each other where both fit in one line, else the second under the first. */
export const sideBySide = (
  [first, firstStyle]: readonly [string, TextStyle],
  [second, secondStyle]: readonly [string, TextStyle],
  width: number,
): Column => {
  const start = widthOf(inTypeface(first), firstStyle.size, firstStyle.weight) + 6;
  const fits = second !== '' && start + widthOf(inTypeface(second), secondStyle.size, secondStyle.weight) <= width;
  if (!fits)
    return column(
      [
        [first, firstStyle],
        [second, secondStyle],
      ],
      width,
    );
  return {
    height: lineHeight(firstStyle),
    draw: (x, y) => [
      textAt(first, x, baseline(y, firstStyle), firstStyle),
      textAt(second, x + start, baseline(y, firstStyle), secondStyle),
    ],
  };
};
