/** How text is printed. */
export interface TextStyle {
  readonly colour: boolean;
}

/** The widest line of a table. */
export const TABLE_WIDTH = 100;

export const NO_VALUE = '–';

/** A number with fixed decimals and a true minus; what rounds to zero has no sign. */
export function formatFixed(value: number | null, decimals: number): string {
  if (value === null) return NO_VALUE;
  const text = value.toFixed(decimals);
  if (!text.startsWith('-')) return text;
  return Number(text) === 0 ? text.slice(1) : `−${text.slice(1)}`;
}

/** A difference: signed both ways, so that + is seen to be meant. */
export function formatDifference(value: number | null, decimals: number): string {
  const text = formatFixed(value, decimals);
  return value !== null && Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
}

/** A number that somebody typed, as short as it can be said: no more than three decimals, no zeros at the end. */
export const formatPlain = (value: number): string => formatFixed(Number(value.toFixed(3)), 3).replace(/\.?0+$/, '');

/** A text of somebody's file as a terminal may be given it: nothing in it can move the cursor or change the colour. */
export const harmless = (text: string): string => text.replace(/\p{Cc}/gu, '�');

/** The heading of an answer: it carries names from the file. */
export const heading = (text: string, style: TextStyle): string =>
  style.colour ? `\u001b[1m${harmless(text)}\u001b[22m` : harmless(text);

export interface Column {
  readonly title: string;
  readonly width: number;
  readonly align: 'left' | 'right';
}

/** Words may lose their end; a number that did would be another one. */
const fit = (text: string, { width, align }: Column): string => {
  const cut = align === 'left' && text.length > width ? `${text.slice(0, width - 1)}…` : text;
  return align === 'left' ? cut.padEnd(width) : cut.padStart(width);
};

/** One line of a table; words past their column's width are cut, numbers (on the right) never. */
export const tableLine = (columns: readonly Column[], cells: readonly string[]): string =>
  columns
    .map((column, index) => fit(cells[index] ?? '', column))
    .join('  ')
    .trimEnd();

/** A word that fits in no line, such as a long name of the file, in pieces that do. */
const pieces = (word: string, most: number): readonly string[] =>
  word.length <= most
    ? [word]
    : Array.from({ length: Math.ceil(word.length / most) }, (_, i) => word.slice(i * most, (i + 1) * most));

/** Words broken into lines no wider than the table: the first begins as the text does, the others with the indent. */
export function wrap(text: string, indent = '', width = TABLE_WIDTH): string[] {
  const lines: string[] = [];
  const head = text.length - text.trimStart().length;
  const most = width - Math.max(head, indent.length);
  const [first = '', ...words] = text
    .trimStart()
    .split(' ')
    .flatMap((word) => pieces(word, most));
  let line = text.slice(0, head) + first;
  for (const word of words) {
    if (line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else line = `${line} ${word}`;
  }
  return [...lines, line];
}
