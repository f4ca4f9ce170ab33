import { expect, test } from 'vitest';
import { refreshedExcerpt } from './excerpt';
import { blocksOf, withBlock, withSections } from './markdown';

const OUTPUT = 'A car\n  Camber       −1.00  deg\n  Toe           0.05  deg\n  Caster        4.14  deg\n';

test('an excerpt takes over the numbers of today', () => {
  const old = 'A car\n…\n  Caster        9.99  deg';
  expect(refreshedExcerpt(old, OUTPUT)).toBe('A car\n…\n  Caster        4.14  deg');
});

test('without lines left out it is the whole output', () => {
  expect(refreshedExcerpt('whatever', OUTPUT)).toBe(OUTPUT.trimEnd());
});

test('a line that the output has no longer, or in another order, is an error', () => {
  expect(() => refreshedExcerpt('…\n  Trail  1 mm', OUTPUT)).toThrow('Trail');
  expect(() => refreshedExcerpt('…\n  Caster  1 deg\n  Toe  1 deg', OUTPUT)).toThrow('Toe');
});

const DOCUMENT = 'one\n```sh status=2\nls\n```\n```text\nold\n```\n<!-- generated: list -->\nold\n<!-- end -->\n';

test('blocks are found with language and remark, and replaced in place', () => {
  const [command, output] = blocksOf(DOCUMENT);
  expect(command).toMatchObject({ language: 'sh', remark: 'status=2', text: 'ls' });
  expect(withBlock(DOCUMENT, output!, 'new\nlines')).toBe(DOCUMENT.replace('old', 'new\nlines'));
});

test('generated parts are replaced between their marks; one that nobody makes is an error', () => {
  expect(withSections(DOCUMENT, new Map([['list', 'new\n']]))).toContain('<!-- generated: list -->\nnew\n<!-- end -->');
  expect(() => withSections(DOCUMENT, new Map())).toThrow('list');
});
