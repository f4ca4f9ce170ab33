import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../temporaryFolder';
import { carPath, jounceJson, type Json } from './jounce';

const SEED = 20260516;
const FILES = 300;

/** A small generator of whole numbers below a bound (mulberry32): the same files in every run. */
function dice(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}

type Damage = (text: string, pick: (below: number) => number) => string | Buffer;

const replaceOne =
  (pattern: RegExp, by: (found: string, pick: (below: number) => number) => string): Damage =>
  (text, pick) => {
    const found = [...text.matchAll(pattern)];
    const chosen = found[pick(found.length)];
    if (!chosen) return text;
    return text.slice(0, chosen.index) + by(chosen[0], pick) + text.slice(chosen.index + chosen[0].length);
  };
const NUMBERS = /-?\d+(\.\d+)?/g;
const KEYS = /"[A-Za-z]+":/g;
const BAD_NUMBERS = ['NaN', '1e308', '-1e308', '1e999', 'null', '"12"', '[]', '{}', 'true', '0x10', '-', '00', '1e12', ''];

const DAMAGES: readonly Damage[] = [
  replaceOne(NUMBERS, (_, pick) => BAD_NUMBERS[pick(BAD_NUMBERS.length)] ?? ''),
  replaceOne(KEYS, (found) => found.replace(/"(.)/, '"x$1')),
  replaceOne(KEYS, (found) => `${found} 1, ${found}`),
  replaceOne(KEYS, () => '"__proto__":'),
  replaceOne(KEYS, () => '"constructor":'),
  replaceOne(/[{}[\],:]/g, () => ''),
  replaceOne(/[{}[\],:]/g, (found) => found + found),
  replaceOne(/"[A-Za-z-]+"/g, (found) => found.toUpperCase()),
  (text, pick) => text.slice(0, pick(text.length)),
  (text, pick) => text.slice(pick(text.length)),
  (text, pick) => {
    const at = pick(text.length);
    return text.slice(0, at) + String.fromCharCode(pick(0x300)) + text.slice(at);
  },
  (text) => Buffer.from(text, 'utf16le'),
  (text) => `\uFEFF${text.replaceAll('\n', '\r\n')}`,
  (text) => text.replace('"setups":', `"notes": ${'['.repeat(100_000)}${']'.repeat(100_000)}, "setups":`),
  (text) => Buffer.concat([Buffer.from(text.slice(0, 200)), Buffer.from([0xff, 0x00, 0xc3]), Buffer.from(text.slice(200))]),
];

test(`${FILES} damaged files, seed ${SEED}: refused with a place or accepted, never a crash`, { timeout: 600_000 }, async () => {
  const texts = await Promise.all([21, 22, 23, 24].map((number) => readFile(carPath(number), 'utf8')));
  const folder = await temporaryFolder();
  const pick = dice(SEED);
  const names: string[] = [];
  for (let i = 0; i < FILES; i++) {
    const damage = DAMAGES[i % DAMAGES.length];
    const text = texts[pick(texts.length)];
    if (!damage || text === undefined) throw new Error('no damage');
    const name = `car-${i}.json`;
    await writeFile(path.join(folder, name), damage(text, pick));
    names.push(name);
  }
  let refused = 0;
  const judge = async (name: string): Promise<void> => {
    const { status, document } = await jounceJson(['check', name], { folder });
    if (status === 0) return expect(document['ok'], name).toBe(true);
    expect(status, name).toBe(2);
    expect(document['error']?.['kind'], name).toBe('file');
    const faults = document['error']?.['faults'] as readonly Json[];
    expect(faults.length, name).toBeGreaterThan(0);
    for (const fault of faults) expect(Object.keys(fault), name).toHaveLength(7);
    refused++;
  };
  const queue = names[Symbol.iterator]();
  await Promise.all(
    Array.from({ length: 3 }, async () => {
      for (const name of queue) await judge(name);
    }),
  );
  // a byte-order mark with CRLF is a good file, and some letters fall into notes or spaces
  expect(refused).toBeGreaterThan(FILES * 0.75);
});
