import type { AxleName, CarDocument } from '../../geometry/index';
import { setupNamed, withAxleValue, withSetup } from '../state/settings';
import { answerSetup } from './answerBench';
import { changesBetween, type Effect } from './effects';
import { memoLast } from './memoLast';

const STILL = { travel: 0, rollDeg: 0, rack: 0 };

/** Travel counts from where a setup stands: without ride heights every wheel centre is at its height of the drawing. */
const levelled = memoLast((document: CarDocument, setup: string): CarDocument =>
  withSetup(
    document,
    setup,
    (['front', 'rear'] as const).reduce(
      (now, axle) => (now[axle]?.rideHeight === undefined ? now : withAxleValue(now, axle, 'rideHeight', null)),
      setupNamed(document, setup),
    ),
  ),
);

/**
 * What one setup does to the readings of an axle against another, at the same wheel-centre height.
 * @returns the heaviest first; null where either cannot be there
 */
export const setupEffects = memoLast(
  (document: CarDocument, setup: string, other: CarDocument, than: string, axle: AxleName): readonly Effect[] | null => {
    const answer = (of: CarDocument, name: string) =>
      answerSetup({ document: levelled(of, name), setup: name, axle, position: STILL });
    const [now, then] = [answer(document, setup), answer(other, than)];
    return now.ok && then.ok ? changesBetween(document, then.value, now.value) : null;
  },
);
