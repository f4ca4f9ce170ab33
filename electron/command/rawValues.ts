/**
 * The values of a JSON object's own keys as they stand in its text, by key.
 *
 * Reading a car out of a line this way keeps what `JSON.parse` throws away (keys given twice, long numbers), so that it is
 * judged as a file is. The text is known to be JSON, and to be an object.
 *
 * @returns the slices, or the key that stands there twice
 */
export function rawValuesOf(text: string): { readonly values: ReadonlyMap<string, string> } | { readonly twice: string } {
  const values = new Map<string, string>();
  let at = text.indexOf('{') + 1;
  for (;;) {
    at = skipSpace(text, at);
    if (text[at] === ',') at = skipSpace(text, at + 1);
    if (text[at] !== '"') return { values };
    const keyEnd = endOfString(text, at);
    const key = JSON.parse(text.slice(at, keyEnd)) as string;
    const start = skipSpace(text, skipSpace(text, keyEnd) + 1);
    const end = endOfValue(text, start);
    if (values.has(key)) return { twice: key };
    values.set(key, text.slice(start, end));
    at = end;
  }
}

function skipSpace(text: string, from: number): number {
  let at = from;
  while (at < text.length && ' \t\r\n'.includes(text.charAt(at))) at++;
  return at;
}

/** Past the closing quote of the string that opens at `from`. */
function endOfString(text: string, from: number): number {
  let at = from + 1;
  while (text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
  return at + 1;
}

function endOfValue(text: string, from: number): number {
  let depth = 0;
  let at = from;
  for (;;) {
    const letter = text[at];
    if (letter === '"') at = endOfString(text, at);
    else if (letter === '{' || letter === '[') {
      depth++;
      at++;
    } else if (letter === '}' || letter === ']') {
      if (depth === 0) return at;
      depth--;
      at++;
    } else if (letter === undefined || (depth === 0 && ', \t\r\n'.includes(letter))) return at;
    else {
      at++;
      continue;
    }
    if (depth === 0) return at;
  }
}
