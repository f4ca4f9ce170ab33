import { printParseErrorCode, visit } from 'jsonc-parser';
import type { PlacelessFault } from '../fault';

/** Thrown through the visitor to stop it at the first error; never leaves this file. */
class FirstError extends Error {
  readonly at: number;
  /** the library's name of the error, or "Comment" */
  readonly kind: string;
  constructor(at: number, kind: string) {
    super('first syntax error');
    this.at = at;
    this.kind = kind;
  }
}

const EXPECTED: Readonly<Record<string, string>> = {
  InvalidSymbol: 'a value: a number, text in double quotes, true, false, { … } or [ … ]',
  InvalidNumberFormat: 'a number such as -12.5 or 1e3',
  PropertyNameExpected: 'a key in double quotes',
  ValueExpected: 'a value',
  ColonExpected: '":" between key and value',
  CommaExpected: '"," between two entries',
  CloseBraceExpected: '"}"',
  CloseBracketExpected: '"]"',
  EndOfFileExpected: 'nothing after the end of the car',
  UnexpectedEndOfString: 'the closing quote of a text',
  UnexpectedEndOfNumber: 'a digit',
  InvalidUnicode: 'four hexadecimal digits after \\u',
  InvalidEscapeCharacter: 'one of \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u after a backslash',
  InvalidCharacter: 'no control character inside a text (write \\n, \\t or \\u00…)',
};

function excerptAt(text: string, offset: number): string {
  if (offset >= text.length) return 'the end of the file';
  const word = /^(?:[\p{L}\p{N}_.+-]{1,40}|[^])/u.exec(text.slice(offset, offset + 80))?.[0] ?? '';
  return JSON.stringify(word);
}

/** The hint that the text itself gives: what people write who are used to other notations. */
function hintFor(text: string, offset: number): string | null {
  const rest = text.slice(offset, offset + 10);
  if (rest.startsWith("'")) return 'text stands in double quotes';
  if (/^[+-]?(?:NaN|Infinity)/.test(rest)) return 'write a number, or leave the key out where there is no value';
  if (/^(?:True|False|None|undefined)/.test(rest)) return 'JSON writes true, false; leave the key out where there is no value';
  if (/^[+.]/.test(rest)) return 'a number starts with a digit or with "-" and a digit';
  if (/^0[0-9]/.test(text.slice(Math.max(0, offset - 1), offset + 1))) return 'a number has no leading zero';
  if (/^,?[0-9]/.test(rest) && /[0-9]/.test(text.charAt(offset - 1))) return 'decimals are written with a point';
  return null;
}

/** Offset of the comma if the text before `offset` ends in one. */
function commaBefore(text: string, offset: number): number | null {
  let i = offset - 1;
  while (i >= 0 && /\s/.test(text.charAt(i))) i--;
  return text.charAt(i) === ',' ? i : null;
}

function firstError(text: string): FirstError | null {
  try {
    visit(
      text,
      {
        onError: (kind, offset) => {
          throw new FirstError(offset, printParseErrorCode(kind));
        },
        onComment: (offset) => {
          throw new FirstError(offset, 'Comment');
        },
      },
      { disallowComments: false, allowTrailingComma: false },
    );
    return null;
  } catch (error) {
    if (error instanceof FirstError) return error;
    throw error;
  }
}

/**
 * The first place at which a text that JSON.parse has refused stops being JSON.
 * The engine's own message is not used: its wording and its position differ between versions of Node and browsers.
 */
export function findSyntaxFault(text: string): PlacelessFault {
  const error = firstError(text);
  const none = { path: [], hint: null } as const;
  if (error === null) return { code: 'not-json', ...none, offset: 0, found: null, expected: 'JSON' };
  const { at, kind } = error;
  if (kind === 'Comment' || kind === 'UnexpectedEndOfComment') {
    return {
      code: 'comment',
      path: [],
      offset: at,
      found: 'a comment',
      expected: 'JSON without comments',
      hint: 'put remarks into "notes"',
    };
  }
  const closing = text.charAt(at) === '}' || text.charAt(at) === ']';
  const comma = closing ? commaBefore(text, at) : null;
  if (comma !== null) {
    return {
      code: 'trailing-comma',
      path: [],
      offset: comma,
      found: `"," before "${text.charAt(at)}"`,
      expected: 'no comma after the last entry',
      hint: 'remove the comma',
    };
  }
  return {
    code: 'not-json',
    path: [],
    offset: at,
    found: excerptAt(text, at),
    expected: EXPECTED[kind] ?? 'JSON',
    hint: hintFor(text, at),
  };
}
