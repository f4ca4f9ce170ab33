import { expect, test } from 'vitest';
import { judgeLicences } from './licences.mjs';

const nothing = () => undefined;

test('a licence that is not on the list is named, with the package', () => {
  const packages = {
    '': { license: 'MIT' },
    'node_modules/good': { version: '1.0.0', license: 'MIT' },
    'node_modules/bad': { version: '2.0.0', license: 'GPL-3.0-only' },
    'node_modules/a/node_modules/odd': { version: '3.0.0', license: 'MPL-2.0' },
    'node_modules/tool': { version: '4.0.0', license: 'MPL-2.0', dev: true },
    'node_modules/silent': { version: '5.0.0' },
  };
  expect(judgeLicences(packages, nothing)).toEqual([
    'bad 2.0.0 (handed on) is under GPL-3.0-only, which is not on the list in tests/ground/licences.mjs.',
    'odd 3.0.0 (handed on) is under MPL-2.0, which is not on the list in tests/ground/licences.mjs.',
    'silent 5.0.0 states no licence.',
  ]);
});

test('the installed package is asked too', () => {
  const packages = { 'node_modules/changed': { version: '1.0.0', license: 'MIT' } };
  expect(judgeLicences(packages, () => 'SSPL-1.0')).toHaveLength(1);
});
