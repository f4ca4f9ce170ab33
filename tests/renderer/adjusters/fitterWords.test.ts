import { describe, expect, test } from 'vitest';
import type { AdjusterDocument } from '../../../geometry/index';
import { clockSeen, fieldClockWords, hourWords } from '../../../renderer/adjusters/clockWords';
import { fitterWords, fitterWordsOfSides, nameOfKey, shimsFor, turnsText } from '../../../renderer/adjusters/fitterWords';
import { inSentence } from '../../../renderer/adjusters/useAdjuster';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';

const bush: AdjusterDocument = {
  kind: 'offset-bushing',
  moves: 'armRear',
  axis: [0, 0, 1],
  twelve: [0, 1, 0],
  offset: 6,
  index: 30,
};

describe('clocks', () => {
  test('run with the number looking along the axis, against it from the other end', () => {
    expect(clockSeen(330, [0, 0, 1], undefined, 'left')).toBe(330);
    // The axis points up: from below the fitter looks along it, from above against it.
    expect(clockSeen(330, [0, 0, 1], 'below', 'left')).toBe(330);
    expect(clockSeen(330, [0, 0, 1], 'above', 'left')).toBe(30);
  });
  test('are mirrored on the right, seen from the same place', () => {
    expect(clockSeen(330, [0, 0, 1], undefined, 'right')).toBe(30);
    expect(clockSeen(0, [0, 0, 1], 'above', 'right')).toBe(0);
  });
  test('are said to the nearest half hour', () => {
    expect([0, 330, 45, 352, 353].map(hourWords)).toEqual([
      '12 o’clock',
      '11 o’clock',
      'half past 1',
      'half past 11',
      '12 o’clock',
    ]);
  });
});

describe('what the fields of a bushing count', () => {
  test('is said where it is not the clock that is seen: mirrored on the right, against an axis that points at the eye', () => {
    expect(fieldClockWords(bush, { left: 330, right: 330 })).toBe('');
    expect(fieldClockWords(bush, { left: 30, right: 60 })).toBe('; counted as in the file: right 60°');
    expect(fieldClockWords({ ...bush, seenFrom: 'above' }, { left: 30, right: 60 })).toBe('; counted as in the file: left 30°');
    expect(fieldClockWords({ ...bush, seenFrom: 'above' }, { left: 330, right: 330 })).toBe('; counted as in the file: 330°');
    // top and bottom are the same in the mirror, and a hole in the middle has no clock
    expect(fieldClockWords(bush, { left: 30, right: 180 })).toBe('');
    expect(fieldClockWords(bush, { left: 0, right: 360 })).toBe('');
    expect(fieldClockWords(bush, { left: 30, right: null })).toBe('');
  });
});

describe("the fitter's words", () => {
  test('of a bushing name both sides, degrees and marks', () => {
    expect(fitterWords(bush, 330, 1, STANDARD_UNITS).short).toBe('hole at 11 o’clock');
    expect(fitterWords(bush, 330, 1, STANDARD_UNITS).detail).toContain('the right one at 1 o’clock');
    expect(fitterWords(bush, 330, 1, STANDARD_UNITS).detail).toContain('1 mark before 12');
    expect(fitterWords(bush, null, 1, STANDARD_UNITS).short).toBe('concentric');
  });
  test('of a slide say the way it goes, in mm whatever the file has', () => {
    const plate: AdjusterDocument = { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-1, 1], step: 0.1 };
    expect(fitterWords(plate, -6, 1, STANDARD_UNITS).short).toBe('6 mm inboard');
    expect(fitterWords(plate, 0.25, 25.4, STANDARD_UNITS).short).toBe('6.35 mm outboard');
    const back: AdjusterDocument = { ...plate, along: [-1, 0, 0.1] };
    expect(fitterWords(back, 4, 1, STANDARD_UNITS).short).toBe('4 mm rearward');
    expect(fitterWords(back, -4, 1, STANDARD_UNITS).short).toBe('4 mm forward');
  });
  test('of shims say which ones', () => {
    const stack: AdjusterDocument = {
      kind: 'slide',
      moves: 'tieRodEnd',
      along: [0, 0, -1],
      range: [0, 6],
      step: 0.5,
      shims: [2, 1, 0.5],
    };
    expect(fitterWords(stack, 3.5, 1, STANDARD_UNITS)).toEqual({ short: '3.5 mm down', detail: 'shims 2 + 1 + 0.5' });
    expect(shimsFor(0.3, [2, 1])).toBeNull();
  });
  test('of a cam bolt count its marks and say how far the bolt went', () => {
    const bolt: AdjusterDocument = { kind: 'eccentric-bolt', moves: 'armFront', slot: [0, 1, 0], throw: 5, mark: 15 };
    expect(fitterWords(bolt, 30, 1, STANDARD_UNITS)).toEqual({
      short: '2 marks outboard',
      detail: 'bolt 2.5 mm outboard of the slot’s middle',
    });
    expect(fitterWords(bolt, -15, 1, STANDARD_UNITS).short).toBe('1 mark inboard');
  });
  test('of a camber bolt say where the top goes', () => {
    const clamp: AdjusterDocument = {
      kind: 'clamp-eccentric',
      pivot: 'clampUpper',
      bolt: 'clampLower',
      axis: [1, 0, 0],
      throw: 3,
      mark: 15,
    };
    expect(fitterWords(clamp, 15, 1, STANDARD_UNITS).short).toBe('1 mark, top in');
    expect(fitterWords(clamp, -30, 1, STANDARD_UNITS).short).toBe('2 marks, top out');
  });
  test('of a turnbuckle count eighths or flats', () => {
    const rod: AdjusterDocument = { kind: 'turnbuckle', rod: 'tieRod', perTurn: 1.5, range: [-8, 8], step: 0.125 };
    expect(fitterWords(rod, -0.625, 1, STANDARD_UNITS)).toEqual({ short: '⅝ turn shorter', detail: 'rod 0.94 mm shorter' });
    expect(fitterWords({ ...rod, flats: 6 }, 0.5, 1, STANDARD_UNITS).short).toBe('3 flats longer');
    expect([2.25, 1, 0.5, 0.91].map(turnsText)).toEqual(['2¼', '1', '½', '0.91']);
  });
  test('of a perch say which way the ring went', () => {
    const perch: AdjusterDocument = { kind: 'perch', perTurn: 1.5, range: [-6, 6], step: 0.25 };
    expect(fitterWords(perch, 2.25, 1, STANDARD_UNITS)).toEqual({ short: '2¼ turns up', detail: 'seat 3.4 mm up of the datum' });
  });
});

