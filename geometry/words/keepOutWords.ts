import type { FilledPart } from '../fitup/keepOut/sweptSpace';
import { plainNumber } from './plainNumber';

/**
 * What the line of a template means for what is to be put beside it.
 * @param grow - radius and margin in it [mm]
 * @param length - mm with their unit, as they are read
 */
export const growthWords = (grow: number, length: (mm: number) => string = (mm) => `${plainNumber(mm)} mm`): string =>
  grow === 0
    ? 'Not grown: the line is the edge of what moves; a part needs its own margin besides.'
    : `Grown by ${length(grow)}: what passes through this plane with its centre line outside of the line is not touched where it is nowhere thicker than ${length(grow)} about that centre line, margin included.`;

/** A section says nothing of what lies before and behind it. */
export const ONE_PLANE =
  'The line holds in this plane only: a bracket with thickness needs a template at each of its faces, or the keep-out as a solid (STL) to be built around.';

/**
 * How far out of what is swept the surface is.
 * @param isFilled - narrow space is filled, and farther out there than the bound
 * @param words - lengths in mm with their unit: to hundredths, and to tenths
 */
export const outsideWords = (
  {
    outward,
    bound,
    gap,
    isFilled,
  }: {
    readonly outward: { readonly least: number; readonly most: number };
    readonly bound: number;
    readonly gap: number;
    readonly isFilled: boolean;
  },
  fine: (mm: number) => string,
  tenths: (mm: number) => string,
): string =>
  isFilled
    ? `by ${fine(outward.least)} or more at every corner and in the middle of every triangle, by ${tenths(bound)} at most; but free space narrower than ${tenths(gap)} is filled where parts nearly touch or part at a narrow angle: up to ${fine(outward.most)} there`
    : `by ${fine(outward.least)} to ${fine(outward.most)} at every corner and in the middle of every triangle; ${tenths(bound)} is the most`;

/** What is taken for swept although nothing may be there, in a sentence for each kind of part; none where there is no such part. */
export function filledWords(filled: readonly FilledPart[], nameOf: (name: string) => string = (name) => name): readonly string[] {
  const namesOf = (as: FilledPart['as']): string =>
    filled
      .filter((part) => part.as === as)
      .map(({ name }) => nameOf(name))
      .join(', ');
  const [tyres, meshes] = [namesOf('tyre'), namesOf('turning-mesh')];
  return [
    ...(tyres === ''
      ? []
      : [
          `Filled right through, the inside of the rim with it: ${tyres}. Space in there that nothing reaches, as beside a caliper, counts as swept all the same.`,
        ]),
    ...(meshes === ''
      ? []
      : [
          `Filled from the least to the greatest radius all along the axis that it turns about: ${meshes}. Hollows between count as swept all the same.`,
        ]),
  ];
}
