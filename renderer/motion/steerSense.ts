import type { AxleName } from '../../geometry/index';
import { answerSetup, type SetupQuestion } from '../compute/answerBench';
import { memoLast } from '../compute/memoLast';

/** Rack travel that is tried [mm]: small, so that it is within every rack's reach. */
const TRIED = 2;

/** The words at the two ends of the steer rule. */
export interface LockWords {
  readonly min: string;
  readonly max: string;
}

const LEFT = 'left lock';
const RIGHT = 'right lock';

/**
 * Which end of the steer rule turns the wheels to the left, by the car itself: the steer angle, + to the left, a little
 * either side of straight ahead.
 * @returns null where the axle does not close there or the rack does not turn its wheels
 */
export const steerSense = memoLast((bench: Pick<SetupQuestion, 'document' | 'setup'>, axle: AxleName): LockWords | null => {
  const steerAt = (rack: number): number | null => {
    const position = { travel: 0, rollDeg: 0, rack };
    const answer = answerSetup({ document: bench.document, setup: bench.setup, axle, position });
    const angle = answer.ok ? answer.value.left['steerAngle'] : null;
    return typeof angle === 'number' ? angle : null;
  };
  const [low, high] = [steerAt(-TRIED), steerAt(TRIED)];
  if (low === null || high === null || Math.abs(high - low) < 1e-6) return null;
  return high > low ? { min: RIGHT, max: LEFT } : { min: LEFT, max: RIGHT };
});
