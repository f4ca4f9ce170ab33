import { describe, expect, test } from 'vitest';
import { map, toMechanism, type CarDocument, type MapAnswer, type MapValues } from '../../../geometry/index';
import { motionRanges } from '../../../renderer/compute/motionRanges';
import { contourAreas, figuresOn, rangeOfMap, valueAt, type FigurePlace } from '../../../renderer/studies/map/contourLines';
import { limitWords } from '../../../renderer/studies/map/limitWords';
import { axisTitle, shownAxis } from '../../../renderer/studies/map/mapAxis';
import { mapCsv } from '../../../renderer/studies/map/mapCsv';
import { beginMap, mapFaults, mapFormFor, mapOrder, type MapOrder } from '../../../renderer/studies/map/mapForm';
import { mapPicture } from '../../../renderer/studies/map/mapPicture';
import { markOf, nearestStep, sideOf, stepAlong } from '../../../renderer/studies/map/mapPlaces';
import { fittingSteps, mapSteps, stepSettings } from '../../../renderer/studies/map/mapSteps';
import { fieldOf } from '../../../renderer/studies/question/fieldValue';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { sampleNamed } from '../../samples/samples';

const plane = (nx: number, ny: number, at: (x: number, y: number) => number | null): MapValues =>
  Array.from({ length: ny }, (_, row) => Array.from({ length: nx }, (_, column) => at(column / (nx - 1), row / (ny - 1))));

describe('lines of equal value', () => {
  test('of a plane are straight, where the value is, and end at the frame', () => {
    const [area] = contourAreas(
      plane(41, 31, (x, y) => x + 0.5 * y),
      [0.7],
    );
    expect(area?.lines).toHaveLength(1);
    const line = area?.lines[0] ?? [];
    for (const [x, y] of line) expect(x + 0.5 * y).toBeCloseTo(0.7, 9);
    const ends = [line[0], line.at(-1)].map((end) => end?.[1] ?? NaN).sort((a, b) => a - b);
    expect(ends[0]).toBeCloseTo(0, 9);
    expect(ends[1]).toBeCloseTo(1, 9);
  });

  test('round a hill are closed, and one line', () => {
    const hill = plane(61, 61, (x, y) => -((x - 0.5) * (x - 0.5)) - (y - 0.5) * (y - 0.5));
    const [area] = contourAreas(hill, [-0.09]);
    expect(area?.lines).toHaveLength(1);
    const line = area?.lines[0] ?? [];
    expect(line[0]).toEqual(line.at(-1));
    for (const [x, y] of line) expect(Math.hypot(x - 0.5, y - 0.5)).toBeCloseTo(0.3, 2);
  });

  test('none is drawn along places without value', () => {
    const holed = plane(21, 21, (x, y) => (x > 0.6 && y > 0.6 ? null : x));
    const [area] = contourAreas(holed, [0.3]);
    expect(area?.lines).toHaveLength(1);
    for (const [x] of area?.lines[0] ?? []) expect(x).toBeCloseTo(0.3, 9);
    expect(contourAreas(holed, [-1])[0]?.lines).toEqual([]);
  });

  test('values between the grid are those of the four round them', () => {
    const values = plane(11, 11, (x, y) => 2 * x - y);
    expect(valueAt(values, [0.33, 0.71])).toBeCloseTo(2 * 0.33 - 0.71, 12);
    expect(valueAt(values, [1, 1])).toBeCloseTo(1, 12);
    expect(valueAt(values, [1.2, 0.5])).toBeNull();
    expect(
      valueAt(
        plane(3, 3, (x) => (x > 0.6 ? null : x)),
        [0.8, 0.5],
      ),
    ).toBeNull();
    expect(rangeOfMap(values)).toEqual([-1, 2]);
  });

  test('figures keep off each other and inside the frame', () => {
    const taken: FigurePlace[] = [];
    const line = (y: number) => ({
      text: '−1.5',
      line: Array.from({ length: 21 }, (_, index) => [index / 20, y] as const),
    });
    const placed = figuresOn([line(0.5), line(0.505), line(0.52)], { width: 400, height: 300 }, taken);
    expect(placed.length).toBeGreaterThan(1);
    placed.forEach((one, index) =>
      placed.slice(index + 1).forEach((other) => {
        expect(Math.abs(one.x - other.x) > 32 || Math.abs(one.y - other.y) > 16).toBe(true);
      }),
    );
  });
});

