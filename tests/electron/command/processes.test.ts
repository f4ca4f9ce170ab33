import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmod, readdir, symlink } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { VERBS } from '../../../electron/command/optionSpecs';
import { temporaryFolder } from '../temporaryFolder';
import { builtCommand, carPath, jounce, jounceJson } from './jounce';

const sweepOf = (steps: number): string[] => [
  'sweep',
  carPath(22),
  '--motion',
  'bump',
  '--from',
  '-20',
  '--to',
  '20',
  '--steps',
  String(steps),
];

describe('a command that is stopped', () => {
  test('by Ctrl-C while it waits ends at once with 130', async () => {
    const child = spawn(process.execPath, [await builtCommand(), 'batch']);
    child.stdin.write('{"id":1,"ask":"schema"}\n');
    await once(child.stdout, 'data');
    child.kill('SIGINT');
    const [status] = (await once(child, 'close')) as [number | null];
    expect(status).toBe(130);
  });

  test('by Ctrl-C while it works ends at once with 130, and leaves no file', async () => {
    const folder = await temporaryFolder();
    const child = spawn(process.execPath, [await builtCommand(), ...sweepOf(100_000), '--csv', 'out.csv'], {
      cwd: folder,
      stdio: 'ignore',
    });
    await new Promise((resolve) => setTimeout(resolve, 900));
    const asked = performance.now();
    child.kill('SIGINT');
    const [status] = (await once(child, 'close')) as [number | null];
    expect(status).toBe(130);
    expect(performance.now() - asked).toBeLessThan(2000);
    expect(await readdir(folder)).toEqual([]);
  });

  test('by a reader that has had enough says nothing', async () => {
    const child = spawn(process.execPath, [await builtCommand(), ...sweepOf(3000), '--json']);
    const errors: Buffer[] = [];
    child.stderr.on('data', (piece: Buffer) => errors.push(piece));
    await once(child.stdout, 'data');
    child.stdout.destroy();
    await once(child, 'close');
    expect(Buffer.concat(errors).toString()).toBe('');
  });
});

describe('help and version', () => {
  test('every verb has help with an example; --json gives it as one document', async () => {
    for (const verb of ['check', 'readings', 'sweep', 'schema', 'batch']) {
      const { status, stdout } = await jounce([verb, '--help']);
      expect(status).toBe(0);
      expect(stdout).toMatch(/examples?:\n {2}\S/);
      expect(stdout).toContain('jounce ');
      const { document } = await jounceJson([verb, '--help']);
      expect(document['help']).toBe(stdout.trimEnd());
    }
    expect((await jounce(['--help'])).stdout).toContain('readings');
    expect((await jounce(['help'])).status).toBe(0);
  });

  test('every example that help gives runs as it stands', async () => {
    const bin = await temporaryFolder({ jounce: `#!/bin/sh\nexec '${process.execPath}' '${await builtCommand()}' "$@"\n` });
    await chmod(path.join(bin, 'jounce'), 0o755);
    const folder = await temporaryFolder();
    await symlink(path.join(ROOT, 'samples'), path.join(folder, 'samples'));
    for (const example of VERBS.flatMap((verb) => verb.examples)) {
      const child = spawn('sh', ['-c', example], { cwd: folder, env: { ...process.env, PATH: `${bin}:${process.env['PATH']}` } });
      const output: Buffer[] = [];
      child.stdout.on('data', (piece: Buffer) => output.push(piece));
      child.stderr.on('data', (piece: Buffer) => output.push(piece));
      const [status] = (await once(child, 'close')) as [number | null];
      expect(status, `${example}: ${Buffer.concat(output).toString().slice(0, 300)}`).toBe(0);
      for (const line of example.split('\n')) expect(line.length).toBeLessThanOrEqual(98);
    }
  });

  test('readings are explained, one or all of them', async () => {
    const all = (await jounce(['help', 'readings-list'])).stdout;
    for (const key of ['camber', 'rollCentreHeight', 'rake']) expect(all).toContain(key);
    const one = (await jounce(['help', 'scrubRadius'])).stdout;
    expect(one).toContain('Definition');
    expect(one).toContain('Source');
  });

  test('the version is said', async () => {
    expect((await jounce(['--version'])).stdout).toMatch(/^jounce \d+\.\d+\.\d+\n$/);
    expect((await jounceJson(['--version'])).document).toEqual({ by: expect.stringMatching(/^jounce /), contract: 1 });
  });
});

describe('how long it takes', () => {
  test('readings answer within twice an empty node, plus 50 ms', async () => {
    const main = await builtCommand();
    const time = async (words: readonly string[]): Promise<number> => {
      const began = performance.now();
      await once(spawn(process.execPath, words, { stdio: 'ignore' }), 'close');
      return performance.now() - began;
    };
    const least = { empty: Infinity, readings: Infinity };
    // taken in turns, so that what else the machine does falls on both alike; other work can only make a run slower, so the
    // least of many runs is the program's own time
    for (let round = 0; round < 40 && least.readings >= 2 * least.empty + 50; round++) {
      least.empty = Math.min(least.empty, await time(['-e', '0']));
      least.readings = Math.min(least.readings, await time([main, 'readings', carPath(21), '--json']));
    }
    expect(least.readings).toBeLessThan(2 * least.empty + 50);
  });
});
