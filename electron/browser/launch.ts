import { spawn, type ChildProcess } from 'node:child_process';
import type { Command } from './browserCommand';

export type Launched = { readonly ok: true; readonly child: ChildProcess } | { readonly ok: false; readonly reason: string };

/**
 * Starts a program with a window and waits a little for it to fail: it has started when it still runs after `patienceMs`
 * or has ended without complaint by then.
 */
export const launch = (
  { program, args }: Command,
  patienceMs: number,
  environment: NodeJS.ProcessEnv = process.env,
): Promise<Launched> =>
  new Promise((resolve) => {
    const child = spawn(program, [...args], { stdio: ['ignore', 'ignore', 'pipe'], env: environment });
    let lastWords = '';
    child.stderr.on('data', (part: Buffer) => (lastWords = (lastWords + part.toString()).slice(-2000)));
    const fail = (reason: string): void => resolve({ ok: false, reason });
    const timer = setTimeout(() => resolve({ ok: true, child }), patienceMs);
    child.once('error', (error) => {
      clearTimeout(timer);
      fail(error.message);
    });
    child.once('exit', (status, signal) => {
      clearTimeout(timer);
      if (status === 0) resolve({ ok: true, child });
      else fail(lastWords.trim().split('\n').at(-1) || `it ended with ${status ?? signal}`);
    });
  });
