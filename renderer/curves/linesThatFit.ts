const BETWEEN = ' · ';

/** Words laid into lines of a width: every line as full as it can be; a word that is wider than a line has one of its own. */
const broken = (words: readonly string[], between: string, fits: (line: string) => boolean): readonly string[] => {
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    const longer = last === undefined ? null : `${last}${between}${word}`;
    if (longer !== null && fits(longer)) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
};

/**
 * Parts of a legend in as few lines as a width allows: "left: solid · right: dashed". A part that is wider than a line is broken
 * between its words.
 */
export const linesThatFit = (parts: readonly string[], fits: (line: string) => boolean): readonly string[] =>
  broken(
    parts.flatMap((part) => (fits(part) ? [part] : broken(part.split(' '), ' ', fits))),
    BETWEEN,
    fits,
  );
