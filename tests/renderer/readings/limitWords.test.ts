import { expect, test } from 'vitest';
import { comparedMarks, spareWords } from '../../../renderer/readings/LimitBars';
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

test('the compared setup stands in a limit once, or with each of its wheels: the left above the bar', () => {
  expect(comparedMarks({ left: -1, right: -1 }).map(({ value }) => value)).toEqual([-1]);
  expect(comparedMarks({ left: null, right: null })).toEqual([]);
  expect(comparedMarks({ left: null, right: 2 }).map(({ value }) => value)).toEqual([2]);
  const [left, right] = comparedMarks({ left: -1, right: -1.5 });
  expect([left?.value, right?.value]).toEqual([-1, -1.5]);
  expect([left?.d, right?.d]).toEqual([expect.stringMatching(/^M0 3\.5/), expect.stringMatching(/^M0 12\.5/)]);
});
