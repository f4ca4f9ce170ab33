import type { OverlayItem } from './overlayTypes';
import type { Point } from './points';

/** An item that stands in another frame, as the ground's frame has it. */
export const movedItem = (item: OverlayItem, toGround: (point: Point) => Point): OverlayItem => {
  switch (item.kind) {
    case 'line':
    case 'hull':
      return { ...item, points: item.points.map(toGround) };
    case 'ray':
      return { ...item, from: toGround(item.from), to: toGround(item.to) };
    case 'scale':
      return { ...item, points: [toGround(item.points[0]), toGround(item.points[1])] };
    default:
      return { ...item, at: toGround(item.at) };
  }
};
