import { widthOf } from '../typeface/typeface';
import { baseline, column, HEADING, SOFT, type Block } from './block';
import type { Density } from './density';
import { lineAt, textAt } from './primitives';

/** A heading with a note behind it, and the head of its table under it where it has one. */
export const headOf = (heading: string, note: string, width: number, table: Block | null, { before }: Density): Block => {
  const after = widthOf(heading, HEADING.size, HEADING.weight) + 8;
  const fits = after + widthOf(note, SOFT.size, SOFT.weight) <= width;
  const title = column([[heading, HEADING]], width);
  const below = fits ? null : column([[note, SOFT]], width);
  const own = before + title.height + (below?.height ?? 0) + (table === null ? 2 : 0);
  return {
    height: own + (table?.height ?? 0),
    draw: (x, y) => [
      ...title.draw(x, y + before),
      ...(note !== '' && fits ? [textAt(note, x + after, baseline(y + before, HEADING), SOFT)] : []),
      ...(below?.draw(x, y + before + title.height) ?? []),
      ...(table?.draw(x, y + own) ?? [lineAt(x, y + own, x + width, y + own, 1.1, 'ink')]),
    ],
  };
};
