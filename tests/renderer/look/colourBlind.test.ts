import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

const look = path.resolve(import.meta.dirname, '../../../renderer');
const tokensCss = readFileSync(path.join(look, 'look/tokens.css'), 'utf8');
const curvesCss = readFileSync(path.join(look, 'curves/curves.css'), 'utf8');

const tokensOf = (selector: string): Record<string, string> => {
  const block = tokensCss.slice(tokensCss.indexOf(selector)).match(/\{([^}]*)\}/)?.[1] ?? '';
  return Object.fromEntries([...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/gi)].map(([, name, value]) => [name, value]));
};
const light = tokensOf(':root {');
const dark = { ...light, ...tokensOf("[data-theme='dark']") };

type Three = readonly [number, number, number];

/**
 * Linear RGB as it is seen without one kind of cone, at full severity: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes,
 * A Physiologically-based Model for Simulation of Color Vision Deficiency, IEEE TVCG 15 (6), 2009, table 1.
 */
const SEEN_AS: Readonly<Record<string, readonly [Three, Three, Three]>> = {
  'all cones': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

const linear = (hex: string): Three =>
  [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  }) as unknown as Three;
const times = (matrix: readonly [Three, Three, Three], [r, g, b]: Three): Three =>
  matrix.map(([x, y, z]) => Math.min(1, Math.max(0, x * r + y * g + z * b))) as unknown as Three;

/** CIE L*a*b* of linear sRGB, white D65. */
const lab = ([r, g, b]: Three): Three => {
  const [x, y, z] = [
    (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505,
    0.2126 * r + 0.7152 * g + 0.0722 * b,
    (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089,
  ].map((value) => (value > 216 / 24389 ? Math.cbrt(value) : ((24389 / 27) * value + 16) / 116)) as unknown as Three;
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
};
const apart = (a: Three, b: Three): number => Math.hypot(...a.map((value, index) => value - (b[index] ?? 0)));

describe.each([
  ['light', light],
  ['dark', dark],
])('%s theme', (_, tokens) => {
  test.each(Object.entries(SEEN_AS))('left, right and what is compared stand out, left from right: %s', (_kind, matrix) => {
    const seen = (token: string): Three => lab(times(matrix, linear(tokens[token] ?? '')));
    expect(apart(seen('left'), seen('right'))).toBeGreaterThan(20);
    for (const line of ['left', 'right', 'ghost']) expect(apart(seen(line), seen('card')), line).toBeGreaterThan(30);
  });
});

test('each line of a plot has dashes of its own, so that no two need their colours', () => {
  const dashesOf = (selector: string): string => {
    const rule = new RegExp(`^\\.curve\\.${selector.replaceAll('.', '\\.')} \\{([^}]*)\\}`, 'm').exec(curvesCss)?.[1];
    expect(rule, selector).toBeDefined();
    return /stroke-dasharray:\s*([\d. ]+)/.exec(rule ?? '')?.[1]?.trim() ?? 'solid';
  };
  const dashes = ['left', 'right', 'compared', 'compared.right', 'both.over'].map(dashesOf);
  expect(new Set(dashes).size).toBe(dashes.length);
  expect(dashes[0]).toBe('solid');
  // an axle's only line is solid too: it is never in a plot with sides
  expect(dashesOf('axle')).toBe('solid');
});
