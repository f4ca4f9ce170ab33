import { describe, expect, test } from 'vitest';
import { EMPTY_FIELD, faultOfNumber, fieldOf, leftField, typedField } from '../../../renderer/studies/question/fieldValue';
import { faultOfPlace, placeWords, RIDE_HEIGHT } from '../../../renderer/studies/question/place';
import { shownQuantity } from '../../../renderer/units/shownQuantity';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';

const angle = shownQuantity({ quantity: 'angle', decimals: 2 }, STANDARD_UNITS);
const inches = shownQuantity({ quantity: 'length', decimals: 1 }, { ...STANDARD_UNITS, length: 'in' });

describe('a field of a question', () => {
  test('takes a number as it is written: true minus, decimal comma, fractions, other units', () => {
    expect(typedField('−3,2', angle)).toEqual({ typed: '−3,2', value: -3.2 });
    expect(typedField('30′', angle).value).toBe(0.5);
    expect(typedField('1/2', inches).value).toBe(12.7);
    expect(typedField('10 mm', inches).value).toBeCloseTo(10, 6);
  });

  test('what is no number stays as it was typed, with the reason', () => {
    const field = typedField('about three', angle);
    expect(leftField(field)).toEqual({ typed: 'about three', value: null });
    expect(faultOfNumber(field)).toBe('“about three” is not a number');
    expect(faultOfNumber(typedField('NaN', angle))).toContain('NaN');
    expect(faultOfNumber(typedField('1e999', angle))).toContain('not a number');
    expect(faultOfNumber(EMPTY_FIELD)).toBe('a number is missing');
  });

  test('once it is left, what could be read is written as numbers are written here', () => {
    expect(leftField(typedField('-3.20', angle))).toEqual({ typed: null, value: -3.2 });
  });

  test('a place is ride height, or says what is moved', () => {
    expect(placeWords(RIDE_HEIGHT, STANDARD_UNITS)).toBe('ride height');
    expect(placeWords({ ...RIDE_HEIGHT, travel: fieldOf(20), roll: fieldOf(-1) }, STANDARD_UNITS)).toBe(
      'bump +20.0 mm, roll −1.00°',
    );
    expect(faultOfPlace({ ...RIDE_HEIGHT, rack: typedField('x', angle) })).toBe('rack: “x” is not a number');
    expect(faultOfPlace(RIDE_HEIGHT)).toBeNull();
  });
});
