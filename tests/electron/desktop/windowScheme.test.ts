import { expect, test } from 'vitest';
import { answerScheme, isOwnPage } from '../../../electron/desktop/windowScheme';
import { readBuiltFiles } from '../../../electron/serve/builtFiles';
import { temporaryFolder } from '../temporaryFolder';

const builtFiles = async () =>
  readBuiltFiles(
    `${await temporaryFolder({ 'window/index.html': 'page', 'window/assets/a.js': 'script', 'secret.js': 'outside' })}/window`,
  );

test('the scheme answers the built files with the headers that fence the window in', async () => {
  const answer = answerScheme(await builtFiles(), 'GET', 'jounce://window/assets/a.js?v=1#top');
  expect([answer.status, answer.body.toString()]).toEqual([200, 'script']);
  expect(answer.headers['Content-Security-Policy']).toContain("script-src 'self'");
  expect(answer.headers['X-Content-Type-Options']).toBe('nosniff');
});

test.each([
  'jounce://window/../secret.js',
  'jounce://window/%2e%2e/secret.js',
  'jounce://window//secret.js',
  'jounce://other/index.html',
  'jounce://window.evil/index.html',
  'file:///etc/passwd',
  'jounce://window',
  '',
])('the scheme finds nothing at %s', async (address) => {
  expect(answerScheme(await builtFiles(), 'GET', address).status).toBe(404);
});

test('the scheme answers GET alone', async () => {
  expect(answerScheme(await builtFiles(), 'POST', 'jounce://window/index.html').status).toBe(405);
});

test('the window may go to its own page and nowhere else', () => {
  expect(['jounce://window/index.html', 'jounce://window/index.html?a#b'].map(isOwnPage)).toEqual([true, true]);
  const others = [
    'https://evil.example/',
    'file:///etc/passwd',
    'jounce://window.evil/index.html',
    'jounce://window/other.html',
    'javascript:0',
  ];
  expect(others.map(isOwnPage)).toEqual(others.map(() => false));
});
