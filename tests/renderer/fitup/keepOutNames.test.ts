import { expect, test } from 'vitest';
import { faultyWords } from '../../../renderer/fitup/faultyFields';
import { keepOutName, subjectOf, templateName } from '../../../renderer/fitup/keepOut/keepOutNames';
import { planeNumbers, TEMPLATE_BEGIN, type TemplateAsked } from '../../../renderer/fitup/keepOut/templateAsked';
import { offRead, sizeRead } from '../../../renderer/fitup/keepOut/templateWords';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';

const INCHES = { ...STANDARD_UNITS, length: 'in' } as const;

test('no two files of other wheels or planes have one name', () => {
  const centre = [0, 764, 302] as const;
  const asked: readonly TemplateAsked[] = [
    TEMPLATE_BEGIN,
    { ...TEMPLATE_BEGIN, at: -120.5 },
    { ...TEMPLATE_BEGIN, way: 'side' },
    { ...TEMPLATE_BEGIN, way: 'top', at: 300 },
    { ...TEMPLATE_BEGIN, way: 'own', point: [0, 480, 330], normal: [1, 0, 1] },
  ];
  const sides = [['left'], ['right'], ['left', 'right']] as const;
  const names = asked.flatMap((one) => sides.map((of) => templateName('Car', 'front', of, one, planeNumbers(one, centre))));
  expect(new Set(names).size).toBe(names.length);
  expect(names.slice(0, 3)).toEqual(['left', 'right', 'both'].map((side) => `Car template front ${side} x 0`));
  expect(names[3]).toBe('Car template front left x -120.5');
  expect(names[12]).toBe('Car template front left at 0 480 330 along 1 0 1');
  expect(sides.map((of) => keepOutName('Car', { axles: ['rear'], sides: of }))).toEqual([
    'Car keep-out rear left',
    'Car keep-out rear right',
    'Car keep-out rear both',
  ]);
  expect(subjectOf({ axles: ['front'], sides: ['left', 'right'] })).toBe('front left and right');
});

test('the size of a section and what is off its plane are read in the unit that was chosen', () => {
  const outline = [{ points: [[0, 0], [2540, 0], [2540, 254], [0, 254]], isHole: false }] as const; // prettier-ignore
  expect(sizeRead(outline, STANDARD_UNITS)).toBe('2,540 × 254 mm');
  expect(sizeRead(outline, INCHES)).toMatch(/^100\.0* × 10\.0* in$/);
  expect(offRead(25.4, STANDARD_UNITS)).toBe('25.4 mm in front');
  expect(offRead(-25.4, INCHES)).toMatch(/^1\.0* in behind$/);
  expect(offRead(0.001, STANDARD_UNITS)).toBe('on the plane');
});

test('fields that refuse what stands in them are named without their units', () => {
  expect(faultyWords(['Grown by, mm'])).toMatch(/^Grown by is not taken/);
  expect(faultyWords(['Grown by, mm', 'Surface outside by at most, mm'])).toMatch(/^Grown by and Surface outside by at most are/);
});
