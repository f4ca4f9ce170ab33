/** The edges of something in a list [px]. */
export interface ListedBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const outside = (at: number, low: number, high: number): number => Math.max(low - at, 0, at - high);

/**
 * Before which of the boxes something is dropped at a point: in the upper half of the nearest one before it, in the lower half
 * behind it. The boxes stand in their order, in one column or in several.
 * @returns 0 … the count of boxes
 */
export const dropPlace = (boxes: readonly ListedBox[], x: number, y: number): number => {
  let nearest = 0;
  let least = Infinity;
  boxes.forEach(({ left, right, top, bottom }, index) => {
    const distance = Math.hypot(outside(x, left, right), outside(y, top, bottom));
    if (distance >= least) return;
    least = distance;
    nearest = index;
  });
  const box = boxes[nearest];
  return box && y > (box.top + box.bottom) / 2 ? nearest + 1 : nearest;
};

/** By how many places a thing moves that is dropped before another of its list; 0 where it stays. */
export const movedBy = (from: number, place: number): number => (place > from ? place - 1 : place) - from;
