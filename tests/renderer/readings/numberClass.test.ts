import { expect, test } from 'vitest';
import { numberClass } from '../../../renderer/readings/numberClass';

test('a number is set the narrower the longer it is, sooner where there are two columns of differences', () => {
  expect(numberClass(null, true)).toBe('number');
  expect(['−1.90', '784.45', '−0.0053', '−8,617.1', '−339.257'].map((text) => numberClass(text, true))).toEqual([
    'number',
    'number',
    'number long',
    'number long tight',
    'number long tight squeezed',
  ]);
  expect(['−0.6705', '−339.257', '−2,644.32', '−104.1069'].map((text) => numberClass(text, false))).toEqual([
    'number',
    'number long',
    'number long',
    'number long tight',
  ]);
});
