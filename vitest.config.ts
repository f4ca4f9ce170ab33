import { defineConfig } from 'vitest/config';
import { findChromium } from './electron/browser/findChromium.ts';
import { WindowTestsReporter } from './tests/ground/windowTestsReporter.ts';

const SCREENS = 'tests/screens/**/*.test.{ts,tsx}';
const chromium = findChromium();
/** `.ci/run` counts the tests from this file. */
const report = process.env['JOUNCE_TEST_REPORT'];

const rest = {
  test: { name: 'tests', include: ['tests/**/*.test.{ts,tsx}'], exclude: [SCREENS], testTimeout: 60_000, hookTimeout: 60_000 },
};
/** @param mode - `long`: the random actions go on for longer */
const screensIn = (mode: string) => ({
  test: {
    name: 'screens',
    include: [SCREENS],
    globalSetup: ['tests/screens/buildWindow.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    fileParallelism: false,
    env: { JOUNCE_ACTIONS: mode === 'long' ? '1000' : '100' },
  },
});

export default defineConfig(({ mode }) => ({
  test: {
    projects: chromium ? [rest, screensIn(mode)] : [rest],
    reporters: [
      'default',
      ...(report ? [['json', { outputFile: report }] as ['json', { outputFile: string }]] : []),
      new WindowTestsReporter(chromium !== null),
    ],
  },
}));
