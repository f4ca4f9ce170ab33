/** A label's box on the screen [px]. */
export interface LabelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const GAP = 4;
const HEIGHT = 17;
const CHARACTER = 6.3;

const overlaps = (a: LabelBox, b: LabelBox): boolean =>
  a.x < b.x + b.width + GAP && b.x < a.x + a.width + GAP && a.y < b.y + b.height + GAP && b.y < a.y + a.height + GAP;

const inside = (box: LabelBox, area: LabelBox): boolean =>
  box.x >= area.x && box.y >= area.y && box.x + box.width <= area.x + area.width && box.y + box.height <= area.y + area.height;

/** Where a label is tried after its best place: mirrored, lifted, lowered. */
const TRIES: readonly (readonly [number, number])[] = [
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
  [1.6, 1.4],
  [-1.6, 1.4],
  [0.4, 2.2],
  [0.4, -2.2],
];

/**
 * The box of a label at the first place that is in the view and free; null where there is none, and the label is left out.
 * @param at - the point it names [px] @param reach - from the point to the label's middle [px]
 */
export const placeLabel = (
  text: string,
  at: readonly [number, number],
  reach: readonly [number, number],
  taken: readonly LabelBox[],
  area: LabelBox,
): LabelBox | null => {
  const width = text.length * CHARACTER + 8;
  for (const [across, up] of TRIES) {
    const middle = at[0] + reach[0] * across + (reach[0] === 0 ? 0 : (Math.sign(reach[0] * across) * width) / 2);
    const box = { x: middle - width / 2, y: at[1] + reach[1] * up - HEIGHT / 2, width, height: HEIGHT };
    if (inside(box, area) && !taken.some((other) => overlaps(box, other))) return box;
  }
  return null;
};
