import { getNodeValue, type Node } from 'jsonc-parser';
import { formatValue, isPlainObject, isSame, keysOf, type Layout } from './formatValue';

/** One entry of an object or list as it stands in the text: blank, head (`"key": `, empty in a list), value, blank. */
interface Entry {
  readonly lead: string;
  readonly head: string;
  readonly value: Node;
  readonly trail: string;
}

interface Source {
  readonly text: string;
  readonly layout: Layout;
}

/**
 * The text of a value that was edited, made from the text it had: whatever was not touched keeps its spelling,
 * its place and its blanks.
 * @param node - the value's place in the text it came from
 */
export function rewrite(source: Source, node: Node, value: unknown, depth: number): string {
  if (isSame(getNodeValue(node), value)) return sliceOf(source, node);
  if (node.type === 'object' && isPlainObject(value)) return rewriteObject(source, node, value, depth);
  if (node.type === 'array' && Array.isArray(value)) return rewriteList(source, node, value, depth);
  return formatValue(value, source.layout, depth);
}

const sliceOf = ({ text }: Source, node: Node): string => text.slice(node.offset, node.offset + node.length);
const endOf = (node: Node): number => node.offset + node.length;

/** Entries with the blanks around them, and the blank before the closing bracket. */
function entriesOf(source: Source, node: Node): { readonly entries: readonly Entry[]; readonly tail: string } {
  const { text } = source;
  const children = node.children ?? [];
  const close = endOf(node) - 1;
  let from = node.offset + 1;
  const entries = children.map((child, i): Entry => {
    const value = child.type === 'property' ? child.children![1]! : child;
    const end = endOf(child);
    const next = children[i + 1];
    // between two entries there is one comma and nothing else but blanks
    const comma = next === undefined ? close : text.indexOf(',', end);
    const entry = {
      lead: text.slice(from, child.offset),
      head: text.slice(child.offset, value.offset),
      value,
      trail: text.slice(end, comma),
    };
    from = comma + 1;
    return entry;
  });
  const last = entries[entries.length - 1];
  return { entries, tail: last === undefined ? text.slice(node.offset + 1, close) : last.trail };
}

interface Written {
  readonly lead: string;
  readonly body: string;
  readonly trail: string;
}

function join(open: string, written: readonly Written[], tail: string, close: string): string {
  if (written.length === 0) return open + close;
  const inside = written.map(({ lead, body, trail }, i) => lead + body + (i === written.length - 1 ? '' : trail)).join(',');
  return open + inside + tail + close;
}

/** Where a new entry stands: as its neighbours do; on a line of its own when there is none. */
function placing(
  source: Source,
  entries: readonly Entry[],
  tail: string,
  depth: number,
): { readonly lead: (isFirst: boolean) => string; readonly tail: string } {
  const [first, second] = entries;
  const { newline, indent } = source.layout;
  if (first === undefined) return { lead: () => newline + indent.repeat(depth + 1), tail: newline + indent.repeat(depth) };
  const between = second?.lead ?? (first.lead === '' ? ' ' : first.lead);
  return { lead: (isFirst) => (isFirst ? first.lead : between), tail };
}

function rewriteObject(source: Source, node: Node, value: Readonly<Record<string, unknown>>, depth: number): string {
  const { entries, tail } = entriesOf(source, node);
  const byKey = new Map(entries.map((entry, i) => [String(node.children![i]!.children![0]!.value), entry]));
  const place = placing(source, entries, tail, depth);
  const colon = /:\s*$/.exec(entries[0]?.head ?? '')?.[0] ?? ': ';
  const written = keysOf(value).map((key, i): Written => {
    const old = byKey.get(key);
    // an entry that moved to the front or away from it takes the blank of its new place
    const keepsLead = old !== undefined && (old === entries[0]) === (i === 0);
    const lead = keepsLead ? old.lead : place.lead(i === 0);
    if (old === undefined)
      return { lead, body: JSON.stringify(key) + colon + formatValue(value[key], source.layout, depth + 1), trail: '' };
    const isLast = old === entries[entries.length - 1];
    return { lead, body: old.head + rewrite(source, old.value, value[key], depth + 1), trail: isLast ? '' : old.trail };
  });
  return join('{', written, place.tail, '}');
}

function rewriteList(source: Source, node: Node, value: readonly unknown[], depth: number): string {
  const { entries, tail } = entriesOf(source, node);
  const place = placing(source, entries, tail, depth);
  const olds = entries.map((entry) => getNodeValue(entry.value) as unknown);
  const shorter = Math.min(olds.length, value.length);
  // what was put in or taken out is looked for between the entries that stayed at both ends
  let atEnd = 0;
  if (olds.length !== value.length) {
    while (atEnd < shorter && isSame(olds[olds.length - 1 - atEnd], value[value.length - 1 - atEnd])) atEnd++;
  }
  const written = value.map((item, i): Written => {
    const fromEnd = value.length - i;
    const oldIndex = fromEnd <= atEnd ? olds.length - fromEnd : i < olds.length - atEnd ? i : -1;
    const old = entries[oldIndex];
    const keepsLead = old !== undefined && (oldIndex === 0) === (i === 0);
    const lead = keepsLead ? old.lead : place.lead(i === 0);
    if (old === undefined) return { lead, body: formatValue(item, source.layout, depth + 1), trail: '' };
    return { lead, body: rewrite(source, old.value, item, depth + 1), trail: oldIndex === entries.length - 1 ? '' : old.trail };
  });
  return join('[', written, place.tail, ']');
}
