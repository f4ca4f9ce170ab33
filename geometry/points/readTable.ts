/** A field of a table with where it begins: line and column count from 1, columns in UTF-16 units as editors do. */
export interface Field {
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

export type Separator = 'comma' | 'semicolon' | 'tab';

const CHARACTERS: Readonly<Record<Separator, string>> = { comma: ',', semicolon: ';', tab: '\t' };

/** A tab or semicolon anywhere outside quotes separates the fields: then a comma may stand in a number. */
export function separatorOf(text: string): Separator {
  const bare = text.replace(/"(?:[^"]|"")*"/g, '');
  if (bare.includes('\t')) return 'tab';
  return bare.includes(';') ? 'semicolon' : 'comma';
}

export interface Table {
  readonly separator: Separator;
  /** rows with anything in them; fields without the blanks and quotes around them */
  readonly rows: readonly (readonly Field[])[];
  /** where a quote was opened and never closed */
  readonly unclosed: { readonly line: number; readonly column: number } | null;
}

/**
 * Rows and fields of separated text: RFC 4180 with any line end, and with semicolons or tabs for the commas.
 * A quoted field may hold separators, line ends and doubled quotes. A byte-order mark is dropped.
 * @param separator - what the text itself says where it is not given
 */
export function readTable(given: string, separator: Separator = separatorOf(given)): Table {
  const text = given.startsWith('\uFEFF') ? given.slice(1) : given;
  const mark = CHARACTERS[separator];
  const rows: Field[][] = [];
  let row: Field[] = [];
  let [line, column, at] = [1, 1, 0];
  let unclosed: Table['unclosed'] = null;
  const step = (): void => {
    const isBreak = text[at] === '\n' || (text[at] === '\r' && text[at + 1] !== '\n');
    at += 1;
    if (!isBreak) column += 1;
    else [line, column] = [line + 1, 1];
  };
  const isEnd = (): boolean => at >= text.length || text[at] === mark || text[at] === '\n' || text[at] === '\r';
  const finishRow = (): void => {
    if (row.some((field) => field.text !== '')) rows.push(row);
    row = [];
  };
  while (at < text.length) {
    while (!isEnd() && (text[at] === ' ' || text[at] === '\u00A0')) step();
    const start = { line, column };
    let value = '';
    if (text[at] === '"') {
      step();
      while (at < text.length && !(text[at] === '"' && text[at + 1] !== '"')) {
        if (text[at] === '"') step();
        value += text[at];
        step();
      }
      if (at >= text.length) unclosed = start;
      else step();
    }
    while (!isEnd()) {
      value += text[at];
      step();
    }
    row.push({ text: value.trim(), ...start });
    if (text[at] === mark) {
      step();
      if (at >= text.length || text[at] === '\n' || text[at] === '\r') row.push({ text: '', line, column });
    }
    if (text[at] === '\r' || text[at] === '\n') {
      if (text[at] === '\r' && text[at + 1] === '\n') step();
      step();
      finishRow();
    }
  }
  finishRow();
  return { separator, rows, unclosed };
}
