import { describe, expect, test } from 'vitest';
import { carPath, jounce, jounceJson, readJsonFile } from './jounce';

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
