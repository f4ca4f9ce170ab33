import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rawValuesOf } from '../../../electron/command/rawValues';
import { readLines, type Line } from '../../../electron/command/readLines';

async function* inPieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}
const linesOf = async (text: string | Uint8Array, longest = 1000, size = 3): Promise<Line[]> => {
  const lines: Line[] = [];
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  for await (const line of readLines(inPieces(bytes, size), longest)) lines.push(line);
  return lines;
};

describe('lines of a stream', () => {
  test('are the same however the bytes arrive', async () => {
    for (const size of [1, 2, 5, 100])
      expect(await linesOf('añb\n\nlast', 1000, size)).toEqual([{ text: 'añb' }, { text: '' }, { text: 'last' }]);
  });

  test('that are too long or not UTF-8 are faults, and the next ones go on', async () => {
    expect(await linesOf(`${'x'.repeat(11)}\nok\n`, 10)).toEqual([{ fault: expect.stringContaining('longer') }, { text: 'ok' }]);
    expect(await linesOf(new Uint8Array([0xff, 10, 0x61, 10]))).toEqual([
      { fault: expect.stringContaining('UTF-8') },
      { text: 'a' },
    ]);
  });
});

describe('raw values of an object', () => {
  test('are the slices of its text', () => {
    const found = rawValuesOf(' { "id" : 12345678901234567890 , "car":{"a":"}\\"","b":[1,{"c":2}]},"n":null,"s":"x,y" } ');
    expect('values' in found && [...found.values]).toEqual([
      ['id', '12345678901234567890'],
      ['car', '{"a":"}\\"","b":[1,{"c":2}]}'],
      ['n', 'null'],
      ['s', '"x,y"'],
    ]);
    expect(rawValuesOf('{}')).toEqual({ values: new Map() });
  });

  test('a key that stands there twice is told', () => {
    expect(rawValuesOf('{"a":1,"b":2,"a":3}')).toEqual({ twice: 'a' });
    expect(rawValuesOf('{"a":1,"\\u0061":3}')).toEqual({ twice: 'a' });
  });

  test('any object, seed 11: each slice reads back as the value', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), fc.constantFrom(0, 1, 2), (object, indent) => {
        const text = JSON.stringify(object, null, indent);
        const found = rawValuesOf(text);
        if (!('values' in found)) return false;
        const parsed = JSON.parse(text) as Record<string, unknown>;
        expect([...found.values.keys()].sort()).toEqual(Object.keys(parsed).sort());
        for (const [key, raw] of found.values) expect(JSON.parse(raw)).toEqual(parsed[key]);
        return true;
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});
