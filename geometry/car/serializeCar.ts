import { parseTree } from 'jsonc-parser';
import type { CarDocument } from './document';
import { DEFAULT_LAYOUT, formatValue, layoutOf } from './writing/formatValue';
import { rewrite } from './writing/rewrite';

/**
 * Text of a car file.
 *
 * With the text that the document came from, an untouched document gives that text byte for byte, and an edited one
 * changes only the lines it must: key order, `$schema`, spelling of numbers, indents and line ends stay. Without it,
 * two spaces and a key a line. A byte-order mark is never written.
 *
 * @param document - as `parseCar` gave it, or edited; a key set to undefined is left out
 * @param originalText - `ParsedCar.text` of the file it came from
 */
export function serializeCar(document: CarDocument, originalText?: string): string {
  const text = originalText?.startsWith('\uFEFF') === true ? originalText.slice(1) : originalText;
  const root = text === undefined ? undefined : parseTree(text);
  if (text === undefined || root === undefined) return `${formatValue(document, DEFAULT_LAYOUT, 0)}${DEFAULT_LAYOUT.newline}`;
  const source = { text, layout: layoutOf(text) };
  return text.slice(0, root.offset) + rewrite(source, root, document, 0) + text.slice(root.offset + root.length);
}
