import { Font } from 'fonteditor-core';
import { describe, expect, test } from 'vitest';
import { fromBase64, toBase64 } from '../../../geometry/sheet/typeface/base64';
import {
  inTypeface,
  lettersMissing,
  otherTypeface,
  runsOf,
  sheetTypeface,
  widthOf,
} from '../../../geometry/sheet/typeface/typeface';
import { wrapText, wrapWithin } from '../../../geometry/sheet/layout/wrapText';

describe.each(['regular', 'bold'] as const)('the %s typeface', (weight) => {
  const { font } = sheetTypeface()[weight];
  const advance = (letter: string): number => font.advanceOf(font.glyphOf.get(letter.codePointAt(0)!)!);

  test('has every letter and sign that the sheet says', () => {
    const signs = '−–—±≤≥⅛¼⅜½⅝¾⅞°′″’‘“”·…×→²³µéüßŁőñ';
    for (const letter of signs) expect(font.glyphOf.has(letter.codePointAt(0)!), letter).toBe(true);
  });

  test('has numerals of one width, so that numbers stand under each other', () => {
    expect(new Set([...'0123456789'].map(advance)).size).toBe(1);
  });

  test('measures as the font does', () => {
    expect(widthOf('AV 12', 10, weight)).toBeCloseTo(
      ([...'AV 12'].reduce((sum, letter) => sum + advance(letter), 0) * 10) / font.unitsPerEm,
      9,
    );
  });

  test('draws the letters of European and Vietnamese names', () => {
    const drawn = Font.create(Buffer.from(font.bytes), { type: 'ttf', compound2simple: true }).get();
    const outlines = new Map(
      drawn.glyf.flatMap(({ unicode, contours }) => (unicode ?? []).map((code) => [code, contours] as const)),
    );
    for (const letter of 'ABCxyzȘȚșțŵẁƠơẤỹẞőřłþ¼−')
      expect(outlines.get(letter.codePointAt(0)!)?.flat().length, letter).toBeGreaterThan(2);
  });

  test('its file is whole: the sum of all words is that of the format', () => {
    const view = new DataView(font.bytes.buffer, font.bytes.byteOffset, font.bytes.byteLength);
    let sum = 0;
    for (let at = 0; at < font.bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
    expect(sum).toBe(0xb1b0afba);
  });
});

describe.each(['regular', 'bold'] as const)('the %s typeface of other letters', (weight) => {
  const { font } = otherTypeface()[weight];

  test('has Greek, Cyrillic and nothing that the first has', () => {
    const letters =
      'ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρστυφχψωςάέήίόύώϊϋΐΰАБВГДЕЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯабвгдежзийклмнопрстуфхцчшщъыьэюяёіїєґђјљњћџўѝѓќәқңөұүһ№';
    for (const letter of letters.normalize('NFC')) {
      const code = letter.codePointAt(0)!;
      expect(font.glyphOf.has(code) || sheetTypeface()[weight].font.glyphOf.has(code), letter).toBe(true);
    }
    for (const letter of 'Az09 ¼×') expect(font.glyphOf.has(letter.codePointAt(0)!), letter).toBe(false);
  });

  test('draws them: accented letters of their parts too', () => {
    const drawn = Font.create(Buffer.from(font.bytes), { type: 'ttf', compound2simple: true }).get();
    const outlines = new Map(
      drawn.glyf.flatMap(({ unicode, contours }) => (unicode ?? []).map((code) => [code, contours] as const)),
    );
    for (const letter of 'ΩβάΐЖяйёїґ') expect(outlines.get(letter.codePointAt(0)!)?.flat().length, letter).toBeGreaterThan(4);
  });

  test('a line of both is as wide as its stretches, one after the other', () => {
    const text = 'Rear: Ελατήριο 12, пружина ¼';
    const runs = runsOf(text, 40, 9, weight);
    expect(runs.map((run) => run.text).join('')).toBe(text);
    expect(runs.map(({ isOther, text: said }) => (isOther ? said : '·'))).toEqual(['·', 'Ελατήριο', '·', 'пружина', '·']);
    const width = (said: string, isOther: boolean): number => {
      const { font: of } = (isOther ? otherTypeface() : sheetTypeface())[weight];
      return ([...said].reduce((sum, one) => sum + of.advanceOf(of.glyphOf.get(one.codePointAt(0)!)!), 0) * 9) / of.unitsPerEm;
    };
    let at = 40;
    for (const run of runs) {
      expect(run.x).toBeCloseTo(at, 9);
      at += width(run.text, run.isOther);
    }
    expect(widthOf(text, 9, weight)).toBeCloseTo(at - 40, 9);
  });
});

test('what neither typeface has is told', () => {
  expect(inTypeface('Ελ 车 ж')).toBe('Ελ ? ж');
  expect(lettersMissing('Ελ 车 ж קפיץ')).toEqual(['车', 'ק', 'פ', 'י', 'ץ']);
});

test('bytes survive their text', () => {
  for (let length = 0; length < 9; length += 1) {
    const bytes = Uint8Array.from({ length }, (_, index) => (index * 97 + 13 * length) & 255);
    expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
    expect(fromBase64(toBase64(bytes))).toEqual(bytes);
  }
});

test('lines are no wider than asked, and nothing is lost', () => {
  const text = 'Steer lock to lock by hand Donaudampfschifffahrtsgesellschaft 12';
  for (const width of [30, 60, 200]) {
    const lines = wrapText(text, 9, 'regular', width);
    for (const line of lines) expect(widthOf(line, 9, 'regular')).toBeLessThanOrEqual(width);
    expect(lines.join('').replace(/ /g, '')).toBe(text.replace(/ /g, ''));
  }
  expect(wrapText('', 9, 'regular', 50)).toEqual([]);
  expect(wrapWithin(text, 9, 'regular', 60, 2)[1]).toMatch(/…$/);
  expect(inTypeface('a\tb\n车')).toBe('a b ?');
});
