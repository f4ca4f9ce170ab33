import { describe, expect, it } from 'vitest';
import { parseCar, parseCarBytes } from '../../../geometry/car/parseCar';
import type { Fault } from '../../../geometry/car/fault';
import { LARGEST_FILE_BYTES } from '../../../geometry/car/text/decodeText';
import { DEEPEST_NESTING } from '../../../geometry/car/text/nesting';
import { EVERYTHING, GOOD_CARS, WISHBONES } from './fixtures';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

function faultsOf(given: string | Uint8Array): readonly Fault[] {
  const outcome = typeof given === 'string' ? parseCar(given) : parseCarBytes(given);
  if (outcome.ok) throw new Error('the file was accepted');
  return outcome.failure.faults;
}

function wide(text: string, isLittle: boolean, hasMark: boolean): Uint8Array {
  const marked = (hasMark ? '\uFEFF' : '') + text;
  const bytes = new Uint8Array(marked.length * 2);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < marked.length; i++) view.setUint16(2 * i, marked.charCodeAt(i), isLittle);
  return bytes;
}

describe('good files', () => {
  it.each(GOOD_CARS)('%s is read, as text and as bytes, and stands in the document as it stands in the file', (_name, text) => {
    for (const outcome of [parseCar(text), parseCarBytes(bytesOf(text))]) {
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure.faults, null, 1));
      expect(outcome.value.document).toEqual(JSON.parse(text));
      expect(outcome.value.text).toBe(text);
      expect(outcome.value.olderVersion).toBeUndefined();
    }
  });

  it('are read with line ends of any kind and with every whitespace that JSON allows', () => {
    for (const newline of ['\r\n', '\r', '\n\n', ' \t\n']) {
      expect(parseCar(EVERYTHING.replaceAll('\n', newline)).ok).toBe(true);
    }
    expect(parseCar(JSON.stringify(JSON.parse(EVERYTHING))).ok).toBe(true);
  });

  it('may have a byte-order mark, which the text that is kept does not', () => {
    for (const outcome of [parseCar(`\uFEFF${WISHBONES}`), parseCarBytes(bytesOf(`\uFEFF${WISHBONES}`))]) {
      expect(outcome.ok && outcome.value.text).toBe(WISHBONES);
    }
  });

  it('may hold any character in their texts', () => {
    const name = '"Straße 7 – ünï 車 🚗 \\u0007 \\" \\\\ \\ud83d"';
    const outcome = parseCarBytes(bytesOf(WISHBONES.replace('"Wishbones, inches"', name)));
    expect(outcome.ok && outcome.value.document.name).toBe(JSON.parse(name));
  });

  it('may be padded up to 16 MiB', () => {
    const padding = ' '.repeat(LARGEST_FILE_BYTES - WISHBONES.length);
    expect(parseCarBytes(bytesOf(WISHBONES + padding)).ok).toBe(true);
    expect(parseCar(WISHBONES + padding).ok).toBe(true);
  });
});

