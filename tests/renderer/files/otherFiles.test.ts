import { expect, test } from 'vitest';
import { otherFile } from '../../../renderer/files/otherFiles';
import { carText } from '../carUnderTest';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const LIST = 'Point,X,Y,Z\nLCA frt bush,9.2913,-13.8583,11.5748\nLCA rr bush,12,-13,11\n';

test('a list is told where lists are taken, whatever parts its cells', () => {
  for (const text of [LIST, LIST.replaceAll(',', ';'), LIST.replaceAll(',', '\t'), `\uFEFF${LIST}`])
    expect(otherFile('points.csv', bytesOf(text))).toMatchObject({
      page: 'points',
      advice: expect.stringContaining('Coordinates in'),
    });
  expect(otherFile('points.xlsx', new Uint8Array([0x50, 0x4b, 3, 4, 0, 0]))?.words).toBe('a spreadsheet');
});

test('a picture and other files that are no text are told as what they are', () => {
  const words = (...bytes: number[]) => otherFile('file', new Uint8Array(bytes))?.words;
  expect(words(0x89, 0x50, 0x4e, 0x47, 0x0d)).toBe('a picture');
  expect(words(0xff, 0xd8, 0xff, 0xe0)).toBe('a picture');
  expect(words(0x25, 0x50, 0x44, 0x46, 0x2d)).toBe('a PDF');
  expect(words(7, 0, 0, 1)).toBe('no text');
});

test('what may be a car keeps its faults: cut off, of another encoding, or with text before it', () => {
  const car = carText('car-23');
  const wide = new Uint8Array([0xff, 0xfe, ...[...car.slice(0, 200)].flatMap((letter) => [letter.charCodeAt(0), 0])]);
  for (const bytes of [
    bytesOf(car.slice(0, 300)),
    wide,
    wide.subarray(2),
    bytesOf(''),
    bytesOf('hello'),
    bytesOf('[1, 2, 3]\n[4, 5, 6]'),
  ])
    expect(otherFile('mine.jounce.json', bytes)).toBeNull();
});
