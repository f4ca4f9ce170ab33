import { expect, test } from 'vitest';
import { unitBeside } from '../../../renderer/units/unitBeside';

test('inches behind toe are no toe-in; other names and units stay as they are', () => {
  expect(['Toe', 'Total toe', 'Half track', 'Toe-in link'].map((name) => unitBeside(name, 'in'))).toEqual([
    'inches',
    'inches',
    'in',
    'in',
  ]);
  expect(unitBeside('Toe', 'mm')).toBe('mm');
});
