/** Decimals that coordinates have at least. */
const LEAST = 2;

const decimalsOf = (text: string): number => (text.includes('.') ? text.length - text.indexOf('.') - 1 : 0);

/** Decimals of the numbers of a column, so that their points stand under each other: as many as the longest of them needs. */
export const columnPlaces = (texts: readonly string[]): number => Math.max(LEAST, ...texts.map(decimalsOf));

/** A number with noughts behind it up to so many decimals; one that has them already stays as it is. */
export const withPlaces = (text: string, places: number): string => {
  const decimals = decimalsOf(text);
  return decimals >= places ? text : `${text}${decimals === 0 ? '.' : ''}${'0'.repeat(places - decimals)}`;
};
