/** Deepest nesting that a car file may have; counted before anything is parsed, so that no parser's stack is at risk. */
export const DEEPEST_NESTING = 32;

/**
 * Where the text first nests deeper than allowed: offset of the bracket, or null.
 * Works on any text, JSON or not: brackets inside double-quoted strings do not count.
 */
export function findTooDeep(text: string, deepest = DEEPEST_NESTING): number | null {
  let depth = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (inString) {
      if (c === 0x5c) i++;
      // a string never spans lines in JSON: a lost quote must not hide the brackets that follow
      else if (c === 0x22 || c === 0x0a) inString = false;
    } else if (c === 0x22) inString = true;
    else if (c === 0x7b || c === 0x5b) {
      depth++;
      if (depth > deepest) return i;
    } else if ((c === 0x7d || c === 0x5d) && depth > 0) depth--;
  }
  return null;
}
