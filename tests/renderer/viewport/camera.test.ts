import { describe, expect, test } from 'vitest';
import {
  eyeAxes,
  eyePoint,
  orbit,
  pan,
  viewHeight,
  wheelCutFor,
  zoom,
  zoomAt,
  type Eye,
  type Point,
} from '../../../renderer/viewport/camera';
import { eyeOf, marginsOf, type Subject } from '../../../renderer/viewport/views';
import type { ViewName } from '../../../renderer/state/viewing';
import { cornerSubject } from './cornerSubject';

const front = cornerSubject;
const rear: Subject = { ...front, axle: 'rear', points: front.points.map(([x, y, z]) => [x - 2500, y, z]), steeringAxis: null };
const eye: Eye = { target: [0, 0, 300], azimuth: 0, elevation: 0, distance: 1000, lens: 0.4, parallel: false };
const VIEWS: readonly ViewName[] = ['corner', 'front', 'side', 'top', 'wheel', 'axis'];

/** Place of a point in the view, −1…1 both ways, by the definition of the lens. */
const seen = (at: Point, of: Eye, aspect: number): readonly [number, number] => {
  const [across, upward, away] = eyeAxes(of);
  const from = eyePoint(of);
  const off: Point = [at[0] - from[0], at[1] - from[1], at[2] - from[2]];
  const dot = (a: Point): number => a[0] * off[0] + a[1] * off[1] + a[2] * off[2];
  const depth = of.parallel ? of.distance : dot(away);
  const half = depth * Math.tan(of.lens / 2);
  return [dot(across) / half / aspect, dot(upward) / half];
};

describe('named views', () => {
  test('stand before the front axle and behind the rear one, over the ground', () => {
    expect(eyePoint(eyeOf('corner', front, 1, 'perspective'))[0]).toBeGreaterThan(300);
    expect(eyePoint(eyeOf('corner', rear, 1, 'perspective'))[0]).toBeLessThan(-2800);
    expect(eyePoint(eyeOf('front', front, 1, 'parallel'))[0]).toBeGreaterThan(300);
    expect(eyePoint(eyeOf('side', front, 1, 'parallel'))[1]).toBeGreaterThan(800);
    expect(eyePoint(eyeOf('top', front, 1, 'parallel'))[2]).toBeGreaterThan(2000);
  });
  test('both sides are seen from behind, so that left stays left', () => {
    const eye = eyeOf('front', { ...front, scope: 'axle' }, 1.5, 'parallel');
    const [across] = eyeAxes(eye);
    expect(across[1]).toBeCloseTo(-1, 9);
  });
  test('the right side is the mirror of the left', () => {
    const mirrored = { ...front, scope: 'right' as const, points: front.points.map(([x, y, z]): Point => [x, -y, z]) };
    const [left, right] = [eyeOf('corner', front, 1.3, 'perspective'), eyeOf('corner', mirrored, 1.3, 'perspective')];
    expect(right.azimuth).toBeCloseTo(-left.azimuth, 12);
    expect(right.distance).toBeCloseTo(left.distance, 6);
  });
  test.each(VIEWS.flatMap((view) => [0.6, 1, 1.8].map((aspect) => ({ view, aspect }))))(
    'everything is in sight: $view at $aspect',
    ({ view, aspect }) => {
      for (const projection of ['perspective', 'parallel'] as const)
        for (const subject of [front, rear, { ...front, scope: 'axle' as const }]) {
          const eye = eyeOf(view, subject, aspect, projection);
          for (const point of subject.points)
            for (const way of seen(point, eye, aspect)) expect(Math.abs(way)).toBeLessThan(0.97);
        }
    },
  );
});

test.each(VIEWS)('in a short view the car stands beside the tools: %s', (view) => {
  const [width, height] = [580, 160];
  for (const scope of ['left', 'axle'] as const) {
    const subject = { ...front, scope };
    const eye = eyeOf(view, subject, width / height, 'parallel', marginsOf(scope, width, height));
    for (const point of subject.points) {
      const [x, y] = seen(point, eye, width / height);
      expect(((x + 1) / 2) * width).toBeLessThan(width - 270);
      expect(((1 - y) / 2) * height).toBeGreaterThan(32);
      expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThan(1);
    }
  }
});

describe('moving the eye', () => {
  test('orbit keeps its distance and never goes over the top', () => {
    const there = orbit(eye, 1.2, 9);
    const [x, y, z] = eyePoint(there);
    expect(Math.sqrt(x * x + y * y + (z - 300) * (z - 300))).toBeCloseTo(1000, 6);
    expect(there.elevation).toBeLessThan(Math.PI / 2);
  });
  test('zoom keeps its bounds, pan moves square to the line of sight', () => {
    expect(zoom(eye, 1e-9).distance).toBe(150);
    expect(viewHeight(zoom(eye, 2))).toBeCloseTo(2 * viewHeight(eye), 9);
    const moved = pan(eye, 0.5, 0);
    expect(moved.target[0]).toBeCloseTo(0, 9);
    expect(moved.target[1]).toBeGreaterThan(0);
    expect(pan(eye, 0, 0.5).target[2]).toBeGreaterThan(300);
  });
  test('a zoom about a place leaves what is seen there where it is, at the bounds too', () => {
    for (const factor of [0.5, 1.3, 1e-9]) {
      const now = zoomAt(eye, factor, 0.3, -0.2);
      const [before, after] = [pan(eye, 0.3, -0.2).target, pan(now, 0.3, -0.2).target];
      for (const axis of [0, 1, 2] as const) expect(after[axis]).toBeCloseTo(before[axis], 6);
    }
  });
});

test('the half of the wheel that is taken away is the one nearest the eye', () => {
  expect(wheelCutFor([3000, 1500, 900])).toBe('fore');
  expect(wheelCutFor([-3000, 1500, 900])).toBe('aft');
  expect(wheelCutFor([300, 200, 4000])).toBe('above');
  expect(wheelCutFor([10, 4000, 50])).toBe('outline');
});
