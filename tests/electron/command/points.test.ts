import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporaryFolder';
import { carPath, jounce, jounceBatch, jounceJson, readJsonFile, type Json } from './jounce';

const CAR = carPath(21);
let folder = '';
let points: Readonly<Record<string, readonly number[]>> = {};
const list = async (name: string, rows: readonly (readonly (string | number)[])[]): Promise<string> => {
  const file = path.join(folder, name);
  await writeFile(file, rows.map((row) => row.join(';')).join('\r\n'));
  return file;
};

beforeEach(async () => {
  folder = await temporaryFolder();
  points = (await readJsonFile(CAR))['front']?.['points'] as unknown as typeof points;
});

/** The front points of the car in inches, X back, Y right, from a datum 10 in ahead and 5 in below, with decimal commas. */
const elsewhere = (): (string | number)[][] =>
  Object.entries(points).map(([name, [x = 0, y = 0, z = 0]]) => [
    name,
    ...[10 - x / 25.4, -y / 25.4, z / 25.4 + 5].map((value) => String(value).replace('.', ',')),
  ]);
const TO_CAR = ['--axle', 'front', '--axes', 'back,right,up', '--units', 'in'];

describe('a list in another frame', () => {
  test('comes to the car by its own points, row by row, and nothing is written', async () => {
    const file = await list('elsewhere.csv', elsewhere());
    const datum = ['--datum', 'armFront,armRear,strutTop,wheelCentre'];
    const { status, document } = await jounceJson(['points', file, '--car', CAR, ...TO_CAR, ...datum]);
    expect(status).toBe(0);
    expect(Object.keys(document).sort()).toEqual(
      [
        'axes',
        'axle',
        'by',
        'car',
        'contract',
        'datum',
        'list',
        'out',
        'points',
        'rows',
        'side',
        'sides',
        'units',
        'warnings',
      ].sort(),
    );
    expect(document).toMatchObject({
      axle: 'front',
      units: { length: 'mm' },
      list: { count: Object.keys(points).length, separator: 'semicolon', decimal: 'comma', header: false, unit: 'in' },
      axes: { x: 'back', y: 'right', z: 'up', handed: 'right' },
      side: 'left',
      sides: 'each',
      warnings: [],
      out: null,
    });
    for (const { shift } of document['points'] as unknown as { shift: number }[]) expect(shift).toBeLessThan(1e-9);
    const [first] = document['rows'] as unknown as object[];
    expect(Object.keys(first ?? {}).sort()).toEqual(['at', 'line', 'name', 'point', 'read', 'side', 'state', 'suggestion']);
    const fit = document['datum'];
    expect(fit?.['rms']).toBeLessThan(1e-9);
    expect((fit?.['translation'] as unknown as number[]).map((v) => Math.round(v * 1e6) / 1e6 + 0)).toEqual([254, 0, -127]);
    expect(Object.keys((fit?.['points'] as unknown as object[])[0] ?? {})).toEqual(['name', 'wanted', 'found', 'miss']);
    const batch = await jounceBatch([
      {
        id: 1,
        car: CAR,
        ask: 'points',
        options: { in: file, axle: 'front', axes: 'back,right,up', units: 'in', datum: datum[1] },
      },
      { id: 2, car: CAR, ask: 'points', options: { in: file, axle: 'front', out: 'x.json' } },
      { id: 3, car: CAR, ask: 'points', options: { in: '-', axle: 'front' } },
    ]);
    expect(batch.answers[0]?.['answer']).toEqual(document);
    expect(batch.answers[1]?.['error']).toMatchObject({ kind: 'usage' });
    expect(batch.answers[2]?.['error']).toMatchObject({ kind: 'usage' });
  });

  test('a header says where its axes point; --axes goes over it, and is told of', async () => {
    const file = await list('headed.csv', [['name', 'X back (in)', 'Y right (in)', 'Z up (in)'], ...elsewhere()]);
    const asked = ['points', file, '--car', CAR, '--axle', 'front'];
    const headed = await jounceJson(asked);
    expect(headed.document).toMatchObject({ axes: { x: 'back', y: 'right', z: 'up' }, units: { length: 'mm' }, warnings: [] });
    const over = await jounceJson([...asked, '--axes', 'forward,left,up']);
    expect(over.document).toMatchObject({ axes: { x: 'forward' } });
    expect(over.document['warnings']).toContainEqual({
      code: 'axes-differ',
      path: null,
      message: 'The header of the list says back, right, up; it was read as forward, left, up.',
    });
  });

  test("reference points from a file in the car's frame; a list on standard input; words", async () => {
    const { strutTop = [], armFront = [], wheelCentre = [] } = points;
    const datum = await list('datum.csv', [
      ['name', 'x [mm]', 'y [mm]', 'z [mm]'],
      ['strutTop', ...strutTop],
      ['armFront', ...armFront],
      ['wheelCentre', ...wheelCentre],
    ]);
    const text = elsewhere()
      .map((row) => row.join('\t'))
      .join('\n');
    const { status, stdout } = await jounce(['points', '-', '--car', CAR, ...TO_CAR, '--datum', datum], { stdin: text });
    expect(status).toBe(0);
    expect(stdout).not.toContain('datum-planar');
    expect(stdout).toContain('Nothing was taken');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  test('--out writes the car that it makes, changes nothing but the points, and nothing over another file', async () => {
    const moved = Object.entries(points).map(([name, [x = 0, y = 0, z = 0]]) => [name, x, y, name === 'rackEnd' ? z + 2 : z]);
    const file = await list('moved.csv', moved);
    const out = path.join(folder, 'new.jounce.json');
    const words = ['points', file, '--car', CAR, '--axle', 'front', '--units', 'mm', '--out', out];
    expect((await jounceJson(words)).document['out']).toBe(out);
    const [before, after] = [await readFile(CAR, 'utf8'), await readFile(out, 'utf8')];
    const changed = after.split('\n').filter((line, i) => line !== before.split('\n')[i]);
    expect(changed).toHaveLength(1);
    expect(changed[0]?.trim()).toBe(String((points['rackEnd']?.[2] ?? 0) + 2));
    expect((await jounce(['check', out])).status).toBe(0);
    expect(await jounceJson(words)).toMatchObject({ status: 3, document: { error: { kind: 'system' } } });
    expect((await jounce([...words, '--force'])).status).toBe(0);
    expect(await jounceJson([...words.slice(0, -1), CAR, '--force'])).toMatchObject({
      status: 2,
      document: { error: { kind: 'usage' } },
    });
  });
});

describe('what is wrong', () => {
  const errorOf = async (words: readonly string[], stdin = ''): Promise<Json> => {
    const ended = await jounceJson(['points', '-', '--car', CAR, '--axle', 'front', ...words], { stdin });
    expect(ended.status).toBe(2);
    return ended.document['error'] as Json;
  };
  const POINTS = 'armFront,1,2,3\narmRear,2,2,3\nballJoint,4,2,3\n';

  test('rows that cannot be read: every one with line and column', async () => {
    const error = await errorOf(['--units', 'mm'], 'armFront,1,2,3\narmRear,1,x,3\nballJoint,1,2\n');
    expect(error).toMatchObject({
      kind: 'file',
      faults: [
        { code: 'bad-points', line: 2, column: 11, found: '"x"' },
        { line: 3, column: 1 },
      ],
    });
  });

  test('names: shown, and refused only when they would be taken; --map says what they are', async () => {
    const text = 'armFront,1,2,3\ntieRod_out,1,2,3\n';
    const shown = await jounceJson(['points', '-', '--car', CAR, '--axle', 'front', '--units', 'mm'], { stdin: text });
    expect((shown.document['rows'] as Json)[1]).toMatchObject({ state: 'unknown', suggestion: 'tieRodEnd' });
    const out = ['--out', path.join(folder, 'never.json')];
    expect(await errorOf(['--units', 'mm', ...out], text)).toMatchObject({
      kind: 'file',
      faults: [{ code: 'unnamed-point', line: 2, hint: 'did you mean `tieRodEnd`?' }],
    });
    const mapped = await jounceJson(
      ['points', '-', '--car', CAR, '--axle', 'front', '--units', 'mm', '--map', 'tieRod_out=none'],
      { stdin: text },
    );
    expect((mapped.document['rows'] as Json)[1]).toMatchObject({ state: 'leftOut' });
    expect(await errorOf(['--units', 'mm', '--map', 'tieRod_out=tieRodEn'], text)).toMatchObject({ kind: 'usage' });
  });

  test('points that make no linkage are not written', async () => {
    const out = path.join(folder, 'none.json');
    const error = await errorOf(['--units', 'mm', '--out', out], `tieRodEnd,${points['rackEnd']?.join(',')}\n`);
    expect(error).toMatchObject({ kind: 'file' });
    await expect(readFile(out)).rejects.toThrow();
  });

  test('reference points: unknown, on a line, mirrored', async () => {
    expect(await errorOf(['--units', 'mm', '--datum', 'armFront,armRear,strutTop'], POINTS)).toMatchObject({
      faults: [{ code: 'datum-unknown' }],
    });
    expect(await errorOf(['--units', 'mm', '--datum', 'armFront,armRear,ballJoint'], POINTS)).toMatchObject({
      faults: [{ code: 'datum-collinear' }],
    });
    const mirrored = Object.entries(points)
      .map(([name, [x = 0, y = 0, z = 0]]) => [name, x, -y, z].join(','))
      .join('\n');
    const datum = ['--datum', 'armFront,armRear,strutTop,wheelCentre'];
    expect(await errorOf(['--units', 'mm', ...datum], mirrored)).toMatchObject({ faults: [{ code: 'datum-mirrored' }] });
    expect(await errorOf(['--units', 'mm', '--datum', 'armFront,armRer,strutTop'], POINTS)).toMatchObject({ kind: 'usage' });
  });

  test.each([
    [[], 'unit of the list'],
    [['--units', 'mm', '--axes', 'back,up,forward'], 'same line'],
    [['--units', 'mm', '--axes', 'bck,up,left'], 'did you mean `back`'],
    [['--units', 'ft'], 'not one of'],
    [['--units', 'mm', '--mirror', '--side', 'both'], 'one measured side'],
    [['--units', 'mm', '--average'], '--side both'],
    [['--units', 'mm', '--travel', '5'], 'without a list'],
    [['--units', 'mm', '--datum', 'armFront,armRear,armFront'], '"armFront" is given twice'],
    [['--units', 'mm', '--datum', 'armFront,,armRear'], 'nothing between two commas'],
    [['--units', 'mm', '--out', '-'], 'give it a name'],
  ])('%j', async (words, expected) => {
    expect((await errorOf(words, POINTS))['message']).toContain(expected);
  });

  test('no car, two lists, list options without a list', async () => {
    expect((await jounceJson(['points', 'a.csv'])).document['error']?.['message']).toContain('--car CAR');
    expect((await jounceJson(['points', '-', '--car', '-'])).document['error']?.['message']).toContain('standard input');
    expect((await jounceJson(['points', '--car', CAR, '--units', 'mm'])).document['error']?.['message']).toContain(
      'name the list',
    );
  });
});

describe('the points of the car', () => {
  test('at a position, beside design; read in again they are those of the list', async () => {
    const out = path.join(folder, 'out.csv');
    const position = ['--travel', '20,-10', '--rack', '5', '--axle', 'front'];
    const { document, status } = await jounceJson(['points', '--car', CAR, ...position, '--csv', out]);
    expect(status).toBe(0);
    const rows = document['rows'] as unknown as {
      side: string;
      name: string;
      at: number[];
      design: number[];
      change: number[];
    }[];
    const [wheel] = rows.filter(({ name, side }) => name === 'wheelCentre' && side === 'left');
    expect(wheel?.change[2]).toBeCloseTo(20, 9);
    expect(wheel?.design).toEqual(points['wheelCentre']);
    expect((await jounce(['points', '--car', CAR, ...position])).stdout.trimEnd()).toBe(
      (await readFile(out, 'utf8')).replaceAll('\r\n', '\n').trimEnd() && (await readFile(out, 'utf8')).trimEnd(),
    );
    const back = await jounceJson(['points', out, '--car', CAR, '--axle', 'front', '--side', 'both']);
    const taken = back.document['points'] as unknown as { point: string; side: string; at: number[] }[];
    expect((back.document['warnings'] as unknown as { code: string }[]).map(({ code }) => code)).toContain('list-is-posed');
    expect(taken).toHaveLength(rows.length);
    for (const { name, side, at } of rows) expect(taken.find((p) => p.point === name && p.side === side)?.at).toEqual(at);
  });

  test('--csv - is standard output, and takes neither --json nor --force', async () => {
    const words = ['points', '--car', CAR, '--csv', '-'];
    const { status, stdout } = await jounce(words, { folder });
    expect([status, stdout]).toEqual([0, (await jounce(words.slice(0, -2))).stdout.replace(/\r?\n$/, '\r\n')]);
    for (const other of ['--json', '--force']) expect((await jounce([...words, other], { folder })).status).toBe(2);
  });

  test('numbers are never cut', async () => {
    const stdin = `armFront,1234567,-2345678,3456789`;
    const { stdout } = await jounce(['points', '-', '--car', CAR, '--axle', 'front', '--units', 'm'], { stdin });
    for (const number of ['1234567000.00', '−2345678000.00', '3456789000.00']) expect(stdout).toContain(number);
    expect(stdout).not.toContain('…');
  });

  test('a position out of reach is that error', async () => {
    expect(await jounceJson(['points', '--car', CAR, '--travel', '900'])).toMatchObject({
      status: 1,
      document: { error: { kind: 'unreachable' } },
    });
  });
});
