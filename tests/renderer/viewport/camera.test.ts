import { describe, expect, test } from 'vitest';
import { eyeOf, eyePoint, orbit, pan, wheelCutFor, zoom, type Eye, type Subject } from '../../../renderer/viewport/camera';

const front: Subject = { axle: 'front', left: [0, 780, 0], halfTrack: 780, height: 840, wheelRadius: 322 };
const eye: Eye = { target: [0, 0, 300], azimuth: 0, elevation: 0, distance: 1000, lens: 0.4 };

describe('named views', () => {
  test('stand before the front axle and behind the rear one, over the ground', () => {
    expect(eyePoint(eyeOf('corner', front, 1))[0]).toBeGreaterThan(0);
    expect(eyePoint(eyeOf('corner', { ...front, axle: 'rear', left: [-2500, 770, 0] }, 1))[0]).toBeLessThan(-2500);
    expect(eyePoint(eyeOf('front', front, 1))[1]).toBeCloseTo(0, 6);
    expect(eyePoint(eyeOf('side', front, 1))[1]).toBeGreaterThan(780);
    expect(eyePoint(eyeOf('top', front, 1))[2]).toBeGreaterThan(2000);
  });
  test('go farther away where the view is narrow', () => {
    expect(eyeOf('front', front, 0.7).distance).toBeGreaterThan(eyeOf('front', front, 1.6).distance);
  });
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
    const moved = pan(eye, 0.5, 0);
    expect(moved.target[0]).toBeCloseTo(0, 9);
    expect(moved.target[1]).toBeGreaterThan(0);
    expect(pan(eye, 0, 0.5).target[2]).toBeGreaterThan(300);
  });
});

test('the half of the wheel that is taken away is the one nearest the eye', () => {
  expect(wheelCutFor([3000, 1500, 900])).toBe('fore');
  expect(wheelCutFor([-3000, 1500, 900])).toBe('aft');
  expect(wheelCutFor([300, 200, 4000])).toBe('above');
  expect(wheelCutFor([10, 4000, 50])).toBe('outline');
});
