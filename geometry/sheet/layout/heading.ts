import { widthOf } from '../typeface/typeface';
import { baseline, column, HEADING, SOFT, type Block } from './block';
import { lineAt, textAt } from './primitives';

const SPACE_BEFORE = 9;

/** A heading with a note behind it, and the head of its table under it where it has one. */
export const headOf = (heading: string, note: string, width: number, table: Block | null): Block => {
  const after = widthOf(heading, HEADING.size, HEADING.weight) + 8;
  const fits = after + widthOf(note, SOFT.size, SOFT.weight) <= width;
  const title = column([[heading, HEADING]], width);
  const below = fits ? null : column([[note, SOFT]], width);
  const own = SPACE_BEFORE + title.height + (below?.height ?? 0) + (table === null ? 2 : 0);
  return {
    height: own + (table?.height ?? 0),
    draw: (x, y) => [
      ...title.draw(x, y + SPACE_BEFORE),
      ...(note !== '' && fits ? [textAt(note, x + after, baseline(y + SPACE_BEFORE, HEADING), SOFT)] : []),
      ...(below?.draw(x, y + SPACE_BEFORE + title.height) ?? []),
      ...(table?.draw(x, y + own) ?? [lineAt(x, y + own, x + width, y + own, 1.1, 'ink')]),
    ],
  };
};
