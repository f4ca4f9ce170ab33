import { execFileSync, spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { sayWhileWaiting } from '../../../electron/command/terminal';
import { temporaryFolder } from '../temporaryFolder';
import { builtCommand, carPath } from './jounce';

const { isTTY } = process.stderr;

afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
  process.stderr.isTTY = isTTY;
});

describe('a named pipe as car', () => {
  test('is read when somebody writes to it, and Ctrl-C ends the wait for that', async () => {
    const folder = await temporaryFolder();
    const pipe = path.join(folder, 'car');
    execFileSync('mkfifo', [pipe]);
    const main = await builtCommand();
    const started = (): { readonly child: ReturnType<typeof spawn>; readonly status: Promise<number | null> } => {
      const child = spawn(process.execPath, [main, 'check', pipe], { stdio: 'ignore' });
      return { child, status: new Promise((resolve) => child.on('close', resolve)) };
    };
    const read = started();
    execFileSync('bash', ['-c', 'cat > "$0"', pipe], { input: await readFile(carPath(22)) });
    expect(await read.status).toBe(0);

    const waiting = started();
    await new Promise((resolve) => setTimeout(resolve, 1500));
    waiting.child.kill('SIGINT');
    expect(await waiting.status).toBe(130);
  });
});

describe('waiting for input', () => {
  const saidAfter = (ms: number, isTerminal: boolean, comes: boolean): string => {
    vi.useFakeTimers();
    process.stderr.isTTY = isTerminal;
    const write = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    const hasCome = sayWhileWaiting('car.fifo');
    if (comes) hasCome();
    vi.advanceTimersByTime(ms);
    hasCome();
    return write.mock.calls.map(([text]) => String(text)).join('');
  };

  test('is told of once at a terminal, after half a second', () => {
    expect(saidAfter(3000, true, false)).toBe('jounce: waiting for car.fifo\n');
  });

  test.each([
    ['before half a second', 400, true, false],
    ['to nobody', 3000, false, false],
    ['when it has come', 3000, true, true],
  ])('is not told of %s', (_, ms, isTerminal, comes) => {
    expect(saidAfter(ms, isTerminal, comes)).toBe('');
  });
});
