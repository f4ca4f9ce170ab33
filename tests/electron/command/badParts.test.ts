import { describe, expect, test } from 'vitest';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';
import { binaryStl, boxTriangles, textStl } from '../../geometry/fitup/stlFiles';
import { temporaryFolder } from '../temporaryFolder';
import { jounceBatch, jounceJson, type Json } from './jounce';

const BOX = boxTriangles([30, 60, 20]);
const STL = binaryStl(BOX);

/** Triangles in a head that promises more than the program takes; the file is as long as its head says. */
function tooMany(): Uint8Array {
  const count = 300_001;
  const bytes = new Uint8Array(84 + 50 * count);
  new DataView(bytes.buffer).setUint32(80, count, true);
  return bytes;
}

const withNumber = (value: number): Float64Array => BOX.map((each, i) => (i === 4 ? value : each));

const FILES = {
  'good.stl': STL,
  'good-text.stl': textStl(BOX),
  // a binary file whose head begins like a text: the length decides
  'liar.stl': binaryStl(BOX, 'solid of no text'),
  'short.stl': STL.slice(0, 300),
  'head.stl': STL.slice(0, 40),
  'empty.stl': new Uint8Array(0),
  'nan.stl': binaryStl(withNumber(NaN)),
  'endless.stl': binaryStl(withNumber(Infinity)),
  'flat.stl': binaryStl(new Float64Array(18)),
  'many.stl': tooMany(),
  // cut off after a whole triangle
  'half-text.stl': textStl(BOX).slice(0, new TextDecoder().decode(textStl(BOX)).indexOf('facet', 60)),
};

interface BadPart {
  readonly title: string;
  /** § stands before what is wrong: there the fault has to point */
  readonly text: string;
  readonly path: string;
  readonly says: string;
}

const on = (carrier: string, shape: string, more = ''): string =>
  `{ "axle": "front", "on": ${carrier}, ${more}\n    "shape": { ${shape} } }`;
const body = (shape: string, more?: string): string => on('"body"', shape, more);
const bad = (title: string, at: string, says: string, text: string): BadPart => ({ title, path: at, says, text });
const mesh = (title: string, file: string, says: string): BadPart =>
  bad(title, 'shape.file', says, body(`"kind": "mesh", "file": §"${file}"`));

const PARTS: readonly BadPart[] = [
  bad('no radius', 'shape.radius', '0', body('"kind": "sphere", "at": [0, 0, 0], "radius": §0')),
  bad('less than none', 'shape.radius', '-3', body('"kind": "capsule", "from": [0, 0, 0], "to": [1, 0, 0], "radius": §-3')),
  bad('a box without thickness', 'shape.size[0]', '0', body('"kind": "box", "centre": [0, 0, 0], "size": [§0, 5, 5]')),
  bad(
    'a cylinder without length',
    'shape.to',
    'another place',
    body('"kind": "cylinder", "from": [1, 2, 3], "to": §[1, 2, 3], "radius": 5'),
  ),
  bad(
    'axes that are one',
    'shape.axes',
    'not parallel',
    body('"kind": "box", "centre": [0, 0, 0], "size": [5, 5, 5], "axes": §[[1, 0, 0], [1, 0, 0]]'),
  ),
  bad('a carrier that nobody has', 'on', 'gearbox', on('§"gearbox"', '"kind": "sphere", "at": [0, 0, 0], "radius": 5')),
  bad('a shape that is none', 'shape.kind', 'cone', body('"kind": §"cone", "at": [0, 0, 0], "radius": 5')),
  bad(
    'touching what is not there',
    'touches[0]',
    'nobody',
    body('"kind": "sphere", "at": [0, 0, 0], "radius": 5', '"touches": [§"nobody"],'),
  ),
  bad('no shape', 'shape', 'nothing', '§{ "axle": "front", "on": "body" }'),
  bad('a mesh of nothing', 'shape', 'neither', body('"kind": "mesh"').replace('"shape": ', '"shape": §')),
  bad(
    'a mesh of two',
    'shape',
    'both',
    body('"kind": "mesh", "file": "good.stl", "data": "AAAA"').replace('"shape": ', '"shape": §'),
  ),
  bad('no base64', 'shape.data', 'base64', body('"kind": "mesh", "data": §"!!!no"')),
  bad('base64 of no STL', 'shape.data', 'less than the head', body('"kind": "mesh", "data": §"AAAA"')),
  bad('of no size', 'shape.scale', '0', body('"kind": "mesh", "file": "good.stl", "scale": §0')),
  mesh('a file that is not there', 'gone.stl', 'gone.stl'),
  mesh('a folder', '.', 'a folder'),
  mesh('a file that is cut off', 'short.stl', 'bytes where a binary STL of 12 triangles'),
  mesh('a file shorter than its head', 'head.stl', 'less than the head'),
  mesh('an empty file', 'empty.stl', 'an empty file'),
  mesh('a corner that is no number', 'nan.stl', 'number'),
  mesh('a corner without end', 'endless.stl', 'number'),
  mesh('triangles without area', 'flat.stl', 'without area'),
  mesh('too many triangles', 'many.stl', '300001 triangles'),
  mesh('a text that is cut off', 'half-text.stl', 'endsolid'),
];

