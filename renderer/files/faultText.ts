import type { Fault } from '../../geometry/index';

/** One line of a file, split at what is marked in it. */
export interface MarkedLine {
  /** from 1 */
  readonly number: number;
  readonly before: string;
  readonly marked: string;
  readonly after: string;
}

/** Lines shown before and after the one that matters, and the length that a line is cut to: meshes are one long line. */
const LINES_AROUND = 200;
const LONGEST_LINE = 400;

/** What is marked at a place: a text in quotes, a number or word, a bracket; one character where it is nothing of these. */
const TOKEN = /"(?:[^"\\]|\\.)*"?|[-+.\w]+|\S/y;

const cut = (text: string): string => (text.length <= LONGEST_LINE ? text : `${text.slice(0, LONGEST_LINE)} …`);

const markedLine = (text: string, number: number, column: number): MarkedLine => {
  const from = Math.min(Math.max(column - 1, 0), text.length);
  TOKEN.lastIndex = from;
  const marked = TOKEN.exec(text)?.[0] ?? '';
  const start = Math.max(0, from - LONGEST_LINE);
  const before = (start > 0 ? '… ' : '') + text.slice(start, from);
  return { number, before, marked: cut(marked), after: cut(text.slice(from + marked.length)) };
};

/**
 * The lines of a text around a place, with what stands there marked.
 * @param line - from 1, `column` too, in UTF-16 units as editors count
 */
export const linesAround = (text: string, line: number, column: number): readonly MarkedLine[] => {
  const lines = text.split(/\r\n|\r|\n/);
  const from = Math.max(0, line - 1 - LINES_AROUND);
  return lines.slice(from, line + LINES_AROUND).map((content, index) => {
    const number = from + index + 1;
    return number === line ? markedLine(content, number, column) : { number, before: cut(content), marked: '', after: '' };
  });
};

/** The faults as text, one a line, for a mail or an editor. */
export const faultList = (title: string, faults: readonly Fault[]): string =>
  [
    title,
    ...faults.map(({ path, line, column, found, expected, hint }) => {
      const place = line === null ? '' : `:${line}:${column ?? 1}`;
      const said = [found && `found ${found}`, expected && `expected ${expected}`, hint].filter(Boolean).join('; ');
      return `${title}${place} ${path ?? 'the whole file'}: ${said}`;
    }),
  ].join('\n');
