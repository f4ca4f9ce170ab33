/** A rectangle in the window [px]. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface FaultSpace {
  readonly field: Box;
  readonly note: { readonly width: number; readonly height: number };
  readonly window: { readonly width: number; readonly height: number };
  /** controls round the field that the note should leave free */
  readonly controls: readonly Box[];
}

const GAP = 4;
/** Kept free at the window's edges [px]. */
const EDGE = 6;

const meet = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/**
 * Where the note of a refused field goes: under it, over it or beside it, the first of these that is inside the window and
 * covers no other control; where none is, the first that is inside the window.
 */
export const faultPlace = ({ field, note, window, controls }: FaultSpace): { readonly left: number; readonly top: number } => {
  const along = Math.max(EDGE, Math.min(field.right - note.width, window.width - note.width - EDGE));
  const level = Math.max(EDGE, Math.min(field.top, window.height - note.height - EDGE));
  const places = [
    { left: along, top: field.bottom + GAP },
    { left: along, top: field.top - GAP - note.height },
    { left: field.right + GAP, top: level },
    { left: field.left - GAP - note.width, top: level },
  ]
    .map(({ left, top }) => ({ left, top, right: left + note.width, bottom: top + note.height }))
    .filter(
      ({ left, top, right, bottom }) =>
        left >= EDGE && top >= EDGE && right <= window.width - EDGE && bottom <= window.height - EDGE,
    );
  const place = places.find((one) => !controls.some((control) => meet(one, control))) ?? places[0];
  return place ? { left: place.left, top: place.top } : { left: along, top: EDGE };
};
