import { describe, expect, test } from 'vitest';
import { contradictionsIn, findReading, type WantedDocument } from '../../../geometry/index';

const found = (...wanted: readonly (WantedDocument | undefined)[]): readonly (readonly number[])[] =>
  contradictionsIn(wanted, (reading) => findReading(reading)?.of === 'corner').map(({ lines }) => lines);

const camber = { reading: 'camber', axle: 'front', tolerance: 0.1 } as const;
const toe = { reading: 'toe', axle: 'front', tolerance: 0.01 } as const;
const over = { motion: 'bump', from: -40, to: 40, steps: 5 } as const;
const STEADY: WantedDocument = { ...toe, over, change: true, range: [-0.02, 0.02] };

describe('wants that exclude each other', () => {
  test.each<[string, readonly WantedDocument[]]>([
    [
      'two values further apart than their tolerances',
      [
        { ...camber, value: -3 },
        { ...camber, value: -2.7 },
      ],
    ],
    [
      'a value below a range',
      [
        { ...camber, value: -3 },
        { ...camber, range: [-2.5, null] },
      ],
    ],
    [
      'two ranges without a value in common',
      [
        { ...camber, range: [null, -3] },
        { ...camber, range: [-2, 0] },
      ],
    ],
    [
      'both wheels and one of them',
      [
        { ...camber, value: -3, side: 'both' },
        { ...camber, value: -2, side: 'right' },
      ],
    ],
    [
      'the same place said in two ways',
      [
        { ...camber, value: -3, at: { travel: [20, 20] } },
        { ...camber, value: -2, at: { travel: 20 } },
      ],
    ],
    [
      'a place of a stretch',
      [
        { ...camber, value: -3, over },
        { ...camber, value: -2, at: { travel: -20 } },
      ],
    ],
    [
      'an axle, whatever side is named',
      [
        { reading: 'rollCentreHeight', axle: 'front', side: 'left', value: 10, tolerance: 1 },
        { reading: 'rollCentreHeight', axle: 'front', range: [40, null], tolerance: 1 },
      ],
    ],
    [
      'the whole car',
      [
        { reading: 'rollGradient', value: 1, tolerance: 0.1 },
        { reading: 'rollGradient', value: 2, tolerance: 0.1 },
      ],
    ],
    ['two changes', [STEADY, { ...STEADY, range: [0.05, 0.1] }]],
  ])('%s', (_, wanted) => {
    expect(found(...wanted)).toEqual([[0, 1]]);
  });

  test.each<[string, readonly WantedDocument[]]>([
    [
      'values within their tolerances of each other',
      [
        { ...camber, value: -3 },
        { ...camber, value: -2.8 },
      ],
    ],
    [
      'a value whose tolerance reaches into the range',
      [
        { ...camber, value: -3 },
        { ...camber, range: [-2.9, null] },
      ],
    ],
    [
      'left and right',
      [
        { ...camber, value: -3, side: 'left' },
        { ...camber, value: -2, side: 'right' },
      ],
    ],
    [
      'another place',
      [
        { ...camber, value: -3 },
        { ...camber, value: -2, at: { travel: 20 } },
      ],
    ],
    [
      'a place between those of a stretch',
      [
        { ...camber, value: -3, over },
        { ...camber, value: -2, at: { travel: 10 } },
      ],
    ],
    [
      'another axle',
      [
        { ...camber, value: -3 },
        { ...camber, axle: 'rear', value: -2 },
      ],
    ],
    ['a value and a change', [{ ...toe, value: 0.5 }, STEADY]],
    [
      'an open range is nothing',
      [
        { ...camber, range: [null, null] },
        { ...camber, value: -3 },
      ],
    ],
  ])('%s: no contradiction', (_, wanted) => {
    expect(found(...wanted)).toEqual([]);
  });

  test('held steady over a stretch whose ends are wanted apart: all three lines', () => {
    const ends = (there: number): readonly WantedDocument[] => [
      { ...toe, value: 0 },
      { ...toe, at: { travel: 40 }, value: there },
    ];
    expect(found(...ends(0.05), STEADY)).toEqual([[0, 1, 2]]);
    expect(found(STEADY, ...ends(-0.05))).toEqual([[0, 1, 2]]);
    expect(found(...ends(0.039), STEADY)).toEqual([]);
    // the change at zero is nothing, however widely the value there is wanted
    expect(found({ ...toe, range: [-1, 1] }, { ...STEADY, range: [-0.5, -0.5] })).toEqual([]);
  });

  test('each pair once, at the first place; lines that are wrong in themselves are not held against others', () => {
    const steep: WantedDocument = { ...camber, value: -3, over };
    expect(contradictionsIn([steep, undefined, { ...steep, value: -1 }], () => true)).toEqual([
      { lines: [0, 2], at: { left: -40, right: -40, rack: 0, roll: 0 } },
    ]);
    expect(found({ ...camber, value: -3 }, { ...camber, value: -2 }, { ...camber, value: -1 })).toEqual([
      [0, 1],
      [0, 2],
    ]);
  });

  test('a stretch of millions of places is not counted out', () => {
    const long: WantedDocument = { ...camber, value: -3, over: { ...over, steps: 1e12 } };
    expect(found(long, { ...long, value: -1 })).toEqual([]);
  });
});
