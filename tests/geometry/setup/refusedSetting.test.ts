import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { assembleCar, parseCar, toMechanism, type SetupDocument } from '../../../geometry/index';

const parsed = parseCar(readFileSync(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'), 'utf8'));
if (!parsed.ok) throw new Error('the sample is refused');
const mechanism = toMechanism(parsed.value.document);
const refusal = (setup: object, of = mechanism): string => {
  const assembled = assembleCar(of, setup as SetupDocument);
  if (assembled.ok) throw new Error(`laid on: ${JSON.stringify(setup)}`);
  expect(assembled.failure.kind).toBe('setup');
  return assembled.failure.message;
};

describe('a setup laid on a car from a program', () => {
  test.each([
    [{ front: { both: { rearBusch: 90 } } }, '"rearBusch"'],
    [{ front: { left: { rearBush: NaN } } }, 'left.rearBush is NaN'],
    [{ front: { setTow: 1 } }, '"setTow"'],
    [{ front: { setToe: Infinity } }, 'setToe is Infinity'],
    [{ rear: { rideHeight: NaN } }, 'rideHeight is NaN'],
    [{ front: { springRate: NaN } }, 'springRate is NaN'],
    [{ front: { wheel: { loadedRadius: NaN } } }, 'wheel.loadedRadius'],
  ])('%o is refused with what is wrong', (setup, words) => {
    expect(refusal(setup)).toContain(words);
  });

  test('an axle that the car has not is refused', () => {
    expect(refusal({ rear: { setToe: 0 } }, { ...mechanism, rear: null })).toContain('no rear axle');
  });

  test('null, absence and a setting past its range are settings', () => {
    expect(assembleCar(mechanism, { front: { both: { rearBush: null }, left: {} }, rear: {} }).ok).toBe(true);
    expect(assembleCar(mechanism, { front: { both: { perch: 9 } } }).ok).toBe(true);
  });
});
