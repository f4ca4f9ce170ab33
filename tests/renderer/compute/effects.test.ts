import { expect, test } from 'vitest';
import { answerBench } from '../../../renderer/compute/answerBench';
import { nextStepOf } from '../../../renderer/compute/effects';
import { setupNamed, withSetting, withSetup } from '../../../renderer/state/settings';
import { carDocument } from '../carUnderTest';

const position = { travel: 10, rollDeg: 0, rack: 0 };

test('the next step says what making it then does', () => {
  const document = carDocument('car-23');
  const bench = { document, setup: 'Baseline', compared: null };
  const now = answerBench({ ...bench, axle: 'front', position });
  if (!now.ok) throw new Error('stands');
  const next = nextStepOf(bench, 'front', position, 'plateAcross', now.value.row);
  expect(next?.setting).toBe(1);
  const made = withSetup(document, 'Made', withSetting(setupNamed(document, 'Baseline'), 'front', 'plateAcross', 'both', 1));
  const then = answerBench({
    document: made,
    setup: 'Made',
    compared: { document: made, setup: 'Baseline', name: 'Baseline' },
    axle: 'front',
    position,
  });
  if (!then.ok) throw new Error('stands');
  const camber = next?.effects.find(({ key }) => key === 'camber');
  expect(camber?.change).toBeCloseTo(then.value.difference.left['camber'] as number, 12);
  const weights = next?.effects.map(({ weight }) => weight) ?? [];
  expect(weights).toEqual([...weights].sort((a, b) => b - a));
});

test('no next step at the end of the range', () => {
  const document = carDocument('car-23');
  const end = withSetup(document, 'End', { front: { both: { plateAcross: 10 } } });
  const answer = answerBench({ document: end, setup: 'End', compared: null, axle: 'front', position });
  if (!answer.ok) throw new Error('stands');
  const bench = { document: end, setup: 'End' };
  expect(nextStepOf(bench, 'front', position, 'plateAcross', answer.value.row)).toBeNull();
});