const hatch = sampleNamed('saltmarsh-hatch').document;
const ranges = motionRanges(hatch, 'front', null);

const drawn = (order: MapOrder | null): { readonly order: MapOrder; readonly answer: MapAnswer } => {
  if (!order) throw new Error('the form has a fault');
  const small: MapOrder = { ...order, question: { ...order.question, nx: 9, ny: 9 } };
  const made = map(toMechanism(small.document), small.question);
  if (!made.ok) throw new Error(made.failure.message);
  return { order: small, answer: made.value };
};
const limited: CarDocument = {
  ...hatch,
  limits: [
    { setting: 'plateAcross', axle: 'front', min: -8, source: 'rule 5.4' },
    { reading: 'track', axle: 'front', max: 1575 },
  ],
};
const FORM = { ...beginMap(limited, 'front'), x: 'plateAcross', y: 'clampBolt' };

describe('the steps of a map', () => {
  const { order, answer } = drawn(mapOrder(FORM, limited, 'Baseline', 'front', ranges));

  test('fit within what is marked, on the right side of the threshold and inside every limit', () => {
    const marks = { wanted: { value: -2, tolerance: 0.1 }, threshold: { value: 58, sense: 'above' as const } };
    const steps = mapSteps(answer, marks);
    expect(steps).toHaveLength(21 * 13);
    const fitting = fittingSteps(steps, marks);
    expect(fitting.length).toBeGreaterThan(0);
    for (const { value, second, x, breaks } of fitting) {
      expect(Math.abs((value ?? NaN) + 2)).toBeLessThanOrEqual(0.1 + 1e-9);
      expect(second).toBeGreaterThanOrEqual(58 - 1e-9);
      expect(x).toBeGreaterThanOrEqual(-8);
      expect(breaks).toEqual([]);
    }
    const misses = fitting.map(({ value }) => Math.abs((value ?? NaN) + 2));
    expect(misses).toEqual([...misses].sort((a, b) => a - b));
    expect(steps.filter(({ x }) => x < -8).every(({ isAllowed, breaks }) => !isAllowed && breaks.length > 0)).toBe(true);
    expect(mapSteps(answer, { wanted: null, threshold: null }).some(({ fits }) => fits)).toBe(false);
  });

  test('are walked, pressed and laid on a setup', () => {
    const steps = mapSteps(answer, { wanted: null, threshold: null });
    const sides = {
      x: sideOf(order.question.x, answer.x, limited, STANDARD_UNITS),
      y: sideOf(order.question.y, answer.y, limited, STANDARD_UNITS),
    };
    const first = nearestStep(steps, [0.01, 0.02], sides);
    expect(first).toMatchObject({ x: -12, y: -90 });
    if (!first) throw new Error('there is a step');
    expect(stepAlong(steps, first, 2, 1)).toMatchObject({ x: -10, y: -75 });
    expect(stepAlong(steps, first, -5, 99)).toMatchObject({ x: -12, y: 90 });
    expect(stepSettings(order.question, { x: -10, y: 30 })).toEqual({
      front: { both: { plateAcross: -10, clampBolt: 30 } },
    });
    expect(markOf(order, { document: limited, setup: 'Baseline', name: 'Baseline' })).toEqual({ name: 'Baseline', x: 0, y: 0 });
  });

  test('the picture has the limits as edges with their rules, and the line that is wanted', () => {
    const same = { toShown: (value: number) => value };
    const marks = { wanted: { value: -2, tolerance: 0.1 }, threshold: null };
    const picture = mapPicture(answer, marks, same, same, limited, STANDARD_UNITS);
    const [plate, track] = picture.limits;
    expect(plate?.words).toBe('rule 5.4: top plate, across at least −8');
    expect(track?.words).toBe('track at most 1,575.0 mm');
    for (const [x] of plate?.area.lines[0] ?? []) expect(x).toBeCloseTo(4 / 20, 6);
    expect(picture.isFalling).toBe(true);
    expect(picture.lines.some(({ text }) => text === '−2.0')).toBe(false);
    expect(picture.wanted?.lines.length).toBeGreaterThan(0);
    const [low, high] = rangeOfMap(answer.z) ?? [NaN, NaN];
    for (const { level } of picture.lines) expect(level >= low - 1e-9 && level <= high + 1e-9).toBe(true);
  });

  test('the table has every value with its reason, and what each limit has to spare', () => {
    const sides = {
      x: sideOf(order.question.x, answer.x, limited, STANDARD_UNITS),
      y: sideOf(order.question.y, answer.y, limited, STANDARD_UNITS),
    };
    const lines = mapCsv(order, answer, sides, STANDARD_UNITS).trimEnd().split('\r\n');
    expect(lines).toHaveLength(1 + 81);
    expect(lines[0]).toContain('"Top plate, across [mm]",Clamp bolt [°],Camber [°],Roll centre height [mm]');
    expect(lines[1]).toContain(String(answer.z[0]?.[0]));
  });
});

