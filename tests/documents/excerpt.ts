/** A line of an excerpt that stands for any number of lines. */
export const LEFT_OUT = '…';

/** What a line of a table is about: its words before the first wide gap. */
const labelOf = (line: string): string => line.trim().split(/ {2,}/)[0] ?? '';

/**
 * An excerpt of an output brought up to date: the output itself where nothing is left out, otherwise each line replaced by
 * the output's next line with the same label.
 *
 * @throws Error when the output has no such line any more
 */
export function refreshedExcerpt(excerpt: string, output: string): string {
  const wanted = excerpt.split('\n');
  const real = output.trimEnd().split('\n');
  if (!wanted.includes(LEFT_OUT)) return real.join('\n');
  let at = 0;
  const lines = wanted.map((line) => {
    if (line === LEFT_OUT) return line;
    const found = real.findIndex((candidate, index) => index >= at && labelOf(candidate) === labelOf(line));
    if (found < 0) throw new Error(`the output has no line "${labelOf(line)}" (any more):\n${output}`);
    at = found + 1;
    return real[found] ?? '';
  });
  return lines.join('\n');
}
