/** Widths of the narrow figures that long numbers are set in, and of the marks between them [px]. */
const FIGURE = 6.7;
const MARK = 2.9;
/** How much closer tight figures stand than those [px]. */
const CLOSER = 0.6;

/**
 * How a number of the table is set, by its length. Numbers too long for their column are set narrower; where left and right have a
 * column of differences each there is less room.
 */
const ROOM = {
  own: { plain: 6, long: 41, tight: 42 },
  one: { plain: 7, long: 50.5, tight: Infinity },
} as const;

const widthOf = (text: string): number => {
  const marks = text.match(/[.,′°]/g)?.length ?? 0;
  return (text.length - marks) * FIGURE + marks * MARK;
};

/** @param own - left and right have a column of differences each */
export const numberClass = (text: string | null, own: boolean): string => {
  const room = ROOM[own ? 'own' : 'one'];
  if (text === null || text.length <= room.plain) return 'number';
  const width = widthOf(text);
  if (width - (CLOSER / 2) * text.length <= room.long) return 'number long';
  return width - CLOSER * text.length <= room.tight ? 'number long tight' : 'number long tight squeezed';
};
