import { describe, expect, test } from 'vitest';
import { CommandError } from '../../../electron/command/commandError';
import { readPositionList } from '../../../electron/command/positionList';
import { sweepQuestion } from '../../../electron/command/sweepPositions';
import { positionOf, stepsBetween } from '../../../geometry/index';

describe('positions of a sweep', () => {
  test('include both ends to the bit, and zero in the middle', () => {
    expect(stepsBetween(-60, 60, 5)).toEqual([-60, -30, 0, 30, 60]);
    expect(stepsBetween(60, -60, 3)).toEqual([60, 0, -60]);
    const tenths = stepsBetween(-0.3, 0.3, 7);
    expect(tenths[0]).toBe(-0.3);
    expect(tenths[3]).toBe(0);
    expect(tenths[6]).toBe(0.3);
    expect(stepsBetween(4, 4, 1)).toEqual([4]);
  });

  test('what is swept cannot be fixed too', async () => {
    const base = { from: -1, to: 1, steps: 3 } as const;
    await expect(sweepQuestion({ ...base, motion: 'bump', travel: 3 })).rejects.toThrow('travel');
    await expect(sweepQuestion({ ...base, motion: 'steer', rack: 0 })).rejects.toThrow('rack');
    await expect(sweepQuestion({ ...base, motion: 'roll', roll: 1 })).rejects.toThrow('roll');
    await expect(sweepQuestion({ ...base, motion: 'roll', travel: { left: 1, right: 2 } })).rejects.toThrow('heave');
    await expect(sweepQuestion({ motion: 'bump', from: 0, to: 1 })).rejects.toThrow('--steps');
    await expect(sweepQuestion({ motion: 'bump', from: 0, to: 1, steps: 1 })).rejects.toThrow('both ends');
    await expect(sweepQuestion({ motion: 'bump', list: 'x.csv' })).rejects.toThrow('motion');
    const steer = await sweepQuestion({ ...base, motion: 'steer', travel: { left: 1, right: 2 } });
    expect(steer.positions[0]).toEqual({ travel: { left: 1, right: 2 }, rack: -1, roll: 0 });
  });

  test('with roll, travel is heave', () => {
    expect(positionOf({ travel: { left: 5, right: 5 }, roll: 1 })).toEqual({ travel: 5, rack: 0, roll: Math.PI / 180 });
    expect(positionOf({ travel: { left: 5, right: 4 }, roll: 1 })).toHaveProperty('fault');
    expect(positionOf({ travel: { left: 5, right: 4 }, roll: 0 })).toEqual({ travel: { left: 5, right: 4 }, rack: 0, roll: 0 });
    expect(positionOf({ roll: 90 })).toHaveProperty('fault');
  });
});

describe('a list of positions', () => {
  const readList = (text: string) => readPositionList(new TextEncoder().encode(text), 'the list');
  const read = (text: string) => readList(text).positions;
  const faults = (text: string | Uint8Array) => {
    try {
      readPositionList(typeof text === 'string' ? new TextEncoder().encode(text) : text, 'the list');
    } catch (thrown) {
      if (thrown instanceof CommandError && thrown.document.kind === 'file') return thrown.document.faults ?? [];
      throw thrown;
    }
    throw new Error('accepted');
  };

  test('is read with or without roll, quotes, a byte-order mark, CRLF and blank lines', () => {
    expect(read('travelLeft,travelRight,rack\n1,2,-3\n')).toEqual([{ travel: { left: 1, right: 2 }, rack: -3, roll: 0 }]);
    expect(read('\uFEFF"travelLeft","travelRight","rack","roll"\r\n\r\n"1.5", 1.5 ,0,2e0\r\n')).toEqual([
      { travel: { left: 1.5, right: 1.5 }, rack: 0, roll: 2 },
    ]);
  });

  test('may have semicolons or tabs between its fields, and then decimal commas: what was understood is said', () => {
    const positions = [{ travel: { left: 1.5, right: -2 }, rack: 0.25, roll: 0 }];
    const comma = 'semicolons between the fields, decimal commas';
    expect(readList('travelLeft;travelRight;rack\n1,5;-2;0,25\n')).toEqual({ positions, readAs: comma });
    expect(readList('travelLeft;travelRight;rack\r\n1.5;-2;0.25')).toEqual({
      positions,
      readAs: 'semicolons between the fields, decimal points',
    });
    expect(readList('travelLeft\ttravelRight\track\n1,5\t-2\t0,25\n')).toEqual({
      positions,
      readAs: 'tabs between the fields, decimal commas',
    });
    expect(readList('"travelLeft";"travelRight";"rack"\n"1,5";"-2";"2,5e-1"\n')).toEqual({ positions, readAs: comma });
    expect(readList('travelLeft;travelRight;rack\n1;2;3\n').readAs).toBe('semicolons between the fields');
    expect(readList('travelLeft,travelRight,rack\n1.5,-2,0.25\n')).toEqual({ positions, readAs: null });
  });

  test.each([
    ['a decimal comma in a list with commas', 'travelLeft,travelRight,rack\n1,5,-2,0,25\n', 2, null, 'semicolons or tabs'],
    ['semicolons under a head with commas', 'travelLeft,travelRight,rack\n1;2;3\n', 2, 1, 'commas'],
    ['tabs under a head with semicolons', 'travelLeft;travelRight;rack\n1;2;3\n4\t5\t6\n', 3, 1, 'semicolons'],
    ['decimal points after decimal commas', 'travelLeft;travelRight;rack\n1,5;2;3\n1;2.5;3\n', 3, 3, 'as in line 2'],
    ['two decimal marks in one number', 'travelLeft;travelRight;rack\n1.234,5;2;3\n', 2, 1, 'a number'],
    ['a head with two separators', 'travelLeft;travelRight,rack\n1;2;3\n', 1, 1, 'travelLeft,travelRight,rack'],
    ['a quote that stays open', 'travelLeft,travelRight,rack\n1,2,"3\n4,5,6\n', 2, 5, 'a closing "'],
  ])('%s: refused with line and column', (_, text, line, column, expected) => {
    expect(faults(text)[0]).toMatchObject({ code: 'bad-list', line, column });
    expect(faults(text)[0]?.expected).toContain(expected);
  });

  test('that is none says where', () => {
    expect(faults('travelLeft,travelRight,rack\n1,2,3\n1,x,3\n1,2\n').map(({ line, column }) => [line, column])).toEqual([
      [3, 3],
      [4, null],
    ]);
    expect(faults('left,right,rack\n1,2,3')[0]?.line).toBe(1);
    expect(faults('')[0]?.found).toBe('nothing');
    expect(faults('travelLeft,travelRight,rack\n')[0]?.found).toBe('no positions');
    expect(faults(new Uint8Array([0xff, 0xfe, 0x00]))[0]?.expected).toContain('UTF-8');
  });

  test('rows that are all faulty are not missing too', () => {
    const faultsOf = (text: string): readonly unknown[] => {
      try {
        read(text);
      } catch (thrown) {
        if (thrown instanceof CommandError) return thrown.document.faults ?? [];
      }
      return [];
    };
    expect(faultsOf('travelLeft,travelRight,rack\n1,x,0\n2,3\n')).toHaveLength(2);
    expect(faultsOf('travelLeft,travelRight,rack\n\n')).toMatchObject([{ found: 'no positions' }]);
  });
});
