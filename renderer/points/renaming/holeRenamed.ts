import type { AxleName, CarDocument } from '../../../geometry/index';
import { renamedFrom, withNames, withPart, withValues } from './holders';

/** The car with one hole of an axle's bar under another name, in the bar and in every setup that uses it. */
export const holeRenamed = (document: CarDocument, axle: AxleName, from: string, to: string): CarDocument => {
  const renamed = renamedFrom(from, to);
  const now = withPart(document, axle, (part) =>
    withPart(part, 'antiRollBar', (bar) =>
      withPart(bar, 'holes', (holes) => holes.map((hole) => withNames(hole, ['name'], renamed))),
    ),
  );
  return withPart(now, 'setups', (setups) =>
    withValues(setups, (setup) =>
      withPart(setup, axle, (settings) =>
        withPart(settings, 'barHole', (hole) =>
          typeof hole === 'string' ? renamed(hole) : withNames(hole, ['left', 'right'], renamed),
        ),
      ),
    ),
  );
};
