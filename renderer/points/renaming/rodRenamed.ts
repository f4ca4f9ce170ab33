import type { AdjusterDocument, AxleDocument, AxleName, CarDocument } from '../../../geometry/index';
import { renamedFrom, withKey, withNames, withPart, withValues, type Renamed } from './holders';

const inAdjuster = (adjuster: AdjusterDocument, renamed: Renamed): AdjusterDocument =>
  adjuster.kind === 'turnbuckle' ? withNames(adjuster, ['rod'], renamed) : adjuster;

const inAxle = (axle: AxleDocument, from: string, to: string): AxleDocument => {
  const renamed = renamedFrom(from, to);
  let now = withPart(axle, 'rods', (rods) => withKey(rods, from, to));
  now = withPart(now, 'steering', (steering) => withNames(steering, ['rod'], renamed));
  now = withPart(now, 'spring', (spring) => withNames(spring, ['lowerOn'], renamed));
  now = withPart(now, 'damper', (damper) => withNames(damper, ['lowerOn'], renamed));
  now = withPart(now, 'antiRollBar', (bar) => withNames(bar, ['linkOn'], renamed));
  now = withPart(now, 'sections', (sections) => withKey(sections, from, to));
  return withPart(now, 'adjusters', (adjusters) => withValues(adjusters, (adjuster) => inAdjuster(adjuster, renamed)));
};

/** The car with one rod of an axle under another name, wherever it steers, carries, is turned or is drawn. */
export const rodRenamed = (document: CarDocument, axle: AxleName, from: string, to: string): CarDocument => {
  const renamed = renamedFrom(from, to);
  const other = document[axle === 'front' ? 'rear' : 'front'];
  const isAmbiguous = other?.rods !== undefined && Object.hasOwn(other.rods, from);
  const isHere = (entry: { readonly axle?: AxleName }): boolean =>
    entry.axle === undefined ? !isAmbiguous : entry.axle === axle;
  const parts = document.parts ?? {};
  let now = withPart(document, axle, (part) => inAxle(part, from, to));
  now = withPart(now, 'parts', (all) =>
    withValues(all, (part) => {
      if (!isHere(part)) return part;
      const carried = withNames(part, ['on'], renamed);
      // a part of the same name goes before the rod
      return Object.hasOwn(parts, from) ? carried : withPart(carried, 'touches', (touches) => touches.map(renamed));
    }),
  );
  now = withPart(now, 'joints', (joints) =>
    withValues(joints, (joint, point) => {
      const isOn = joint.axle === undefined ? document[axle]?.points[point] !== undefined : joint.axle === axle;
      return isOn ? withNames(joint, ['boltOn', 'boreOn', 'rod'], renamed) : joint;
    }),
  );
  return withPart(now, 'spans', (spans) =>
    withValues(spans, (span) => (isHere(span) ? withNames(span, ['fromOn', 'toOn'], renamed) : span)),
  );
};
