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
  const read = (text: string) => readPositionList(new TextEncoder().encode(text), 'the list');
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
