/** No more than three decimals, no zeros at the end, a true minus. */
export const plainNumber = (value: number): string => String(Number(value.toFixed(3)) + 0).replace('-', '−');

/** What the line of a template means for what is to be put beside it. @param grow - radius and margin in it [mm] */
export const growthWords = (grow: number): string =>
  grow === 0
    ? 'Not grown: the line is the edge of what moves; a part needs its own margin besides.'
    : `Grown by ${plainNumber(grow)} mm: what passes through this plane with its centre line outside of the line is not touched where it is nowhere thicker than ${plainNumber(grow)} mm about that centre line, margin included.`;

/** A section says nothing of what lies before and behind it. */
export const ONE_PLANE =
  'The line holds in this plane only: a bracket with thickness needs a template at each of its faces, or the keep-out as a solid (STL) to be built around.';
