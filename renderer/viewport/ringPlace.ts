import { aimedEnd, type OverlayContent } from './overlayContent';
import type { LabelBox } from './labelPlaces';
import type { Pane } from './pane';

/** Room round the ring of a direction: it is taken hold of with the hand [px]. */
const ROOM = 18;

/** Where the ring may stand, best first: at its end, nearer, or behind the point, where it is pulled the other way. */
const SHARES = [1, 0.6, -1, -0.6] as const;

/** The first place for the ring that is in sight; its own where none is. @param isInSight - of a share of its reach */
export const ringShare = (isInSight: (share: number) => boolean): number => SHARES.find(isInSight) ?? 1;

/** Where the ring would be in a view [px]; null where it cannot be seen. */
export const ringAt = (content: OverlayContent, pane: Pane, share: number): readonly [number, number] | null => {
  const end = aimedEnd(content, share);
  const place = end && pane.project(end);
  return place ? [place[0], place[1]] : null;
};

/** Whether a place has room round it in the view, and nothing stands over it. */
export const isClear = (
  place: readonly [number, number] | null,
  { width, height }: { readonly width: number; readonly height: number },
  blocked: readonly LabelBox[],
): boolean => {
  if (!place) return false;
  const [x, y] = place;
  if (x < ROOM || y < ROOM || x > width - ROOM || y > height - ROOM) return false;
  return !blocked.some(
    (box) => x > box.x - ROOM && x < box.x + box.width + ROOM && y > box.y - ROOM && y < box.y + box.height + ROOM,
  );
};
