import { formatPath, type Fault, type Path, type PlacelessFault } from '../fault';
import { walkJson } from './walkJson';

export interface LineAndColumn {
  readonly line: number;
  readonly column: number;
}

/** 1-based line and column of offsets in a text; lines end at LF, CRLF or CR. */
export function lineFinder(text: string): (offset: number) => LineAndColumn {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 0x0a || (c === 0x0d && text.charCodeAt(i + 1) !== 0x0a)) starts.push(i + 1);
  }
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low]! + 1 };
  };
}

/** A tree of the paths that are asked for, with what was found of them in the text. */
interface Wanted {
  key: number | null;
  value: number | null;
  readonly next: Map<string | number, Wanted>;
}

const emptyWanted = (): Wanted => ({ key: null, value: null, next: new Map() });

function findWanted(root: Wanted, path: Path): Wanted | null {
  let at: Wanted | undefined = root;
  for (const step of path) {
    at = at.next.get(step);
    if (at === undefined) return null;
  }
  return at;
}

type Sought = Pick<PlacelessFault, 'path' | 'on' | 'offset'>;

/** Offset of every fault: its own, or that of its path, or of the nearest thing around it that is there. */
function findOffsets(text: string, faults: readonly Sought[]): (number | null)[] {
  const root = emptyWanted();
  const unplaced = faults.filter((fault) => fault.offset === undefined);
  // a text that is no JSON, or nests too deep, is never walked: its faults bring their own places
  if (unplaced.length === 0) return faults.map((fault) => fault.offset ?? null);
  for (const fault of unplaced) {
    let at = root;
    for (const step of fault.path) {
      let next = at.next.get(step);
      if (next === undefined) at.next.set(step, (next = emptyWanted()));
      at = next;
    }
  }
  walkJson(text, {
    key: (path, name, offset) => {
      const parent = findWanted(root, path);
      const wanted = parent?.next.get(name);
      if (wanted !== undefined) wanted.key = offset;
    },
    value: (path, offset) => {
      const wanted = findWanted(root, path);
      if (wanted !== null) wanted.value = offset;
    },
  });
  return faults.map((fault) => {
    if (fault.offset !== undefined) return fault.offset;
    let at = root;
    let offset = root.value;
    fault.path.forEach((step, i) => {
      at = at.next.get(step)!;
      const isLast = i === fault.path.length - 1;
      const here = isLast && fault.on === 'key' ? at.key : at.value;
      if (here !== null) offset = here;
    });
    return offset;
  });
}

/** Gives every fault its path as text, its line and its column, and puts them in the order of the text. */
export function placeFaults(text: string, faults: readonly PlacelessFault[]): Fault[] {
  if (faults.length === 0) return [];
  const offsets = findOffsets(text, faults);
  const find = lineFinder(text);
  return faults
    .map((fault, i) => ({ fault, offset: offsets[i] ?? null, i }))
    .sort((a, b) => (a.offset ?? -1) - (b.offset ?? -1) || a.i - b.i)
    .map(({ fault, offset }) => {
      const place = offset === null ? null : find(offset);
      return {
        code: fault.code,
        path: formatPath(fault.path),
        line: place?.line ?? null,
        column: place?.column ?? null,
        found: fault.found,
        expected: fault.expected,
        hint: fault.hint ?? null,
      };
    });
}

/** Where values stand in the text of a car file, or what is nearest around one that is not there; null without a text. */
export function placesOf(text: string, paths: readonly Path[]): (LineAndColumn | null)[] {
  const find = lineFinder(text);
  return findOffsets(
    text,
    paths.map((path) => ({ path })),
  ).map((offset) => (offset === null ? null : find(offset)));
}
