import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import { expect, test } from 'vitest';
import { WINDOW_TESTS_NOT_RUN } from './windowTestsReporter';

const vitest = path.join(path.dirname(createRequire(import.meta.url).resolve('vitest/package.json')), 'vitest.mjs');
const ROOT = path.resolve(import.meta.dirname, '../..');

const run = (environment: Record<string, string>) => {
  const inner = { ...process.env, VITEST: undefined, JOUNCE_TEST_REPORT: undefined, ...environment };
  return spawnSync(process.execPath, [vitest, 'run', 'tests/ground/countTests', 'tests/screens'], {
    cwd: ROOT,
    env: inner,
    encoding: 'utf8',
  });
};

test('without a Chromium the tests pass and the last line says that the window tests were not run', () => {
  const { status, stdout } = run({ JOUNCE_CHROMIUM: '/nowhere/chromium' });
  expect([status, stdout.trimEnd().split('\n').at(-1)]).toEqual([0, WINDOW_TESTS_NOT_RUN]);
  expect(stdout).toContain('1 passed');
});
