import { expect, test } from 'vitest';
import { growthWords } from '../../../geometry/index';
import { faultyWords } from '../../../renderer/fitup/faultyFields';
import { keepOutName, subjectOf, templateName } from '../../../renderer/fitup/keepOut/keepOutNames';
import { planeNumbers, TEMPLATE_BEGIN, type TemplateAsked } from '../../../renderer/fitup/keepOut/templateAsked';
import { lengthRead, offRead, sizeRead } from '../../../renderer/fitup/keepOut/templateWords';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';

const INCHES = { ...STANDARD_UNITS, length: 'in' } as const;

test('no two files of other wheels, parts or planes have one name', () => {
  const centre = [0, 764, 302] as const;
  const asked: readonly TemplateAsked[] = [
    TEMPLATE_BEGIN,
    { ...TEMPLATE_BEGIN, at: -120.5 },
    { ...TEMPLATE_BEGIN, way: 'side' },
    { ...TEMPLATE_BEGIN, way: 'top', at: 300 },
    { ...TEMPLATE_BEGIN, way: 'own', point: [0, 480, 330], normal: [1, 0, 1] },
  ];
  const sides = [['left'], ['right'], ['left', 'right']] as const;
  const parts = ['all-moving', ['duct'], ['disc'], ['disc', 'duct', 'tyre']] as const;
  const worked = parts.flatMap((of) => sides.map((side) => ({ axles: ['front'] as const, sides: side, of })));
  const names = asked.flatMap((one) => worked.map((of) => templateName('Car', of, one, planeNumbers(one, centre))));
  expect(new Set(names).size).toBe(names.length);
  expect(names.slice(0, 3)).toEqual(['left', 'right', 'both'].map((side) => `Car template all moving front ${side} x 0`));
  expect(names.slice(12, 16)).toEqual([
    'Car template all moving front left x -120.5',
    'Car template all moving front right x -120.5',
    'Car template all moving front both x -120.5',
    'Car template duct front left x -120.5',
  ]);
  // where the sheet of a right side has the plane
  expect(names.slice(24, 27)).toEqual(
    ['left y 764', 'right y -764', 'both y 764'].map((words) => `Car template all moving front ${words}`),
  );
  expect(names[48]).toBe('Car template all moving front left at 0 480 330 along 1 0 1');
  expect(names[49]).toBe('Car template all moving front right at 0 -480 330 along 1 0 1');
  expect(names[57]).toBe('Car template disc + 2 more front left at 0 480 330 along 1 0 1');
  expect(
    parts.flatMap((of) => sides.map((side) => keepOutName('Car', { axles: ['rear'], sides: side, of }))).slice(2, 6),
  ).toEqual([
    'Car keep-out all moving rear both',
    'Car keep-out duct rear left',
    'Car keep-out duct rear right',
    'Car keep-out duct rear both',
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
  const grown = growthWords(48, lengthRead(INCHES));
  expect(grown).toMatch(/^Grown by 1\.890 in: .* thicker than 1\.890 in about/);
  expect(grown).not.toContain('mm');
});

test('fields that refuse what stands in them are named without their units', () => {
  expect(faultyWords(['Grown by, mm'])).toMatch(/^Grown by is not taken/);
  expect(faultyWords(['Grown by, mm', 'Surface outside by at most, mm'])).toMatch(/^Grown by and Surface outside by at most are/);
});
