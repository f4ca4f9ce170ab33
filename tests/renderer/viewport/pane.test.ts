import { expect, test } from 'vitest';
import { orbit, pan, zoom } from '../../../renderer/viewport/camera';
import { buildPane, easedEye, type Pane } from '../../../renderer/viewport/pane';
import { eyeOf } from '../../../renderer/viewport/views';
import { cornerSubject } from './cornerSubject';

const subject = cornerSubject;
const [WIDE, HIGH] = [600, 400] as const;

/** A pane that the window framed. */
const framedPane = (projection: 'perspective' | 'parallel'): Pane => {
  const pane = buildPane('corner', { draw: () => undefined, place: () => undefined, remove: () => undefined });
  pane.place(0, 0, WIDE, HIGH);
  pane.look(eyeOf('corner', subject, WIDE / HIGH, projection));
  return pane;
};
/** Places in the view from its middle, in parts of its half width and height. */
const seen = (pane: Pane) => {
  pane.aim(0);
  const { width, height } = pane.box();
  return subject.points.map((point) => {
    const at = pane.project(point);
    if (!at) throw new Error('is before the eye');
    return [(2 * at[0]) / width - 1, (2 * at[1]) / height - 1] as const;
  });
};

test.each(['perspective', 'parallel'] as const)('what the person framed stays framed in a view of another shape: %s', (lens) => {
  const pane = framedPane(lens);
  expect(pane.isTurned()).toBe(false);
  pane.turn((eye) => pan(orbit(zoom(eye, 0.8), 0.4, 0.1), 0.05, 0.02));
  expect(pane.isTurned()).toBe(true);
  const before = seen(pane);
  const { azimuth, elevation, distance, target } = pane.eye() ?? eyeOf('corner', subject, 1, lens);
  pane.place(0, 0, WIDE, 200);
  // Flatter: as much up and down, more to both sides.
  seen(pane).forEach(([x, y], index) => {
    expect(y).toBeCloseTo(before[index]?.[1] ?? NaN, 6);
    expect(x).toBeCloseTo((before[index]?.[0] ?? NaN) / 2, 6);
  });
  pane.place(0, 0, 300, HIGH);
  // Narrower: as much across, more up and down.
  seen(pane).forEach(([x, y], index) => {
    expect(x).toBeCloseTo(before[index]?.[0] ?? NaN, 6);
    expect(y).toBeCloseTo((before[index]?.[1] ?? NaN) / 2, 6);
  });
  expect(pane.eye()).toMatchObject({ azimuth, elevation, distance, target });
  pane.place(0, 0, WIDE, HIGH);
  seen(pane).forEach((place, index) =>
    place.forEach((value, axis) => expect(value).toBeCloseTo(before[index]?.[axis] ?? NaN, 6)),
  );
});

test('another look of the window’s frames anew', () => {
  const pane = framedPane('perspective');
  pane.turn((eye) => orbit(eye, 1, 0));
  pane.look(eyeOf('side', subject, 1, 'parallel'));
  expect(pane.isTurned()).toBe(false);
});

test('the eye goes from one look to another by the shorter way round', () => {
  const eye = eyeOf('corner', subject, 1, 'perspective');
  const [from, to] = [
    { ...eye, azimuth: 3, distance: 1000 },
    { ...eye, azimuth: -3, distance: 2000 },
  ];
  const middle = easedEye(from, to, 0.5);
  expect(Math.abs(middle.azimuth)).toBeCloseTo(Math.PI, 9);
  expect(middle.distance).toBe(1500);
  expect(easedEye(from, to, 1).distance).toBe(2000);
});
