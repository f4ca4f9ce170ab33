import { nameOfKey } from '../adjusters/fitterWords';
import { envelopeItems, axisItems, ghostItems, outlineItems, skeleton } from './wheelItems';
import { floorItems, instantCentreItems, rollAxisItems, rollCentreItems } from './centreItems';
import { hiddenItems } from './hiddenItems';
import type { OverlayContent } from './overlayContent';
import type { OverlayItem } from './overlayTypes';
import { tiltItems } from './tiltItems';
import { aimItems, chosenItems, nameItems, rangeItems, tapeItems } from './pointItems';

/** The links as lines between crosses, named as the file names them: views side by side on another page. */
const lineItems = (content: OverlayContent): readonly OverlayItem[] => {
  const items: OverlayItem[] = [];
  for (const axle of content.axles)
    for (const side of content.sides) {
      const { toGround } = axle.frame;
      for (const points of skeleton(axle.placed[side]))
        items.push({ kind: 'line', className: 'link', points: points.map(toGround) });
      for (const point of Object.values(axle.placed[side].points))
        items.push({ kind: 'mark', className: 'joint', shape: 'cross', at: toGround(point) });
      items.push(...nameItems(axle, side, (name) => name));
    }
  items.push(...tapeItems(content), ...rangeItems(content), ...aimItems(content), ...chosenItems(content));
  return items;
};

/** Everything drawn over the solids, back to front. */
export const overlayItems = (content: OverlayContent): readonly OverlayItem[] => {
  const { axles, sides, view, scope, overlays, held, schematic } = content;
  const on = (name: OverlayContent['overlays'][number]): boolean => overlays.includes(name);
  const both = sides.length > 1;
  if (schematic) return lineItems(content);
  const items: OverlayItem[] = [...floorItems(content)];
  if (on('envelope')) items.push(...envelopeItems(content));
  for (const [index, axle] of axles.entries())
    for (const side of sides) {
      if (on('ghost')) items.push(...ghostItems(axle, side, scope !== 'car'));
      items.push(...outlineItems(axle, side), ...hiddenItems(content, axle, side));
      if (on('instantCentres')) items.push(...instantCentreItems(axle, side, view));
      // Both sides of both axles would only cover each other with the same words.
      if (on('steeringAxis')) items.push(...axisItems(axle, side, !both && view !== 'top'));
      if (on('pointNames') && index === 0) items.push(...nameItems(axle, side, nameOfKey));
    }
  if (on('rollCentre') && (both || view === 'front' || view === 'corner' || view === 'side')) {
    // Beside one corner the roll centre is shown where it matters: in the view that looks along the car.
    if (both || view === 'front') axles.forEach((axle) => items.push(...rollCentreItems(axle, content)));
    if (scope === 'car') items.push(...rollAxisItems(content));
  }
  items.push(...tiltItems(content));
  const first = axles[0];
  const point = held?.point === null || held === null ? undefined : first?.placed[sides[0] ?? 'left'].points[held.point];
  if (held && point && first)
    items.push({ kind: 'label', text: held.label, at: first.frame.toGround(point), reach: [-44, -46], strong: true });
  items.push(...tapeItems(content), ...rangeItems(content), ...aimItems(content), ...chosenItems(content));
  return items;
};