const SAMPLE = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');

/** The sample with one part more, under a name that no other part has, and where § stood. */
async function carWith(marked: string): Promise<{ readonly text: string; readonly line: number; readonly column: number }> {
  const car = JSON.parse(await readFile(SAMPLE, 'utf8')) as Record<string, unknown>;
  const [before, after] = JSON.stringify({ ...car, parts: { odd: '@' } }, null, 1).split('"@"');
  const text = `${before}${marked}${after}`;
  const lines = text.slice(0, text.indexOf('§')).split('\n');
  return { text: text.replace('§', ''), line: lines.length, column: lines.at(-1)!.length + 1 };
}

const fault = (document: Json | undefined): Json | undefined => document?.['error']?.['faults']?.[0];

describe('a part that cannot be', () => {
  test.each(PARTS)('$title is a fault with its line and column', async ({ text: marked, path: at, says }) => {
    const car = await carWith(marked);
    const folder = await temporaryFolder({ ...FILES, 'car.jounce.json': car.text });
    const { status, document } = await jounceJson(['clearance', 'car.jounce.json', '--setups', 'Baseline'], { folder });
    expect(status).toBe(2);
    expect(fault(document)).toMatchObject({ path: `parts.odd.${at}` });
    expect(JSON.stringify(fault(document))).toContain(says);
    expect([fault(document)?.['line'], fault(document)?.['column']]).toEqual([car.line, car.column]);
  });

  test('several meshes are told at once, each at its place', async () => {
    const { text } = await carWith(
      `${body('"kind": "mesh", "file": "gone.stl"')},\n  "next": ${body('"kind": "mesh", "file": "short.stl"')}`,
    );
    const folder = await temporaryFolder({ ...FILES, 'car.jounce.json': text });
    const { document } = await jounceJson(['clearance', 'car.jounce.json'], { folder });
    const faults = [...(document['error']?.['faults'] ?? [])] as unknown as Json[];
    expect(faults.map((each) => each['path'])).toEqual(['parts.odd.shape.file', 'parts.next.shape.file']);
    const lines = faults.map((each) => Number(each['line']));
    expect(text.split('\n')[(lines[0] ?? 0) - 1]).toContain('gone.stl');
    expect(text.split('\n')[(lines[1] ?? 0) - 1]).toContain('short.stl');
  });

  test('in a batch it has its path, and no line: that would be the line of the batch', async () => {
    const car = JSON.parse(await readFile(SAMPLE, 'utf8')) as object;
    const part = { axle: 'front', on: 'body', shape: { kind: 'mesh', data: 'AAAA' } };
    const { answers } = await jounceBatch([{ id: 1, car: { ...car, parts: { odd: part } }, ask: 'clearance' }]);
    expect(fault(answers[0])).toMatchObject({ path: 'parts.odd.shape.data', line: null, column: null });
  });
});

test('meshes that are read: as text, and binary with a head that begins like a text', async () => {
  const clearances: unknown[] = [];
  for (const file of ['good.stl', 'good-text.stl', 'liar.stl']) {
    const ball = on('"knuckle"', '"kind": "sphere", "at": [40, 640, 330], "radius": 20');
    const shape = `"kind": "mesh", "file": "${file}", "place": { "at": [300, 480, 560] }`;
    const { text } = await carWith(`${body(shape)},\n  "ball": ${ball}`);
    const folder = await temporaryFolder({ ...FILES, 'car.jounce.json': text });
    const words = ['--setups', 'Baseline', '--axle', 'front', '--side', 'left'];
    const { document } = await jounceJson(['clearance', 'car.jounce.json', ...words], { folder });
    const rows = [...(document['rows'] ?? [])] as unknown as Json[];
    clearances.push(rows.find((row) => String(row['pair']) === 'odd,ball')?.['clearance']);
  }
  expect(clearances[0]).toBeTypeOf('number');
  expect(clearances).toEqual([clearances[0], clearances[0], clearances[0]]);
});
