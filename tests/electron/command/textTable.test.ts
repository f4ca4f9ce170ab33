import { describe, expect, test } from 'vitest';
import { formatDifference, formatFixed, formatPlain, heading, tableLine, wrap } from '../../../electron/command/textTable';

describe('numbers in tables', () => {
  test('have a true minus, and none before a zero', () => {
    expect(formatFixed(-1.236, 2)).toBe('−1.24');
    expect(formatFixed(-0.001, 2)).toBe('0.00');
    expect(formatFixed(null, 2)).toBe('–');
    expect(formatDifference(0.5, 1)).toBe('+0.5');
    expect(formatDifference(-0.5, 1)).toBe('−0.5');
    expect(formatDifference(0.001, 2)).toBe('0.00');
  });

  test('as typed are as short as they can be', () => {
    expect(['100', '−2.5', '0', '0.333', '0']).toEqual([100, -2.5, -0, 1 / 3, -1e-9].map(formatPlain));
  });
});

describe('lines', () => {
  test('give a terminal nothing of a file that it would obey', () => {
    expect(heading('a \u001b[31mred\u0007 car', { colour: false })).toBe('a �[31mred� car');
    expect(heading('car', { colour: true })).toBe('\u001b[1mcar\u001b[22m');
  });

  test('are cut where words are too long, and never in a number', () => {
    expect(
      tableLine(
        [
          { title: '', width: 4, align: 'left' },
          { title: '', width: 4, align: 'right' },
        ],
        ['abcdef', '1'],
      ),
    ).toBe('abc…     1');
    const number = { title: '', width: 4, align: 'right' } as const;
    expect(tableLine([number], ['−12345.67'])).toBe('−12345.67');
  });

  test('are broken before the edge, and keep how they begin', () => {
    const lines = wrap(`  ${'word '.repeat(40).trim()}`, '    ');
    expect(lines.every((line) => line.length <= 100)).toBe(true);
    expect(lines[0]?.startsWith('  word')).toBe(true);
    expect(lines[1]?.startsWith('    word')).toBe(true);
  });
});
