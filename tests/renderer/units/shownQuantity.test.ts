import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quantity } from '../../../geometry/index';
import { parseNumber } from '../../../renderer/units/parseNumber';
import { shownQuantity, type Measured } from '../../../renderer/units/shownQuantity';
import { unitsOf } from '../../../renderer/units/typedUnits';
import { STANDARD_UNITS, unitWords, type ShownUnits } from '../../../renderer/units/unitChoice';

const OTHERS: ShownUnits = { length: 'in', angle: 'minutes', toe: 'rim', force: 'pound', toeDiameter: 487 };
const QUANTITIES: readonly Quantity[] = [
  'angle',
  'length',
  'anglePerLength',
  'anglePerAngle',
  'anglePerG',
  'ratio',
  'percent',
  'force',
  'forcePerLength',
  'forcePerG',
  'momentPerAngle',
  'frequency',
];

describe('lengths and forces', () => {
  const shown = (measured: Measured, value: number) => {
    const { format, unit } = shownQuantity(measured, OTHERS);
    return `${format(value)} ${unit}`.trim();
  };

  test('an inch is 25.4 mm, exactly (NIST SP 811, appendix B)', () =>
    expect(shown({ quantity: 'length', decimals: 1 }, 25.4)).toBe('1.000 in'));

  test('a pound-force is 4.4482216152605 N (NIST SP 811): 100 N/mm are 571.0 lb/in, 1000 N 224.81 lb', () => {
    expect(shown({ quantity: 'forcePerLength', decimals: 1 }, 100)).toBe('571.0 lb/in');
    expect(shown({ quantity: 'force', decimals: 1 }, 1000)).toBe('224.81 lb');
  });

  test('a pound-force foot is 1.3558179483 N·m (NIST SP 811)', () =>
    expect(shown({ quantity: 'momentPerAngle', decimals: 4 }, 1.3558179483)).toBe('1.0000 lb·ft/°'));

  test('rates of an angle are read over 10 mm, or over an inch', () => {
    expect(shownQuantity({ quantity: 'anglePerLength', decimals: 4 }, STANDARD_UNITS).format(-0.0109)).toBe('−0.109');
    const inches = shownQuantity({ quantity: 'anglePerLength', decimals: 4 }, { ...OTHERS, angle: 'degrees' });
    expect(`${inches.format(-0.01)} ${inches.unit}`).toBe('−0.254 °/in');
  });

  test('where angles are read in minutes they are minutes, and none of their digits is lost', () => {
    const rate = shownQuantity({ quantity: 'anglePerLength', decimals: 4 }, { ...STANDARD_UNITS, angle: 'minutes' });
    // 0.0109° in a millimetre are 0.109° in ten, 60 minutes each
    expect(`${rate.format(-0.0109)} ${rate.unit}`).toBe('−6.54 ′/10 mm');
    expect(rate.fromShown(-6.54)).toBeCloseTo(-0.0109, 12);
    expect(shown({ quantity: 'anglePerLength', decimals: 4 }, -0.01)).toBe('−15.24 ′/in');
    // a ratio is the same in either
    expect(shown({ quantity: 'anglePerAngle', decimals: 2 }, -0.62)).toBe('−0.62 °/°');
  });

  test.each([
    ['−6.54', -6.54],
    ['-0.109 °/10 mm', -6.54],
    ["6.54'/10mm", 6.54],
    ['6,54 ′/10 mm', 6.54],
  ])('%s typed where minutes over 10 mm are read is %d of them', (typed, value) =>
    expect(parseNumber(typed, unitsOf('′/10 mm'))).toEqual({ kind: 'number', value }),
  );

  test('a length that is not the field’s is no unit there', () =>
    expect(parseNumber('6.54 ′/in', unitsOf('′/10 mm'))).toEqual({ kind: 'unit', found: '′/in' }));
});

describe('angles', () => {
  const minutes = shownQuantity({ quantity: 'angle', decimals: 2 }, OTHERS);

  test.each([
    [-1.4667, '−1°28′'],
    [0.9999, '1°00′'],
    [-0.001, '0°00′'],
    [12.25, '12°15′'],
  ])('%d° in degrees and minutes is %s', (value, text) => expect(minutes.format(value)).toBe(text));

  test('finer angles have tenths of a minute, and a change has its sign', () => {
    const fine = shownQuantity({ quantity: 'angle', decimals: 3 }, OTHERS);
    expect(fine.format(0.0508)).toBe('0°03.0′');
    expect(fine.formatChange(0.0508)).toBe('+0°03.0′');
    expect(fine.formatChange(-0.0508)).toBe('−0°03.0′');
    expect(fine.formatChange(0)).toBe('0°00.0′');
  });

  test('toe at the rim is the diameter times the sine: 0.1° at 487 mm are 0.85 mm', () => {
    const rim = shownQuantity({ quantity: 'angle', decimals: 3, isToe: true }, { ...OTHERS, length: 'mm' });
    expect(`${rim.format(0.1)} ${rim.unit}`).toBe('0.85 mm');
    expect(rim.fromShown(0.85)).toBeCloseTo((Math.asin(0.85 / 487) * 180) / Math.PI, 12);
  });

  test('without a diameter in the file toe stays an angle', () =>
    expect(shownQuantity({ quantity: 'angle', decimals: 3, isToe: true }, { ...OTHERS, toeDiameter: null }).format(0.1)).toBe(
      '0°06.0′',
    ));
});

test('what is typed is what was shown, for every quantity in every choice of units', () =>
  fc.assert(
    fc.property(
      fc.constantFrom(...QUANTITIES),
      fc.constantFrom(STANDARD_UNITS, OTHERS, { ...OTHERS, toe: 'angle' as const }),
      fc.constantFrom(null, 300, 487),
      fc.double({ min: -60, max: 60, noNaN: true }),
      (quantity, units, toeDiameter, value) => {
        const { toShown, fromShown } = shownQuantity({ quantity, decimals: 2, isToe: true }, { ...units, toeDiameter });
        expect(fromShown(toShown(value))).toBeCloseTo(value, 9);
      },
    ),
  ));

test('the header says the units in few words', () => {
  expect(unitWords(STANDARD_UNITS)).toBe('mm · degrees');
  expect(unitWords(OTHERS)).toBe('in · degrees, minutes · toe at the rim · lb');
});
