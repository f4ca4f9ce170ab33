import { describe, expect, test } from 'vitest';
import { alongAim, aimRangeOf } from '../../../renderer/points/fields/aimRange';

const POINTS = ['strutTop', 'armFront', 'armRear'];
const rangeOf = (part: Readonly<Record<string, unknown>>, setting: number | null = null, mm = 1) =>
  aimRangeOf(part, 'front', POINTS, mm, setting);

describe('the range of an adjuster that is being made', () => {
  const slide = { kind: 'slide', moves: 'strutTop', along: [0, 2, 0], range: [-10, 5], step: 5 };

  test('a slide: every step from end to end, in mm whatever the file’s unit; the ends alone before its step is given', () => {
    expect(rangeOf(slide)).toEqual({
      from: { axle: 'front', side: 'left', point: 'strutTop' },
      direction: [0, 2, 0],
      marks: [-10, -5, 0, 5],
      design: 0,
    });
    expect(rangeOf({ ...slide, range: [-0.5, 0.25], step: undefined }, null, 25.4)?.marks).toEqual([-12.7, 6.35]);
  });

  test('while it is tried the range stays where it is, and the point goes along it', () => {
    const tried = rangeOf(slide, -5);
    expect([tried?.marks, tried?.design]).toEqual([[-5, 0, 5, 10], 5]);
  });

  test('a cam: throw · sin of its marks, so that the last steps are the smallest', () => {
    const cam = { kind: 'eccentric-bolt', moves: 'armFront', slot: [0, 1, 0], throw: 6, mark: 30 };
    const marks = rangeOf(cam)?.marks ?? [];
    const expected = [-6, -6 * Math.sqrt(0.75), -3, 0, 3, 6 * Math.sqrt(0.75), 6];
    expect(marks).toHaveLength(expected.length);
    expected.forEach((at, index) => expect(marks[index]).toBeCloseTo(at, 9));
    expect(alongAim(cam, 90)).toBeCloseTo(6, 12);
  });

  test('a bushing: as far as its hole comes along twelve, places passed twice counted once', () => {
    const bushing = { kind: 'offset-bushing', moves: 'armRear', axis: [1, 0, 0], twelve: [0, 0, 1], offset: 4, index: 90 };
    const marks = rangeOf(bushing)?.marks ?? [];
    expect(marks).toHaveLength(3);
    [-4, 0, 4].forEach((at, index) => expect(marks[index]).toBeCloseTo(at, 9));
  });

  test('is not drawn while anything of it is missing or is no range, and not for a part that aims an axis', () => {
    for (const part of [
      { ...slide, moves: 'nowhere' },
      { ...slide, along: undefined },
      { ...slide, along: 'spindle' },
      { ...slide, along: [0, 0, 0] },
      { ...slide, range: undefined },
      { ...slide, range: [5, -5] },
      { kind: 'turnbuckle', rod: 'tieRod', perTurn: 1.5, range: [-5, 5], step: 0.5 },
      { kind: 'clamp-eccentric', pivot: 'clampLower', bolt: 'clampUpper', axis: [1, 0, 0], throw: 3, mark: 15 },
      {},
    ])
      expect(rangeOf(part)).toBeNull();
  });
});
