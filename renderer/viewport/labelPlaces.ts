/** A label's box on the screen [px]. */
export interface LabelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const GAP = 3;
const HEIGHT = 17;
const PADDING = 6;

export const overlaps = (a: LabelBox, b: LabelBox): boolean =>
  a.x < b.x + b.width + GAP && b.x < a.x + a.width + GAP && a.y < b.y + b.height + GAP && b.y < a.y + a.height + GAP;

const inside = (box: LabelBox, area: LabelBox): boolean =>
  box.x >= area.x && box.y >= area.y && box.x + box.width <= area.x + area.width && box.y + box.height <= area.y + area.height;

/** Where a label is tried after its best place: mirrored, lifted, lowered, farther out. */
const TRIES: readonly (readonly [number, number])[] = [
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
  [0, 1.5],
  [0, -1.5],
  [1.6, 1.4],
  [-1.6, 1.4],
  [1.6, -1.4],
  [-1.6, -1.4],
  [0.4, 2.2],
  [0.4, -2.2],
  [-0.4, 2.2],
  [-0.4, -2.2],
  [2.4, 2.6],
  [-2.4, 2.6],
  [2.4, -2.6],
  [-2.4, -2.6],
];

/** Where it is tried last: beside the point, whatever its reach [px]. */
const BESIDE: readonly (readonly [number, number])[] = [
  [22, -14],
  [-22, -14],
  [22, 14],
  [-22, 14],
  [44, -44],
  [-44, -44],
  [44, 44],
  [-44, 44],
  [80, -80],
  [-80, -80],
];

/**
 * The box of a label at the first place that is in the view and free; null where there is none, and the label is left out.
 * @param width - of its text [px]
 * @param at - the point it names [px]
 * @param reach - from the point to the label [px]: to its nearer edge across, to its middle up and down
 */
export const placeLabel = (
  width: number,
  at: readonly [number, number],
  reach: readonly [number, number],
  taken: readonly LabelBox[],
  area: LabelBox,
): LabelBox | null => {
  const wide = width + PADDING;
  const offsets = [...TRIES.map(([across, up]) => [reach[0] * across, reach[1] * up] as const), ...BESIDE];
  for (const [across, up] of offsets) {
    const middle = at[0] + across + (Math.sign(across) * wide) / 2;
    const box = { x: middle - wide / 2, y: at[1] + up - HEIGHT / 2, width: wide, height: HEIGHT };
    if (inside(box, area) && !taken.some((other) => overlaps(box, other))) return box;
  }
  return null;
};

export interface WantedLabel {
  readonly text: string;
  readonly at: readonly [number, number];
  readonly reach: readonly [number, number];
  readonly strong: boolean;
  readonly className?: string | undefined;
  readonly plated?: boolean | undefined;
  /** from the eye [mm]: of two that collide the farther is left out */
  readonly depth: number;
}

export interface PlacedLabel extends WantedLabel {
  readonly box: LabelBox;
}

/**
 * Labels that never overlap one another, what is already taken, or the edge: strong ones first, then the nearer.
 * @param widthOf - of a text [px]
 */
export const placeLabels = (
  wanted: readonly WantedLabel[],
  widthOf: (text: string) => number,
  blocked: readonly LabelBox[],
  area: LabelBox,
): readonly PlacedLabel[] => {
  const order = [...wanted].sort((a, b) => Number(b.strong) - Number(a.strong) || a.depth - b.depth);
  const taken = [...blocked];
  return order.flatMap((label) => {
    const box = placeLabel(widthOf(label.text), label.at, label.reach, taken, area);
    if (!box) return [];
    taken.push(box);
    return [{ ...label, box }];
  });
};
