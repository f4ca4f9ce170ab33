import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

const css = readFileSync(path.resolve(import.meta.dirname, '../../../renderer/look/tokens.css'), 'utf8');

const tokensOf = (selector: string): Record<string, string> => {
  const block = css.slice(css.indexOf(selector)).match(/\{([^}]*)\}/)?.[1] ?? '';
  return Object.fromEntries([...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/gi)].map(([, name, value]) => [name, value]));
};
const light = tokensOf(':root {');
const dark = { ...light, ...tokensOf("[data-theme='dark']") };

/** Relative luminance and contrast ratio as WCAG 2 defines them. */
const luminance = (hex: string): number => {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.03928 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4);
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

const TEXT: readonly (readonly [string, readonly string[]])[] = [
  ['ink', ['bench', 'panel', 'card', 'well', 'plate-near', 'blue-wash', 'out-wash']],
  ['ink-2', ['panel', 'card', 'plate-near', 'blue-wash']],
  ['ink-3', ['panel', 'card', 'well', 'blue-wash']],
  ['left', ['panel', 'well']],
  ['right', ['panel', 'well']],
  ['ghost', ['panel']],
  ['ok', ['ok-wash']],
  ['watch', ['watch-wash', 'panel']],
  ['out', ['out-wash', 'panel']],
  ['on-out', ['out']],
  ['on-blue', ['blue-fill']],
  ['on-blue-2', ['blue-fill']],
  ['rail-ink-2', ['rail']],
];

describe.each([
  ['light', light],
  ['dark', dark],
])('%s', (_, tokens) => {
  test.each(TEXT.flatMap(([ink, grounds]) => grounds.map((ground) => [ink, ground] as const)))(
    '%s is read on %s',
    (ink, ground) => expect(contrast(tokens[ink] ?? '', tokens[ground] ?? '')).toBeGreaterThanOrEqual(4.5),
  );
  test.each(['panel', 'card', 'well'])('edges of what can be operated stand out on %s', (ground) =>
    expect(contrast(tokens['edge'] ?? '', tokens[ground] ?? '')).toBeGreaterThanOrEqual(3),
  );
});

test('no text is set under 12 px', () => {
  expect(css).toContain('--t-note: 12px');
});
