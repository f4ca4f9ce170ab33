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
const screens = {
  test: {
    name: 'screens',
    include: [SCREENS],
    globalSetup: ['tests/screens/buildWindow.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    fileParallelism: false,
  },
};

export default defineConfig({
  test: {
    projects: chromium ? [rest, screens] : [rest],
    reporters: [
      'default',
      ...(report ? [['json', { outputFile: report }] as ['json', { outputFile: string }]] : []),
      new WindowTestsReporter(chromium !== null),
    ],
  },
});
