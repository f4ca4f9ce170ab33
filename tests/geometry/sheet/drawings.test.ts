import { describe, expect, test } from 'vitest';
import { fitterWords, partDrawing, STANDARD_UNITS, type AdjusterDocument, type PartStanding } from '../../../geometry/index';
import { flatten, scaledTo, type FlatPath } from '../../../geometry/drawing/flatten';
import { group, mirror, path, turn } from '../../../geometry/drawing/shape';
import { drawnAsFiled, drawnForFitter } from '../../../geometry/sheet/drawnAs';
import { sampleNamed } from '../../samples/samples';

const hatch = sampleNamed('saltmarsh-hatch').document;
const flat = (shapes: Parameters<typeof flatten>[0]) => flatten(shapes, scaledTo(1, 0, 0));
const standing = (adjuster: AdjusterDocument, value: number | null, side: 'left' | 'right'): PartStanding => ({
  adjuster,
  value,
  mm: 1,
  pivotToBolt: 55,
  side,
});
const one = (name: string, axle: 'front' | 'rear' = 'front') => hatch[axle]!.adjusters![name]!;

/** Every place of the strokes, mirrored about the middle of the drawing where asked; hundredths may round either way. */
const places = (paths: readonly FlatPath[], about: number | null): readonly number[] =>
  paths.flatMap(({ commands }) =>
    commands.flatMap(([, ...numbers]) =>
      (numbers as readonly number[]).map((value, index) => (about !== null && index % 2 === 0 ? 2 * about - value : value)),
    ),
  );
const farthest = (a: readonly number[], b: readonly number[]): number =>
  a.length === b.length ? Math.max(...a.map((value, index) => Math.abs(value - b[index]!))) : Infinity;

test('strokes go where SVG would draw them', () => {
  expect(flat([path('scribed', 'M1 2h3v4l-1-1H0V0c0 1 1 2 2 2z')])[0]!.commands).toEqual([
    ['M', 1, 2],
    ['L', 4, 2],
    ['L', 4, 6],
    ['L', 3, 5],
    ['L', 0, 5],
    ['L', 0, 0],
    ['C', 0, 1, 1, 2, 2, 2],
    ['Z'],
  ]);
  expect(flat([group([turn(90, 10, 10)], [path('scribed', 'M10 0L20 10')])])[0]!.commands).toEqual([
    ['M', 20, 10],
    ['L', 10, 20],
  ]);
  expect(flat([group([mirror(60)], [path('scribed', 'M10 0l5 5')])])[0]!.commands).toEqual([
    ['M', 110, 0],
    ['L', 105, 5],
  ]);
});

describe('as the fitter finds them', () => {
  test.each([
    ['plateAcross', -6, 'front'],
    ['clampBolt', 30, 'front'],
    ['camberBolt', 30, 'rear'],
    ['armBolt', 45, 'front'],
  ] as const)('%s of the right-hand side is the mirror image of the left', (name, value, axle) => {
    const [left, right] = (['left', 'right'] as const).map((side) =>
      flat(drawnForFitter(standing(one(name, axle), value, side))),
    );
    expect(farthest(places(right!, null), places(left!, 60))).toBeLessThan(0.02);
    expect(farthest(places(right!, null), places(left!, null))).toBeGreaterThan(1);
  });

  test.each([
    ['tieRod', 1.25],
    ['perch', 2],
    ['rodShim', 3],
  ] as const)('%s looks the same from both sides', (name, value) => {
    expect(drawnForFitter(standing(one(name), value, 'right'))).toEqual(drawnForFitter(standing(one(name), value, 'left')));
  });

  test('the index of a bushing points to the hour that the words say', () => {
    const indexOf = (side: 'left' | 'right') =>
      flat(drawnForFitter(standing(one('rearBush'), 330, side))).find(({ role }) => role === 'index')!;
    const [left, right] = [indexOf('left'), indexOf('right')].map(
      ({ commands }) => commands[0] as readonly ['M', number, number],
    );
    expect(left![1]).toBeLessThan(60);
    expect(right![1]).toBeGreaterThan(60);
    expect(left![2]).toBeLessThan(60);
    expect(left![1] + right![1]).toBeCloseTo(120, 1);
  });

  test('outboard of the left wheel is on the left of who looks from behind, and from above with the front up', () => {
    const rail = (side: 'left' | 'right') => {
      const [body] = flat(drawnForFitter(standing(one('clampBolt'), 0, side)));
      return (body!.commands[0] as readonly ['M', number, number])[1];
    };
    // the strut's tube is inboard of the wheel
    expect(rail('left')).toBeGreaterThan(60);
    expect(rail('right')).toBeLessThan(60);
  });

  test('as filed, both sides are drawn as on the left', () => {
    for (const name of ['plateAcross', 'rearBush', 'clampBolt'])
      expect(drawnAsFiled(standing(one(name), 30, 'right'))).toEqual(drawnAsFiled(standing(one(name), 30, 'left')));
  });
});

describe('a clamp', () => {
  const clamp = one('clampBolt') as Extract<AdjusterDocument, { kind: 'clamp-eccentric' }>;
  const knuckleTop = (adjuster: AdjusterDocument, value: number): number => {
    const knuckle = flat(partDrawing(standing(adjuster, value, 'left'))).find(({ role }) => role === 'face')!;
    return (knuckle.commands[0] as readonly ['M', number, number])[1];
  };
  const camAt = (adjuster: AdjusterDocument): number => {
    const index = flat(partDrawing(standing(adjuster, 0, 'left'))).find(({ role }) => role === 'index')!;
    return (index.commands[0] as readonly ['M', number, number])[2];
  };

  test('has its cam bolt where it is on the car', () => {
    expect(camAt(clamp)).toBeLessThan(60);
    expect(camAt({ ...clamp, pivot: 'clampUpper', bolt: 'clampLower' })).toBeGreaterThan(60);
  });

  test('leans the knuckle the way that the words say', () => {
    const about = (axis: readonly [number, number, number]) => ({ ...clamp, axis });
    expect(fitterWords(clamp, 60, 1, STANDARD_UNITS).short).toContain('top in');
    expect(knuckleTop(clamp, 60)).toBeLessThan(knuckleTop(clamp, 0));
    expect(fitterWords(about([-1, 0, 0]), 60, 1, STANDARD_UNITS).short).toContain('top out');
    expect(knuckleTop(about([-1, 0, 0]), 60)).toBeGreaterThan(knuckleTop(clamp, 0));
  });
});

test('every part of every kind moves with its setting', () => {
  for (const axle of ['front', 'rear'] as const)
    for (const adjuster of Object.values(hatch[axle]!.adjusters!)) {
      const value =
        adjuster.kind.endsWith('bushing') || adjuster.kind.startsWith('ecc') || adjuster.kind.startsWith('clamp') ? 30 : 1.2;
      expect(partDrawing(standing(adjuster, value, 'left'))).not.toEqual(partDrawing(standing(adjuster, 0, 'left')));
    }
});