describe('files that are refused as a whole', () => {
  const whole = (code: string): Partial<Fault> => ({ code, path: null, line: null, column: null });

  it('over 16 MiB, as bytes and as text', () => {
    const padding = ' '.repeat(LARGEST_FILE_BYTES - WISHBONES.length + 1);
    expect(faultsOf(bytesOf(WISHBONES + padding))).toMatchObject([whole('file-too-large')]);
    expect(faultsOf(WISHBONES + padding)).toMatchObject([whole('file-too-large')]);
    // fewer characters than that, but more bytes
    const umlauts = WISHBONES.replace('inches', 'ü'.repeat(LARGEST_FILE_BYTES / 2));
    expect(umlauts.length).toBeLessThan(LARGEST_FILE_BYTES);
    expect(faultsOf(umlauts)).toMatchObject([whole('file-too-large')]);
    expect(faultsOf(bytesOf(umlauts))).toMatchObject([whole('file-too-large')]);
  });

  it.each([
    [true, true, 'UTF-16 (little-endian)'],
    [false, true, 'UTF-16 (big-endian)'],
    [true, false, 'UTF-16 (little-endian)'],
    [false, false, 'UTF-16 (big-endian)'],
  ])('UTF-16, by name (little-endian %s, mark %s)', (isLittle, hasMark, name) => {
    const [fault, ...rest] = faultsOf(wide(WISHBONES, isLittle, hasMark));
    expect(rest).toEqual([]);
    expect(fault).toMatchObject({ ...whole('utf-16'), found: `text in ${name}` });
    expect(fault.hint).toContain('UTF-8');
  });

  it('UTF-32, and UTF-16 that somebody read as something else', () => {
    const wider = new Uint8Array([0xff, 0xfe, 0, 0, 0x7b, 0, 0, 0]);
    expect(faultsOf(wider)).toMatchObject([{ ...whole('utf-16'), found: 'text in UTF-32 (little-endian)' }]);
    expect(faultsOf(new Uint8Array([0, 0, 0, 0x7b, 0, 0, 0, 0x7d]))[0].found).toBe('text in UTF-32 (big-endian)');
    expect(faultsOf('{\0"\0a\0"\0')).toMatchObject([whole('utf-16')]);
  });

  it.each([
    ['a lone continuation byte', [0x80]],
    ['an overlong form', [0xc0, 0xaf]],
    ['an overlong form of three bytes', [0xe0, 0x80, 0xaf]],
    ['an overlong form of four bytes', [0xf0, 0x80, 0x80, 0xaf]],
    ['half of a surrogate pair', [0xed, 0xa0, 0x80]],
    ['past the last character', [0xf4, 0x90, 0x80, 0x80]],
    ['Latin-1', [0xfc, 0x72]],
    ['no UTF-8 at all', [0xff, 0x41]],
  ])('not UTF-8: %s, with its place', (_what, bytes) => {
    const [before, after] = WISHBONES.split('Wishbones');
    const fault = faultsOf(new Uint8Array([...bytesOf(before), ...bytes, ...bytesOf(after)]))[0];
    expect(fault).toMatchObject({ code: 'not-utf-8', path: null, line: 4, column: 12 });
    expect(fault.found?.toLowerCase()).toBe(`byte 0x${bytes[0].toString(16)}`);
  });

  it('not UTF-8: cut short in the middle of a character', () => {
    expect(faultsOf(new Uint8Array([0x7b, 0xe2, 0x82]))).toMatchObject([{ code: 'not-utf-8', line: 1, column: 2 }]);
  });

  it.each([
    ['', 'nothing'],
    ['   \r\n\t', 'blanks'],
    ['\uFEFF', 'a mark alone'],
  ])('empty: %j (%s)', (text) => {
    expect(faultsOf(text)).toMatchObject([whole('empty-file')]);
    expect(faultsOf(bytesOf(text))).toMatchObject([whole('empty-file')]);
  });

  it.each(['[]', '3', '"car"', 'null', 'true', '[{ "format": "jounce-car" }]'])('no object: %s', (text) => {
    expect(faultsOf(text)).toMatchObject([{ code: 'not-an-object', path: null, line: 1, column: 1 }]);
  });

  it('an empty object, which lacks all that is required', () => {
    expect(faultsOf('{}').map(({ code, path }) => [code, path])).toEqual([
      ['missing-key', 'format'],
      ['missing-key', 'version'],
      ['missing-key', 'name'],
      ['no-axle', null],
    ]);
  });

  it('binary', () => {
    const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d]);
    expect(faultsOf(png)[0].code).toBe('not-utf-8');
    expect(faultsOf(new Uint8Array([0x50, 0x4b, 3, 4, 20, 6]))[0].code).toBe('not-json');
    expect(faultsOf(new Uint8Array(64))[0].code).toMatch(/not-json|utf-16/);
    expect(faultsOf('<?xml version="1.0"?><car/>')[0]).toMatchObject({ code: 'not-json', line: 1, column: 1 });
  });
});

describe('nesting', () => {
  const nested = (depth: number, open: string, close: string): string => open.repeat(depth) + close.repeat(depth);

  it('is refused past 32 before anything is parsed, with the place of the bracket', () => {
    for (const depth of [DEEPEST_NESTING + 1, 1000, 10_000, 1_000_000]) {
      expect(faultsOf(nested(depth, '[', ']'))).toMatchObject([
        { code: 'nesting-too-deep', line: 1, column: DEEPEST_NESTING + 1 },
      ]);
    }
    expect(faultsOf(nested(100_000, '{"a":', '}').replace('{}', '{"a":1}'))[0].code).toBe('nesting-too-deep');
    expect(faultsOf('['.repeat(5_000_000))[0].code).toBe('nesting-too-deep');
    expect(faultsOf('[{'.repeat(50_000))[0].code).toBe('nesting-too-deep');
    expect(faultsOf('"\n'.concat('['.repeat(100_000)))[0].code).toBe('nesting-too-deep');
  });

  it('of 32 is not too deep, and brackets in texts do not count', () => {
    expect(faultsOf(nested(DEEPEST_NESTING, '[', ']'))[0].code).toBe('not-an-object');
    const notes = `"notes": "${'[{'.repeat(1000)} \\"${'['.repeat(100)}",`;
    expect(parseCar(EVERYTHING.replace('"revision"', `${notes.replace('"notes"', '"torque"')} "revision"`)).ok).toBe(false);
    expect(parseCar(WISHBONES.replace('"units"', `${notes} "units"`)).ok).toBe(true);
  });
});

