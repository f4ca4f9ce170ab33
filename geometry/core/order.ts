/** Numbers that differ by no more than this count as one: relative, and absolute below 1. The last bits are the machine's. */
const SAME = 1e-9;

const isSame = (a: number, b: number): boolean =>
  a === b || Math.abs(a - b) <= SAME * Math.max(1, Math.min(Math.abs(a), Math.abs(b)));

/**
 * A list by a number of each, least first; those that are one but for rounding stay in the order in which they are given.
 * @param of - finite, or −∞ for what comes before all others
 */
export function leastFirst<Item>(list: readonly Item[], of: (item: Item) => number): Item[] {
  const sorted = list
    .map((item, place) => ({ item, place, value: of(item) }))
    .sort((a, b) => a.value - b.value || a.place - b.place);
  const made: Item[] = [];
  for (let from = 0; from < sorted.length;) {
    let to = from + 1;
    while (to < sorted.length && isSame(sorted[from].value, sorted[to].value)) to += 1;
    const alike = sorted.slice(from, to).sort((a, b) => a.place - b.place);
    made.push(...alike.map(({ item }) => item));
    from = to;
  }
  return made;
}
