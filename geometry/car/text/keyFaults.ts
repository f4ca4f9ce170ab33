import type { PlacelessFault } from '../fault';
import { MOST_FAULTS } from '../faultCodes';
import { walkJson } from './walkJson';

/** Said once, wherever they stand, and not again as unknown. */
export const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * Faults of the keys that a parsed value no longer shows: given twice (the parser keeps the last one),
 * and the names that mean something to the language (the schema library drops one of them without a word).
 */
export function findKeyFaults(text: string): PlacelessFault[] {
  const faults: PlacelessFault[] = [];
  const seen: Set<string>[] = [];
  walkJson(text, {
    objectBegin: () => seen.push(new Set()),
    objectEnd: () => seen.pop(),
    key: (path, name, offset) => {
      if (faults.length >= MOST_FAULTS) return;
      const here = seen[seen.length - 1]!;
      const at = { path: [...path, name], on: 'key', offset } as const;
      if (here.has(name)) {
        faults.push({
          code: 'duplicate-key',
          ...at,
          found: `a second "${name.slice(0, 60)}"`,
          expected: 'every key once',
          hint: 'remove one of the two',
        });
      }
      if (FORBIDDEN_KEYS.has(name)) {
        faults.push({ code: 'forbidden-key', ...at, found: `"${name}"`, expected: 'another name', hint: null });
      }
      here.add(name);
    },
  });
  return faults;
}