describe('large files', () => {
  it(
    'with millions of entries where none belong are refused in bounded time and with a bounded list',
    { timeout: 300_000 },
    () => {
      const many = (piece: (i: number) => string): string => {
        const pieces: string[] = [];
        for (let i = 0, length = 0; length < 3_000_000; i++) {
          pieces.push(piece(i));
          length += pieces[i].length + 1;
        }
        return pieces.join(',');
      };
      for (const text of [
        WISHBONES.replace('"front"', `${many((i) => `"k${i}":[]`)},"front"`),
        WISHBONES.replace('"upperFrontBody"', `${many((i) => `"k${i}":0`)},"upperFrontBody"`),
        WISHBONES.replace('[3.4, 18.4, 18.4]', `[${many(() => '[]')}]`),
        `[${many(() => '[]')}]`,
      ]) {
        const started = performance.now();
        const faults = faultsOf(text);
        expect(performance.now() - started).toBeLessThan(20_000);
        expect(faults.length).toBeLessThanOrEqual(1001);
        expect(faults.length).toBeGreaterThan(0);
      }
    },
  );

  it('say how many faults are left when there are too many to list', () => {
    const keys = Array.from({ length: 1500 }, (_, i) => `"k${i}": 1`).join(',');
    const faults = faultsOf(WISHBONES.replace('"units"', `${keys}, "units"`));
    expect(faults.length).toBe(1001);
    expect(faults[1000]).toMatchObject({ code: 'more-faults', found: 'more than 1000 faults' });
  });
});

describe('meshes', () => {
  const withMeshes = (count: number, bytes: number): string => {
    const data = 'A'.repeat(Math.ceil(bytes / 3) * 4);
    const parts = Array.from(
      { length: count },
      (_, i) => `"m${i}": { "on": "body", "shape": { "kind": "mesh", "data": "${data}" } }`,
    );
    return WISHBONES.replace('"setups"', `"parts": { ${parts.join(', ')} }, "setups"`);
  };
  it('of 8 MiB in all are read, larger ones are not', () => {
    const half = 3 * Math.floor((4 * 1024 * 1024) / 3);
    expect(parseCar(withMeshes(2, half)).ok).toBe(true);
    expect(faultsOf(withMeshes(2, half + 6))).toMatchObject([{ code: 'meshes-too-large', path: 'parts' }]);
  });
});

describe('faults', () => {
  it('are all found at once, in the order of the text', () => {
    const text = EVERYTHING.replace('"revision": "C"', '"revision": 3')
      .replace('"armRear": [-302, 363, 208]', '"armRear": [-302, 363, "208"]')
      .replace('"moves": "tieRodEnd"', '"moves": "tieRodend"')
      .replace('"topPlate": -4', '"topPlate": -40')
      .replace('"onCar": "Baseline"', '"onCar": "None"')
      .replace('"sigma": 0.02', '"sigma": -1, "extra": 1');
    const faults = faultsOf(text);
    expect(faults.map(({ code, path }) => [code, path])).toEqual([
      ['wrong-type', 'revision'],
      ['unknown-setup', 'onCar'],
      ['wrong-type', 'front.points.armRear[2]'],
      ['unknown-point', 'front.adjusters.rodShim.moves'],
      ['setting-out-of-range', 'setups.Wet.front.both.topPlate'],
      ['out-of-range', 'measurements[0].sigma'],
      ['unknown-key', 'measurements[0].extra'],
    ]);
    const places = faults.map(({ line, column }) => (line ?? 0) * 1e6 + (column ?? 0));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('have the same line and column whatever ends a line', () => {
    const text = EVERYTHING.replace('"armRear": [-302, 363, 208]', '"armRear": [-302, 363, "208"]');
    const [fault] = faultsOf(text);
    for (const newline of ['\r\n', '\r']) expect(faultsOf(text.replaceAll('\n', newline))).toEqual([fault]);
  });

  it('of the linkage are asked for last, and get their place', () => {
    const judge = () => [{ code: 'singular-linkage', path: 'front.rods', found: 'rank 5', expected: 'a linkage', hint: null }];
    const outcome = parseCar(WISHBONES, { judge });
    expect(outcome).toEqual({
      ok: false,
      failure: {
        faults: [
          {
            code: 'singular-linkage',
            path: 'front.rods',
            line: 21,
            column: 13,
            found: 'rank 5',
            expected: 'a linkage',
            hint: null,
          },
        ],
      },
    });
    let isAsked = false;
    parseCar(WISHBONES.replace('"version": 1', '"version": 3'), {
      judge: () => {
        isAsked = true;
        return [];
      },
    });
    expect(isAsked).toBe(false);
  });
});
