import { expect, test } from 'vitest';
import { countTests } from './countTests.mjs';

const file = (name: string, status: string, ...statuses: string[]) => ({
  name,
  status,
  assertionResults: statuses.map((each, index) => ({ status: each, fullName: `${name} ${index}` })),
});
const report = (...testResults: ReturnType<typeof file>[]) => ({
  success: testResults.every(({ status }) => status === 'passed'),
  testResults,
});

test('tests are counted one by one', () => {
  const counted = countTests(
    report(file('/a.test.ts', 'passed', 'passed', 'passed'), file('/b.test.ts', 'failed', 'passed', 'failed')),
    [],
  );
  expect(counted).toEqual({ passed: 3, failed: 1, complaints: [] });
});

test('what was left out fails: a test, a file that cannot be loaded, a file that was not run', () => {
  expect(countTests(report(file('/a.test.ts', 'passed', 'passed', 'skipped')), []).failed).toBe(1);
  expect(countTests(report(file('/a.test.ts', 'failed')), []).failed).toBe(1);
  expect(countTests(report(file('/a.test.ts', 'passed', 'passed')), ['/a.test.ts', '/screens/b.test.ts'])).toEqual({
    passed: 1,
    failed: 1,
    complaints: ['not run: /screens/b.test.ts'],
  });
});

test('a run that failed without a failed test fails', () => {
  expect(countTests({ ...report(file('/a.test.ts', 'passed', 'passed')), success: false }, []).failed).toBe(1);
});
