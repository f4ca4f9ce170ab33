import type { AxleName, CarDocument } from '../../geometry/index';
import { answerSetup } from './answerBench';
import { changesBetween, type Effect } from './effects';
import { memoLast } from './memoLast';

const STILL = { travel: 0, rollDeg: 0, rack: 0 };

/**
 * What one setup does to the readings of an axle against another, each standing as it stands, its ride heights included: the
 * differences that the bench shows between the two.
 * @returns the heaviest first; null where either cannot be there
 */
export const setupEffects = memoLast(
  (document: CarDocument, setup: string, other: CarDocument, than: string, axle: AxleName): readonly Effect[] | null => {
    const answer = (of: CarDocument, name: string) => answerSetup({ document: of, setup: name, axle, position: STILL });
    const [now, then] = [answer(document, setup), answer(other, than)];
    return now.ok && then.ok ? changesBetween(document, then.value, now.value) : null;
  },
);
