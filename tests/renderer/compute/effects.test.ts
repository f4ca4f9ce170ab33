import { expect, test } from 'vitest';
import { answerBench, answerSetup } from '../../../renderer/compute/answerBench';
import { AXLE_SCALES, HELD_AXLE_VALUES } from '../../../renderer/compute/axleValues';
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
  if (next?.kind !== 'step') throw new Error('there is a step');
  expect(next.setting).toBe(1);
  const made = withSetup(document, 'Made', withSetting(setupNamed(document, 'Baseline'), 'front', 'plateAcross', 'both', 1));
  const then = answerBench({
    document: made,
    setup: 'Made',
    compared: { document: made, setup: 'Baseline', name: 'Baseline' },
    axle: 'front',
    position,
  });
  if (!then.ok) throw new Error('stands');
  const camber = next.effects.find(({ key }) => key === 'camber');
  expect(camber?.change).toBeCloseTo(then.value.difference.left['camber'] as number, 12);
  const weights = next.effects.map(({ weight }) => weight);
  expect(weights).toEqual([...weights].sort((a, b) => b - a));
});

test('the end of the range is said, an unknown adjuster is nothing', () => {
  const document = carDocument('car-23');
  const end = withSetup(document, 'End', { front: { both: { plateAcross: 10 } } });
  const answer = answerBench({ document: end, setup: 'End', compared: null, axle: 'front', position });
  if (!answer.ok) throw new Error('stands');
  const bench = { document: end, setup: 'End' };
  expect(nextStepOf(bench, 'front', position, 'plateAcross', answer.value.row)).toEqual({ kind: 'end' });
  expect(nextStepOf(bench, 'front', position, 'no such part', answer.value.row)).toBeNull();
});

test('a step of toe and of the ride height say what they do, from where they stand', () => {
  const document = withSetup(carDocument('car-23'), 'Set', { front: { setToe: 0.1, rideHeight: -4 } });
  const bench = { document, setup: 'Set' };
  const now = answerSetup({ ...bench, axle: 'front', position });
  if (!now.ok) throw new Error('stands');
  for (const [held, name, setting, key, owner] of [
    [HELD_AXLE_VALUES.setToe, 'setToe', 0.11, 'toe', 'left'],
    [HELD_AXLE_VALUES.rideHeight, 'rideHeight', -3, 'rollCentreHeight', 'both'],
  ] as const) {
    const next = nextStepOf(bench, 'front', position, held, now.value);
    if (next?.kind !== 'step') throw new Error('there is a step');
    expect(next.setting).toBeCloseTo(setting, 12);
    const made = withSetup(document, 'Set', { front: { setToe: 0.1, rideHeight: -4, [name]: setting } });
    const then = answerSetup({ ...bench, document: made, axle: 'front', position });
    if (!then.ok) throw new Error('stands');
    const change = (then.value[owner][key] as number) - (now.value[owner][key] as number);
    expect(change).not.toBe(0);
    expect(next.effects.find((one) => one.key === key)?.change).toBeCloseTo(change, 12);
  }
  const high = withSetup(document, 'Set', { front: { setToe: AXLE_SCALES.setToe.range } });
  expect(nextStepOf({ document: high, setup: 'Set' }, 'front', position, HELD_AXLE_VALUES.setToe, now.value)).toEqual({
    kind: 'end',
  });
});
