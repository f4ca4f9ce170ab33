import type { PlacelessFault } from '../fault';
import { fail, succeed, type Result } from '../../core/result';
import { lineFinder } from './linesAndColumns';

/** Largest car file, in bytes. */
export const LARGEST_FILE_BYTES = 16 * 1024 * 1024;

export const fileTooLarge = (bytes: number): PlacelessFault => ({
  code: 'file-too-large',
  path: [],
  found: `${bytes} bytes`,
  expected: `${LARGEST_FILE_BYTES} bytes (16 MiB) at most`,
  hint: 'keep large meshes in files of their own beside the car file',
});

export const utf16 = (name: string): PlacelessFault => ({
  code: 'utf-16',
  path: [],
  found: `text in ${name}`,
  expected: 'text in UTF-8',
  hint: 'save the file again with the encoding UTF-8',
});

/** Name of the wide encoding that the first bytes show, with or without a byte-order mark; null for none. */
function wideEncodingOf(bytes: Uint8Array): string | null {
  const [a, b, c, d] = bytes;
  if (a === 0xff && b === 0xfe) return c === 0 && d === 0 ? 'UTF-32 (little-endian)' : 'UTF-16 (little-endian)';
  if (a === 0xfe && b === 0xff) return 'UTF-16 (big-endian)';
  if (a === 0 && b === 0 && c === 0xfe && d === 0xff) return 'UTF-32 (big-endian)';
  // without a mark: JSON begins with a character of ASCII, so the zero bytes show the width
  if (a === undefined || b === undefined) return null;
  if (a !== 0 && b === 0) return c === 0 && d === 0 ? 'UTF-32 (little-endian)' : 'UTF-16 (little-endian)';
  if (a === 0 && b !== 0) return 'UTF-16 (big-endian)';
  if (a === 0 && b === 0 && c === 0 && d !== undefined && d !== 0) return 'UTF-32 (big-endian)';
  return null;
}

const CHUNK = 8192;

/**
 * UTF-8 to text, strictly (no overlong forms, no surrogates, nothing past U+10FFFF: Unicode 15, table 3-7).
 * Written here because the language itself has no decoder and a refusal has to name the place.
 * Fails with the offset in the text that was decoded until then, and the byte.
 */
function decodeUtf8(bytes: Uint8Array, start: number): Result<string, { readonly before: string; readonly byte: number }> {
  let text = '';
  const units: number[] = [];
  const flush = (): void => {
    text += String.fromCharCode(...units);
    units.length = 0;
  };
  let i = start;
  while (i < bytes.length) {
    const lead = bytes[i]!;
    if (units.length >= CHUNK) flush();
    if (lead < 0x80) {
      units.push(lead);
      i++;
      continue;
    }
    const more = lead >= 0xc2 && lead <= 0xdf ? 1 : lead >= 0xe0 && lead <= 0xef ? 2 : lead >= 0xf0 && lead <= 0xf4 ? 3 : 0;
    let code = more === 1 ? lead & 0x1f : more === 2 ? lead & 0x0f : lead & 0x07;
    let isGood = more > 0;
    for (let k = 1; isGood && k <= more; k++) {
      const next = bytes[i + k];
      isGood = next !== undefined && (next & 0xc0) === 0x80;
      if (isGood) code = (code << 6) | (next! & 0x3f);
    }
    if (more === 2) isGood &&= code >= 0x800 && !(code >= 0xd800 && code <= 0xdfff);
    if (more === 3) isGood &&= code >= 0x10000 && code <= 0x10ffff;
    if (!isGood) {
      flush();
      return fail({ before: text, byte: lead });
    }
    if (code < 0x10000) units.push(code);
    else units.push(0xd7c0 + (code >> 10), 0xdc00 + (code & 0x3ff));
    i += more + 1;
  }
  flush();
  return succeed(text);
}

/** Text of a file's bytes: UTF-8, with or without a byte-order mark (which is dropped). */
export function decodeText(
  bytes: Uint8Array,
): Result<string, PlacelessFault & { readonly place?: { line: number; column: number } }> {
  if (bytes.length > LARGEST_FILE_BYTES) return fail(fileTooLarge(bytes.length));
  const wide = wideEncodingOf(bytes);
  if (wide !== null) return fail(utf16(wide));
  const hasMark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  const decoded = decodeUtf8(bytes, hasMark ? 3 : 0);
  if (decoded.ok) return succeed(decoded.value);
  const { before, byte } = decoded.failure;
  return fail({
    code: 'not-utf-8',
    path: [],
    place: lineFinder(before)(before.length),
    found: `byte 0x${byte.toString(16).toUpperCase().padStart(2, '0')}`,
    expected: 'text in UTF-8',
    hint: 'save the file again with the encoding UTF-8',
  });
}
