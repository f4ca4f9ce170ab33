import type { Warning } from '../car/fault';
import { mirror } from '../core/vector';
import type { Brought, BringOptions } from './bringPoints';

/** A list that fits best at another size than its own by more than this was most likely read in another unit. */
const SIZE_SLIP = 0.02;
/** A point this far over the middle plane is on the other side, and not just near the middle [mm]. */
const OTHER_SIDE_MM = 10;

/** What is odd about a list of points without being wrong. */
export function warningsOf(brought: Omit<Brought, 'warnings'>, options: BringOptions): Warning[] {
  const warnings: Warning[] = [];
  const warn = (code: string, path: string | null, message: string): void => {
    warnings.push({ code, path, message });
  };
  const { datum, rows, points } = brought;
  const posed = rows.filter((row) => row.posed).length;
  if (posed > 0)
    warn(
      'list-is-posed',
      null,
      `${posed} ${posed === 1 ? 'row of the list is' : 'rows of the list are'} not at design: x, y and z are those of a setup at a position, and are taken as new design points. For those of the design, name the columns "design x", "design y" and "design z" x, y and z.`,
    );
  // three points always lie in one plane: that is no news of this list
  if (datum?.planar && datum.points.length > 3)
    warn(
      'datum-planar',
      null,
      'The reference points lie in one plane: a list from a mirrored frame would fit them as well. Look whether a point off that plane is where it should be.',
    );
  if (datum && Math.abs(datum.size - 1) > SIZE_SLIP)
    warn(
      'datum-size',
      null,
      `The reference points would fit best at ${datum.size.toFixed(3)} times their size: is the unit of the list right?`,
    );
  for (const side of ['left', 'right'] as const) {
    const over = rows.filter(
      (row) => row.state === 'taken' && row.onSide === side && (side === 'left' ? row.at : mirror(row.at))[1] < -OTHER_SIDE_MM,
    );
    if (over.length === 0) continue;
    const other = side === 'left' ? 'right' : 'left';
    const named = over.map(({ name, line }) => `${name} (line ${line})`).join(', ');
    warn(
      'other-side',
      over.length === 1 ? over[0].point : null,
      `${named} ${over.length === 1 ? 'lies' : 'lie'} on the ${other} of the car's middle plane, but ${over.length === 1 ? 'is' : 'are'} taken for the ${side} side: was the list measured on the ${other}, or does its sideways axis point the other way?`,
    );
  }
  if (options.sides === 'average')
    for (const { point, lines } of points)
      if (lines.length === 1)
        warn('one-side-only', point, `${point} was measured on one side only: there is nothing to average.`);
  return warnings;
}
