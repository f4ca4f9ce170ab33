import type { AdjusterDocument, AxleDocument } from '../../geometry/index';
import type { OverlayContent } from './overlayContent';
import type { PointRef } from '../state/viewing';
import type { Project } from './screenLines';

/** How near the pointer must be to a joint [px]. */
const REACH = 13;

/** The named point under a place of the view; of two under it the nearer to the eye. */
export const jointAt = (content: OverlayContent, project: Project, x: number, y: number): PointRef | null => {
  let best: { readonly ref: PointRef; readonly score: number } | null = null;
  for (const { name, placed, frame } of content.axles)
    for (const side of content.sides)
      for (const [point, at] of Object.entries(placed[side].points)) {
        const place = project(frame.toGround(at));
        if (!place) continue;
        const off = Math.sqrt((place[0] - x) * (place[0] - x) + (place[1] - y) * (place[1] - y));
        // A hand's breadth in depth counts as much as a pixel beside the joint.
        const score = off + place[2] / 100;
        if (off <= REACH && (!best || score < best.score)) best = { ref: { axle: name, side, point }, score };
      }
  return best?.ref ?? null;
};

/** The named point that an adjuster moves; null where it moves a rod or a seat. */
const movedBy = (adjuster: AdjusterDocument): string | null => {
  if ('moves' in adjuster && adjuster.kind !== 'perch') return adjuster.moves;
  return adjuster.kind === 'clamp-eccentric' ? adjuster.bolt : null;
};

/** Adjusters that would move a point, but are locked, or turned by the set toe. */
export const adjustersHeldBack = (axle: AxleDocument, point: string, toeIsSet: boolean): readonly string[] => {
  const free = adjustersMoving(axle, point, toeIsSet);
  const all = Object.entries(axle.adjusters ?? {}).filter(([, adjuster]) => movedBy(adjuster) === point);
  return all.map(([name]) => name).filter((name) => !free.includes(name));
};

/** Adjusters that move a point, which a drag of it turns; locked ones and the one that the set toe turns are not among them. */
export const adjustersMoving = (axle: AxleDocument, point: string, toeIsSet: boolean): readonly string[] =>
  Object.entries(axle.adjusters ?? {}).flatMap(([name, adjuster]) => {
    if (adjuster.locked !== undefined || (toeIsSet && axle.toeAdjuster === name)) return [];
    return movedBy(adjuster) === point ? [name] : [];
  });

const STRUT_KNUCKLE = ['ballJoint', 'tieRodEnd', 'strutFoot', 'clampUpper', 'clampLower'];

/** Whether a named point of the file rides on the knuckle, so that a move of it is turned with the knuckle. */
export const isOnKnuckle = (axle: AxleDocument, point: string): boolean =>
  point === 'wheelCentre' ||
  (axle.layout === 'strut'
    ? STRUT_KNUCKLE.includes(point)
    : Object.values(axle.rods ?? {}).some(([, outer]) => outer === point)) ||
  [axle.spring, axle.damper].some((part) => part?.lower === point && part.lowerOn === 'knuckle');
