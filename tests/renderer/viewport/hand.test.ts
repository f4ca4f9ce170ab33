import { describe, expect, test } from 'vitest';
import { assembleCar, findSetup, placeAxle, toMechanism } from '../../../geometry/index';
import { nearestSetting } from '../../../renderer/compute/nearestSetting';
import { choosePoint, allowMove, layViews } from '../../../renderer/state/actions/viewing';
import { clockToward } from '../../../renderer/viewport/clockToward';
import { eyeAxes, STEEPEST } from '../../../renderer/viewport/camera';
import { alongAxis, inPlane, isAtEye, moveAtDesign, roundedPlace, toCar } from '../../../renderer/viewport/dragTarget';
import { groundFrame } from '../../../renderer/viewport/groundFrame';
import { adjustersHeldBack, adjustersMoving, isOnKnuckle } from '../../../renderer/viewport/joints';
import { wayToDrag } from '../../../renderer/viewport/pointDrag';
import { separation } from '../../../renderer/viewport/points';
import { clipRay, convexHull } from '../../../renderer/viewport/screenLines';
import { carDocument, openedBench } from '../carUnderTest';

const document = carDocument('car-23');
const front = document.front;
if (!front) throw new Error('has a front axle');

describe('where a drag wants a point', () => {
  test('from the ground’s frame back into the car’s', () => {
    const frame = groundFrame({ point: [3, 0, -5], normal: [0.03, 0.02, 0.999] });
    for (const point of [
      [10, 700, 300],
      [-400, -350, 120],
    ] as const)
      expect(separation(toCar(frame, frame.toGround(point)), point)).toBeLessThan(1e-9);
  });
  test('on an axis it follows the hand along it, and stands where the axis points at the eye', () => {
    const seen = [
      [100, 100],
      [102, 101],
    ] as const;
    expect(alongAxis([0, 0, 0], [1, 0, 0], seen, [120, 110])[0]).toBeCloseTo(10, 9);
    expect(
      alongAxis(
        [5, 5, 5],
        [0, 0, 1],
        [
          [1, 1],
          [1, 1],
        ],
        [50, 50],
      ),
    ).toEqual([5, 5, 5]);
  });
  test('a move of a point on the knuckle is turned back to design', () => {
    const placed = (() => {
      const car = assembleCar(toMechanism(document), findSetup(document, 'Baseline') ?? {});
      if (!car.ok) throw new Error('stands');
      const at = placeAxle(car.value, 'front', { travel: 40, rack: 20 });
      if (!at.ok) throw new Error('closes');
      return at.value;
    })();
    const { rotation, points } = placed.left;
    const [ball, end] = [points['ballJoint'], points['tieRodEnd']];
    const [ballAtDesign, endAtDesign] = [front.points['ballJoint'], front.points['tieRodEnd']];
    if (!ball || !end || !ballAtDesign || !endAtDesign) throw new Error('has both');
    const between = moveAtDesign([end[0] - ball[0], end[1] - ball[1], end[2] - ball[2]], rotation);
    expect(
      separation(between, [endAtDesign[0] - ballAtDesign[0], endAtDesign[1] - ballAtDesign[1], endAtDesign[2] - ballAtDesign[2]]),
    ).toBeLessThan(1e-6);
  });
  test('an axis that points at the eye is no arm, and a view along it moves nothing in depth', () => {
    const axes = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const;
    // the view from above is half a degree from upright, so that it knows which way is up
    const [, , away] = eyeAxes({ azimuth: Math.PI, elevation: STEEPEST });
    expect(axes.map((axis) => isAtEye(axis, away))).toEqual([false, false, true]);
    expect(inPlane([30, -20, 0.26], axes, away)).toEqual([30, -20, 0]);
    const [, , slant] = eyeAxes({ azimuth: 0.5, elevation: 0.35 });
    expect(axes.some((axis) => isAtEye(axis, slant))).toBe(false);
    expect(inPlane([30, -20, 5], axes, slant)).toEqual([30, -20, 5]);
  });
  test('places are written as a person would', () => {
    expect(roundedPlace([1.23456, -0.001, 3], 1)).toEqual([1.23, 0, 3]);
    expect(roundedPlace([25.4, 50.8, 12.7], 25.4)).toEqual([1, 2, 0.5]);
  });
});

