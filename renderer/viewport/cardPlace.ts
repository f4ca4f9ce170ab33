/** Where the card of a chosen point stands in the view. */
export type CardPlace = 'lowerLeft' | 'lowerRight' | 'upperLeft';
const PLACES: readonly CardPlace[] = ['lowerLeft', 'lowerRight', 'upperLeft'];

interface Size {
  readonly width: number;
  readonly height: number;
}

/** From the view's edges to the card, and what is kept free round the point [px]. */
const EDGE = 10;
const FREE = 18;

const covers = (place: CardPlace, [x, y]: readonly [number, number], card: Size, view: Size): boolean => {
  const left = place === 'lowerRight' ? view.width - EDGE - card.width : EDGE;
  const top = place === 'upperLeft' ? EDGE : view.height - EDGE - card.height;
  return x > left - FREE && x < left + card.width + FREE && y > top - FREE && y < top + card.height + FREE;
};

/**
 * The place where the card does not lie over its point: the present one as long as it is clear, and where all would cover it.
 * @param point - [px of the view]
 */
export const cardPlace = (now: CardPlace, point: readonly [number, number], card: Size, view: Size): CardPlace =>
  [now, ...PLACES].find((place) => !covers(place, point, card, view)) ?? now;
