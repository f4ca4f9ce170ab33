import { expect, test } from 'vitest';
import { CATALOGUE } from '../../../geometry/index';
import { inSentence } from '../../../renderer/readings/inSentence';
import { symbolsIn } from '../../../renderer/readings/symbolsIn';

const formulaOf = (key: string): string => CATALOGUE.find((entry) => entry.key === key)?.formula ?? '';

test('a formula is followed by what its own letters stand for, and what those are made of', () => {
  expect(symbolsIn(formulaOf('camber'))).toBe("s: unit vector along the spindle, outboard. n: the ground's unit normal.");
  // f is made of s and n
  expect(symbolsIn(formulaOf('mechanicalTrail'))).toMatch(/^s: .*C: contact.*n: .*f = unit.*G: where/);
  // letters of words are no symbols
  expect(symbolsIn(formulaOf('damperTravel'))).toBe('');
  expect(symbolsIn(formulaOf('camberGain'))).toBe('');
});

test('in a sentence a reading is small, and a person is not', () => {
  expect(inSentence('Roll centre height')).toBe('roll centre height');
  expect(inSentence('Ackermann')).toBe('Ackermann');
  const people = CATALOGUE.filter(({ name }) => /Ackermann/i.test(name));
  expect(people.map(({ name }) => inSentence(name)).every((name) => name.includes('Ackermann'))).toBe(true);
  expect(people.length).toBeGreaterThan(0);
});
