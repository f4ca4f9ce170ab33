import { inTypeface, widthOf, type Weight } from '../typeface/typeface';

/** A word that is longer than a line, cut into pieces that are not. */
const cut = (word: string, size: number, weight: Weight, width: number): readonly string[] => {
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && widthOf(piece + letter, size, weight) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
};

/** Lines of a text that are no wider than `width` [pt]; no line for no text. */
export const wrapText = (text: string, size: number, weight: Weight, width: number): readonly string[] => {
  const words = inTypeface(text)
    .split(' ')
    .filter((word) => word !== '')
    .flatMap((word) => (widthOf(word, size, weight) > width ? cut(word, size, weight, width) : [word]));
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    const longer = last === undefined ? '' : `${last} ${word}`;
    if (last !== undefined && widthOf(longer, size, weight) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
};

/** The same in no more than `most` lines: what is left over is shown by an ellipsis. */
export const wrapWithin = (text: string, size: number, weight: Weight, width: number, most: number): readonly string[] => {
  const lines = wrapText(text, size, weight, width);
  if (lines.length <= most) return lines;
  let last = lines[most - 1] ?? '';
  while (last !== '' && widthOf(`${last}…`, size, weight) > width) last = last.slice(0, -1);
  return [...lines.slice(0, most - 1), `${last.trimEnd()}…`];
};