test('keys read as words', () => {
  expect(nameOfKey('plateAcross')).toBe('Plate across');
  expect(nameOfKey('rear_bush-2')).toBe('Rear bush 2');
});

const SIX: readonly AdjusterDocument[] = [
  bush,
  { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-20, 20], step: 1 },
  { kind: 'eccentric-bolt', moves: 'armFront', slot: [0, 1, 0], throw: 5, mark: 15 },
  { kind: 'clamp-eccentric', pivot: 'clampUpper', bolt: 'clampLower', axis: [1, 0, 0], throw: 3, mark: 15 },
  { kind: 'turnbuckle', rod: 'tieRod', perTurn: 1.5, range: [-20, 20], step: 0.125 },
  { kind: 'perch', perTurn: 1.5, range: [-20, 20], step: 0.25 },
];

test.each(SIX.map((adjuster) => [adjuster.kind, adjuster] as const))(
  'of a %s say both sides where they differ',
  (_, adjuster) => {
    const { short, detail } = fitterWordsOfSides(adjuster, { left: 15, right: -15 }, 1, STANDARD_UNITS);
    const [left, right] = (['left', 'right'] as const).map((side) =>
      fitterWords(adjuster, side === 'left' ? 15 : -15, 1, STANDARD_UNITS, undefined, side),
    );
    if (adjuster.kind !== 'offset-bushing') expect(short).toBe(`left ${left?.short}; right ${right?.short}`);
    if (left?.detail !== right?.detail) expect(detail).toBe(`left ${left?.detail}; right ${right?.detail}`);
    expect(fitterWordsOfSides(adjuster, { left: 15, right: 15 }, 1, STANDARD_UNITS)).toEqual(
      fitterWords(adjuster, 15, 1, STANDARD_UNITS),
    );
  },
);

test('the right one of two bushings is read on its own, mirrored clock', () => {
  expect(fitterWordsOfSides(bush, { left: 330, right: 300 }, 1, STANDARD_UNITS).short).toBe(
    'left hole at 11 o’clock; right hole at 2 o’clock',
  );
});

test('a name in a sentence keeps its own capitals', () => {
  expect(['Top plate, across', 'B7 bolt', 'Λίμνη', 'ARB link', 'rear bush'].map(inSentence)).toEqual([
    'top plate, across',
    'B7 bolt',
    'Λίμνη',
    'ARB link',
    'rear bush',
  ]);
});

test('apart, a clock that is mirrored is said of each side, though both count the same; other parts have one set of words', () => {
  const same = { left: 300, right: 300 };
  expect(fitterWordsOfSides(bush, same, 1, STANDARD_UNITS).short).toBe('hole at 10 o’clock');
  const apart = fitterWordsOfSides(bush, same, 1, STANDARD_UNITS, undefined, true);
  expect(apart.short).toBe('left hole at 10 o’clock; right hole at 2 o’clock');
  expect(apart.detail).toMatch(/300°.*right 60°/);
  expect(fieldClockWords(bush, same, true)).toBe('; counted as in the file: right 300°');
  const top = { left: 180, right: 180 };
  expect(fitterWordsOfSides(bush, top, 1, STANDARD_UNITS, undefined, true).short).toBe('hole at 6 o’clock');
  const plate: AdjusterDocument = { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-9, 9], step: 1 };
  expect(fitterWordsOfSides(plate, { left: -6, right: -6 }, 1, STANDARD_UNITS, undefined, true).short).toBe('6 mm inboard');
});
