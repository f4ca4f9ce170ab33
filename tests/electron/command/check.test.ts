import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import type { CarDocument } from '../../../geometry/index';
import { carPath, jounce, jounceJson, readJsonFile, type Json } from './jounce';

const TURNBUCKLE = { kind: 'turnbuckle', rod: 'tieRod', perTurn: 1.5, range: [-0.25, 0.25], step: 0.25 };

describe('check', () => {
  test('a good file: its name, version, axles, setups and warnings', async () => {
    const { status, document } = await jounceJson(['check', carPath(24)]);
    expect(status).toBe(0);
    expect(Object.keys(document).sort()).toEqual(['axles', 'by', 'contract', 'name', 'ok', 'setups', 'version', 'warnings']);
    expect(document).toMatchObject({
      ok: true,
      name: 'Check car 24',
      version: 1,
      axles: ['front', 'rear'],
      setups: ['Baseline', 'Trial', 'Turns'],
    });
    for (const warning of document['warnings'] as readonly object[])
      expect(Object.keys(warning).sort()).toEqual(['code', 'message', 'path']);
  });

  test('a setting off its step is warned of', async () => {
    const car = (await readJsonFile(carPath(22))) as unknown as { setups: Record<string, object> };
    car.setups['Odd'] = { front: { both: { plateAcross: -2.123 } } };
    const { document } = await jounceJson(['check', '-'], { stdin: JSON.stringify(car) });
    expect(JSON.stringify(document['warnings'])).toContain('plateAcross');
  });

  test('a setup whose toe leaves the range of its adjuster is warned of, with numbers', async () => {
    const car = (await readJsonFile(carPath(22))) as unknown as CarDocument;
    const { toeAdjuster = '' } = car.front ?? {};
    const front = { ...car.front, adjusters: { ...car.front?.adjusters, [toeAdjuster]: { ...TURNBUCKLE } } };
    const setups = { Straight: { front: { setToe: 0 } }, 'Far out': { front: { setToe: 2 } } };
    const { status, document } = await jounceJson(['check', '-'], { stdin: JSON.stringify({ ...car, front, setups }) });
    expect(status).toBe(0);
    const toe = (document['warnings'] as readonly Json[]).filter(({ code }) => String(code) === 'setup-toe-out-of-range');
    expect(toe.map(({ path }) => String(path))).toEqual(['setups["Far out"].front.setToe']);
    expect(String(toe[0]?.['message'])).toMatch(
      new RegExp(`^The toe 2° needs ${toeAdjuster} at −?[0-9.]+ left, −?[0-9.]+ right, outside its range from −0.25 to 0.25\\.$`),
    );
  });

  test('a toe adjuster that moves no toe is said once, of the axle', async () => {
    const sample = (await readJsonFile(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'))) as unknown as CarDocument;
    // its questions are of setups that are left out here
    const { questions: _questions, ...car } = sample;
    const front = { ...car.front, toeAdjuster: 'perch' };
    const setups = { 'Trial 3': { front: { setToe: 0 } }, Other: { front: { setToe: 1 } } };
    const { document } = await jounceJson(['check', '-'], { stdin: JSON.stringify({ ...car, front, setups, onCar: 'Trial 3' }) });
    const warnings = (document['warnings'] as readonly Json[]).map(({ code, path }) => `${String(code)} ${String(path)}`);
    expect(warnings.filter((warning) => !warning.startsWith('setting'))).toEqual(['toe-adjuster-idle front.toeAdjuster']);
  });

  test('a mesh that is not there is warned of: the file itself is sound', async () => {
    const sample = (await readJsonFile(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'))) as unknown as CarDocument;
    const shape = { kind: 'mesh', file: path.join(ROOT, 'samples/nowhere.stl') };
    const parts = { ...sample.parts, archLiner: { ...sample.parts?.['archLiner'], shape } };
    const { status, document } = await jounceJson(['check', '-'], { stdin: JSON.stringify({ ...sample, parts }) });
    expect(status).toBe(0);
    const [warning, ...others] = document['warnings'] as readonly Json[];
    expect(warning).toMatchObject({ code: 'mesh-unreadable', path: 'parts.archLiner.shape.file' });
    expect(String(warning?.['message'])).toMatch(
      /^No mesh: cannot read .*nowhere\.stl: no such file; the file is looked for beside/,
    );
    expect(others).toEqual([]);
  });

  test('in words: one line says that there are no faults', async () => {
    const { status, stdout } = await jounce(['check', carPath(22)]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Check car 22: no faults/);
  });
});

describe('schema', () => {
  test('is a JSON Schema; as a JSON answer it says who gave it', async () => {
    const plain = JSON.parse((await jounce(['schema'])).stdout) as object;
    expect(plain).toHaveProperty('$schema');
    expect(plain).toHaveProperty('$id');
    const { status, document } = await jounceJson(['schema']);
    expect(status).toBe(0);
    const { by, contract, ...schema } = document as unknown as Record<string, unknown>;
    expect(by).toMatch(/^jounce /);
    expect(contract).toBe(1);
    expect(schema).toEqual(plain);
  });
});

test('threads that hold by little are warned of, by setup; what is so on both sides is said once', async () => {
  const car = (await readJsonFile(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'))) as unknown as CarDocument;
  const studs = { diameter: 14, pitch: 1.5, engaged: 22, material: 'steel' as const };
  const rear = { ...car.rear!, wheel: { ...car.rear!.wheel, studs } };
  const setups = {
    ...car.setups,
    Spaced: { rear: { left: { spacer: 5 }, right: { spacer: 10 } } },
    Both: { rear: { both: { spacer: 5 } } },
  };
  const { status, document } = await jounceJson(['check', '-'], { stdin: JSON.stringify({ ...car, rear, setups, limits: [] }) });
  expect(status).toBe(0);
  const threads = (document['warnings'] as readonly Json[]).filter(({ code }) => String(code).startsWith('thread-'));
  // 17 mm and 12 mm on M14
  expect(threads.map(({ code, path: at, message }) => [code, at, String(message).split(':')[0]])).toEqual([
    ['thread-watch', 'setups.Spaced', 'rear left'],
    ['thread-out', 'setups.Spaced', 'rear right'],
    ['thread-watch', 'setups.Both', 'rear'],
  ]);
});
