import { expect, test } from 'vitest';
import { spareWords } from '../../../renderer/readings/LimitBars';
import { isMoved, positionWords } from '../../../renderer/readings/positionWords';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';

test('a limit that is judged standing says so once the car is moved', () => {
  expect(spareWords({ of: 'camber', spare: 1.54 }, false, STANDARD_UNITS)).toBe('1.54 spare');
  expect(spareWords({ of: 'camber', spare: 1.54 }, true, STANDARD_UNITS)).toBe('standing: 1.54 spare');
  expect(spareWords({ of: 'camber', spare: -0.2 }, true, STANDARD_UNITS)).toBe('standing: 0.20 out');
  expect(spareWords({ of: 'camber', spare: null }, true, STANDARD_UNITS)).toBe('standing: no value');
});

test('a position is moved by any of its three motions', () => {
  const still = { travel: 0, rollDeg: 0, rack: 0 };
  expect(isMoved(still)).toBe(false);
  expect(positionWords(still, STANDARD_UNITS)).toBe('standing');
  for (const part of [{ travel: 1 }, { rollDeg: -0.1 }, { rack: 2 }]) expect(isMoved({ ...still, ...part })).toBe(true);
  expect(positionWords({ travel: -10, rollDeg: 1.5, rack: 20 }, STANDARD_UNITS)).toBe(
    'at bump −10.0 mm, roll +1.50°, rack +20.0 mm',
  );
});
