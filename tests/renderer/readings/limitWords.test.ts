import { expect, test } from 'vitest';
import { spareWords } from '../../../renderer/readings/LimitBars';
import { isMoved, positionWords } from '../../../renderer/readings/positionWords';

test('a limit that is judged standing says so once the car is moved', () => {
  expect(spareWords({ of: 'camber', spare: 1.54 }, false)).toBe('1.54 spare');
  expect(spareWords({ of: 'camber', spare: 1.54 }, true)).toBe('standing: 1.54 spare');
  expect(spareWords({ of: 'camber', spare: -0.2 }, true)).toBe('standing: 0.20 out');
  expect(spareWords({ of: 'camber', spare: null }, true)).toBe('standing: no value');
});

test('a position is moved by any of its three motions', () => {
  const still = { travel: 0, rollDeg: 0, rack: 0 };
  expect(isMoved(still)).toBe(false);
  expect(positionWords(still)).toBe('standing');
  for (const part of [{ travel: 1 }, { rollDeg: -0.1 }, { rack: 2 }]) expect(isMoved({ ...still, ...part })).toBe(true);
  expect(positionWords({ travel: -10, rollDeg: 1.5, rack: 20 })).toBe('at bump −10.0, roll +1.50°, rack +20.0');
});
