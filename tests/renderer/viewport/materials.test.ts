import { expect, test } from 'vitest';
import { hexDigits } from '../../../renderer/viewport/materials';

test('colours are read as written and as the built style sheet shortens them', () => {
  expect(hexDigits('#465257')).toBe('465257');
  expect(hexDigits(' #fff ')).toBe('ffffff');
  expect(hexDigits('#1aF')).toBe('11aaFF');
  expect(['', 'white', '#12345', 'rgb(1 2 3)'].map(hexDigits)).toEqual([undefined, undefined, undefined, undefined]);
});