test('sides say their unit and which way is plus', () => {
  const across = shownAxis({ kind: 'adjuster', axle: 'front', side: 'both', name: 'plateAcross' }, hatch, STANDARD_UNITS);
  expect(axisTitle(across)).toBe('Top plate, across, mm ← inboard · outboard →');
  const bolt = shownAxis({ kind: 'adjuster', axle: 'front', side: 'both', name: 'clampBolt' }, hatch, STANDARD_UNITS);
  expect(axisTitle(bolt)).toBe('Clamp bolt, ° ← top out · top in →');
  const bump = shownAxis({ kind: 'travel', from: -60, to: 60 }, hatch, { ...STANDARD_UNITS, length: 'in' });
  expect(axisTitle(bump)).toBe('Bump, in ← droop · bump →');
  expect(bump.toShown(25.4)).toBeCloseTo(1, 12);
  expect(
    limitWords({ name: 'front.left.camber', limit: { reading: 'camber', min: -4, max: 0 }, spare: [] }, hatch, STANDARD_UNITS),
  ).toBe('left camber −4.00 … 0.00°');
});

test('a map over one part and a motion; the form follows the axle, and its faults are named', () => {
  const motion = mapOrder({ ...FORM, y: 'motion:travel' }, limited, 'Baseline', 'front', ranges);
  expect(motion?.question.y).toMatchObject({ kind: 'travel' });
  expect(mapOrder({ ...FORM, y: FORM.x }, limited, 'Baseline', 'front', ranges)).toBeNull();
  expect(mapFaults({ ...FORM, y: FORM.x }, limited, 'front').axes).toContain('two things');
  expect(mapFaults({ ...FORM, wanted: fieldOf(-2), tolerance: fieldOf(0) }, limited, 'front').tolerance).toContain('more than 0');
  expect(mapFaults({ ...FORM, threshold: { value: null, typed: 'high' } }, limited, 'front').threshold).toContain('high');
  const rear = mapFormFor(FORM, hatch, 'rear');
  expect(Object.keys(hatch.rear?.adjusters ?? {})).toContain(rear.x);
  expect(mapOrder(rear, hatch, 'Baseline', 'rear', motionRanges(hatch, 'rear', null))).not.toBeNull();
});
