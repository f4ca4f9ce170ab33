import type { AxleName } from '../../geometry/index';
import { answerSetup, type SetupQuestion, type BenchRow } from './answerBench';
import { memoLast } from './memoLast';

const STILL = { travel: 0, rollDeg: 0, rack: 0 };

/** The setup on the bench where it stands, straight ahead; null where it does not close. */
export const standingRow = memoLast((bench: Pick<SetupQuestion, 'document' | 'setup'>, axle: AxleName): BenchRow | null => {
  const answer = answerSetup({ document: bench.document, setup: bench.setup, axle, position: STILL });
  return answer.ok ? answer.value : null;
});
