import { wordsBox, type Drawn, type SheetBox, type SheetPoint, type WordPlace, type Words } from './sheet';

/** Words with the place that was found for them; a leader where that is away from what they name. */
export interface PlacedWords {
  readonly text: string;
  readonly place: WordPlace;
  readonly leader: readonly [SheetPoint, SheetPoint] | null;
}

/** A line through words costs this much, a place later in their list this, one with a leader this. */
const STRUCK = 1;
const LATER = 0.15;
const LED = 0.85;

/** Rings about what is named on which a place is looked for last, and the directions on each [mm]. */
const RINGS = [9, 15, 22, 30, 40, 52, 66];
const DIRECTIONS = 12;

const meets = (a: SheetBox, b: SheetBox): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
const isInside = (box: SheetBox, area: SheetBox): boolean =>
  box.x0 >= area.x0 && box.x1 <= area.x1 && box.y0 >= area.y0 && box.y1 <= area.y1;

/** Whether a piece of a line runs through a box. */
const runsThrough = (a: SheetPoint, b: SheetPoint, box: SheetBox): boolean => {
  let [from, to] = [0, 1];
  for (const [start, end, low, high] of [
    [a[0], b[0], box.x0, box.x1],
    [a[1], b[1], box.y0, box.y1],
  ] as const) {
    const run = end - start;
    if (run === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [first, second] = [(low - start) / run, (high - start) / run];
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  return from < to;
};

const isStruck = (box: SheetBox, line: readonly SheetPoint[]): boolean =>
  line.some((point, index) => {
    const before = line[index - 1];
    return before !== undefined && runsThrough(before, point, box);
  });

const ringPlaces = ({ names: [x, y] }: Words): readonly WordPlace[] =>
  RINGS.flatMap((radius) =>
    Array.from({ length: DIRECTIONS }, (_, index): WordPlace => {
      const turn = (2 * Math.PI * index) / DIRECTIONS;
      const across = Math.cos(turn);
      return { at: [x + radius * across, y - radius * Math.sin(turn) + 1.2], anchor: across < 0 ? 'end' : 'start' };
    }),
  );

/** Between a leader and its words [mm]. */
const CLEAR = 0.7;

/** The nearest point beside a box, a little clear of it. */
const edgeOf = (box: SheetBox, [x, y]: SheetPoint): SheetPoint => [
  Math.min(Math.max(x, box.x0 - CLEAR), box.x1 + CLEAR),
  Math.min(Math.max(y, box.y0), box.y1),
];

/**
 * Places for words on a sheet, none on another: the first of their own places that no line strikes, else the least bad one, else one
 * near by with a leader. All of them are written; those that come first choose first.
 * @param area - in which they have to stand
 */
export const placeWords = (
  wanted: readonly Words[],
  drawn: readonly Drawn[],
  area: SheetBox,
): ReadonlyMap<Words, PlacedWords> => {
  const lines = drawn.flatMap(({ lines: own }) => own);
  const taken: SheetBox[] = [];
  const placed = new Map<Words, PlacedWords>();
  for (const words of wanted) {
    const places = [
      ...words.places.map((place, index) => ({ place, cost: LATER * index, isLed: false })),
      ...ringPlaces(words).map((place, index) => ({ place, cost: LED + LATER * (index / DIRECTIONS), isLed: true })),
    ];
    let best: { readonly place: WordPlace; readonly box: SheetBox; readonly cost: number; readonly isLed: boolean } | null = null;
    for (const { place, cost, isLed } of places) {
      if (best !== null && cost >= best.cost) continue;
      const box = wordsBox(words.text, place);
      if (!isInside(box, area) || taken.some((other) => meets(box, other))) continue;
      const struck = cost + STRUCK * lines.filter((line) => isStruck(box, line)).length;
      if (best === null || struck < best.cost) best = { place, box, cost: struck, isLed };
    }
    const place = best?.place ?? words.places[0];
    if (!place) continue;
    taken.push(best?.box ?? wordsBox(words.text, place));
    placed.set(words, {
      text: words.text,
      place,
      leader: best?.isLed ? [words.names, edgeOf(best.box, words.names)] : null,
    });
  }
  return placed;
};