describe('who moves a point', () => {
  test('its adjusters, but none that is locked or that the set toe turns', () => {
    expect(adjustersMoving(front, 'strutTop', false)).toContain('plateAcross');
    expect(adjustersMoving(front, 'strutFoot', false)).toEqual([]);
    const locked = {
      ...front,
      adjusters: { plateAcross: { ...front.adjusters?.['plateAcross'], locked: 'rule 5' } },
    } as typeof front;
    expect(adjustersMoving(locked, 'strutTop', false)).toEqual([]);
    expect(adjustersHeldBack(locked, 'strutTop', false)).toEqual(['plateAcross']);
    expect(adjustersHeldBack(front, 'strutTop', false)).toEqual([]);
  });
  test('knuckle points turn with the knuckle', () => {
    expect(isOnKnuckle(front, 'ballJoint')).toBe(true);
    expect(isOnKnuckle(front, 'armFront')).toBe(false);
    expect(document.rear && isOnKnuckle(document.rear, 'wheelCentre')).toBe(true);
  });
  test('a point without an adjuster is asked for first; choosing another asks again', () => {
    const store = openedBench();
    const foot = { axle: 'front', side: 'left', point: 'strutFoot' } as const;
    choosePoint(store, foot);
    expect(wayToDrag(store, foot).kind).toBe('ask');
    allowMove(store);
    expect(wayToDrag(store, foot).kind).toBe('point');
    choosePoint(store, { ...foot, point: 'ballJoint' });
    expect(store.getState().viewing.mayMove).toBe(false);
    store.setState({ held: 'plateAcross' });
    expect(wayToDrag(store, { ...foot, point: 'strutTop' })).toEqual({ kind: 'adjuster', name: 'plateAcross' });
  });
});

test('an adjuster is turned to its nearest mark, and stops at its range', () => {
  const plate = { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-10, 10], step: 1 } as const;
  const missFrom = (wanted: number) => (setting: number | null) => Math.abs((setting ?? 0) - wanted);
  expect(nearestSetting(plate, 0, missFrom(7.3))).toBe(7);
  expect(nearestSetting(plate, 0, missFrom(-40))).toBe(-10);
  expect(nearestSetting(plate, null, missFrom(0.2))).toBe(null);
  expect(nearestSetting(plate, 3, () => Infinity)).toBe(3);
});

test('the hole of a bushing points to where it is pulled, on the right as in a mirror', () => {
  const bushing = { kind: 'offset-bushing', moves: 'armRear', axis: [0, 0, 1], twelve: [0, 1, 0], offset: 6, index: 30 } as const;
  for (const clock of [0, 30, 135, -120]) {
    const rad = (clock * Math.PI) / 180;
    const pull = [-20 * Math.sin(rad), 20 * Math.cos(rad), 7] as const;
    expect(clockToward(bushing, pull, 'left')).toBeCloseTo(clock, 9);
    expect(clockToward(bushing, [pull[0], -pull[1], pull[2]], 'right')).toBeCloseTo(clock, 9);
  }
  expect(clockToward(bushing, [0, 0, 30], 'left')).toBeNull();
});

test('beside the coordinates a drag moves the point, also one that an adjuster moves on the bench', () => {
  const store = openedBench('car-23');
  const moved = Object.values(front.adjusters ?? {}).flatMap((adjuster) =>
    'moves' in adjuster && adjuster.kind === 'slide' && adjuster.locked === undefined ? [adjuster.moves] : [],
  );
  const [point = ''] = moved;
  const ref = { axle: 'front', side: 'left', point } as const;
  expect(wayToDrag(store, ref).kind).toBe('adjuster');
  layViews(store, ['front', 'top']);
  expect(wayToDrag(store, ref)).toEqual({ kind: 'point' });
  expect(wayToDrag(store, { ...ref, point: 'wheelCentre' })).toEqual({ kind: 'point' });
  layViews(store, []);
  expect(wayToDrag(store, ref).kind).toBe('adjuster');
});

describe('lines on the screen', () => {
  const area = { x: 0, y: 0, width: 600, height: 400 };
  const flat = ([x, y, z]: readonly [number, number, number]) => [x, y, z] as const;
  test('a line that leaves the view ends at its edge, with what is left of it', () => {
    const ray = clipRay([100, 200, 0], [1600, 200, 0], flat, area);
    expect(ray?.to[0]).toBeCloseTo(600, 6);
    expect(ray?.further).toBeCloseTo(1000, 6);
    expect(clipRay([100, 200, 0], [300, 200, 0], flat, area)?.further).toBe(0);
    expect(clipRay([-5, 200, 0], [300, 200, 0], flat, area)).toBeNull();
  });
  test('an outline goes round all points once', () => {
    const hull = convexHull([
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
      [2, 1],
      [2, 0],
    ]);
    expect(hull).toHaveLength(4);
  });
});
