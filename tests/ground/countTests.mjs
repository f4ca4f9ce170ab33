/**
 * Counts a run of the tests for `.ci/run`: prints `<passed> <failed>`, and on standard error what was not run.
 * A test that was left out counts as failed, and so does a file that could not be loaded or was not run at all.
 * Usage: node tests/ground/countTests.mjs <vitest's JSON report>
 */
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const TESTS = fileURLToPath(new URL('../', import.meta.url));

/**
 * @param {{ success: boolean, testResults: { name: string, status: string, assertionResults: { status: string, fullName: string }[] }[] }} report
 * @param {readonly string[]} files - every test file, absolute
 * @returns {{ passed: number, failed: number, complaints: string[] }}
 */
export const countTests = (report, files) => {
  const complaints = [];
  let passed = 0;
  let failed = 0;
  for (const { name, status, assertionResults } of report.testResults) {
    const wrong = assertionResults.filter((test) => test.status !== 'passed');
    passed += assertionResults.length - wrong.length;
    failed += wrong.length;
    for (const test of wrong) if (test.status !== 'failed') complaints.push(`not run: ${test.fullName} (${name})`);
    if (wrong.length > 0 || (status === 'passed' && assertionResults.length > 0)) continue;
    failed += 1;
    complaints.push(`could not be run: ${name}`);
  }
  const run = new Set(report.testResults.map(({ name }) => path.resolve(name)));
  for (const file of files.filter((name) => !run.has(name))) {
    failed += 1;
    complaints.push(`not run: ${file}`);
  }
  if (!report.success && failed === 0) {
    failed += 1;
    complaints.push('the run failed outside of its tests');
  }
  return { passed, failed, complaints };
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const names = readdirSync(TESTS, { recursive: true }).map(String);
  const files = names.filter((name) => /\.test\.tsx?$/.test(name)).map((name) => path.join(TESTS, name));
  const { passed, failed, complaints } = countTests(JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8')), files);
  complaints.forEach((line) => process.stderr.write(`${line}\n`));
  process.stdout.write(`${passed} ${failed}\n`);
}
