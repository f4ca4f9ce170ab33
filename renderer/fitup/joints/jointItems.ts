import { toRadians, type CarDocument, type JointRow, type PlacedCorner } from '../../../geometry/index';
import type { OverlayItem } from '../../viewport/overlayTypes';
import { NOTHING_SHOWN, type Shown } from '../view/FitUpView';
import { faceOf, fanItems, fanPlaces, jointFan } from './jointFan';

/** A caliper or a liner before the joint would hide it. */
const NOTHING: Shown = { ...NOTHING_SHOWN, isBare: true };

/** The picture and the numbers say the same to this [rad]: else a body turned in a way that is not known here, and nothing is drawn. */
const AGREES = toRadians(0.15);

/** The bolt, the fan that its maker allows, the rod or bore, and the tilt between: at the position where it is greatest. */
export const jointShown = (
  document: CarDocument,
  row: JointRow,
  words: { readonly rated: string; readonly tilt: string },
  corner: PlacedCorner,
): Shown => {
  const at = corner.points[row.point];
  if (!document.joints?.[row.point] || !at) return NOTHING;
  const focus = { at, reach: 26, square: null };
  const fan = jointFan(document, row, corner);
  const { tilt } = row;
  if (fan === null || tilt === null || Math.abs(fan.tilt - tilt) > AGREES) return { ...NOTHING, focus };
  const places = fanPlaces(fan, tilt);
  const items: OverlayItem[] = [
    ...fanItems(fan, tilt),
    { kind: 'label', text: 'bolt', at: places.bolt, reach: [18, -14], plated: true },
    { kind: 'label', text: words.rated, at: places.rated, reach: [-24, 24], plated: true },
    { kind: 'label', text: words.tilt, at: places.tilt, reach: [40, 34], plated: true, strong: true },
  ];
  return { ...NOTHING, items, focus: { ...focus, from: faceOf(fan, row.side) } };
};
