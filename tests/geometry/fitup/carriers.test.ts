import { describe, expect, it } from 'vitest';
import { MOTION_WIDTH, placeAxle, type PlacedCorner, type Vector } from '../../../geometry/index';
import { add, distance, dot, length, mirror, reject, scale, subtract, unit } from '../../../geometry/core/vector';
import { barState } from '../../../geometry/readings/barReadings';
import { driveShaftFollower, followerOf, isStill, spinsWithWheel } from '../../../geometry/fitup/carriers';
import { atDesign, placed, turned, type Placement } from '../../../geometry/fitup/placement';
import { drawFrom } from '../../laws/draw';
import { cornersOf, EVERY_CORNER, inCarFrame, poseAt, reached, type StoodCorner } from './envelopes';
import { sample } from './loadedCars';

/** Every carrier that a corner has. */
function carriersOf({ axle, side }: StoodCorner): string[] {
  return [
    'body',
    'ground',
    'knuckle',
    'hub',
    'wheel',
    ...axle.rods.map(({ name }) => name),
    ...(axle.layout === 'strut' ? ['strut', 'strutFoot', 'strutRod', 'arm'] : []),
    ...(axle.trailingArm === null ? [] : ['trailingArm']),
    ...(axle.steering === null ? [] : ['rack']),
    ...(side.parts.spring === null ? [] : ['spring']),
    ...(side.parts.damper === null ? [] : ['damperUpper', 'damperLower']),
    ...(side.parts.bar === null ? [] : ['bar', 'barLink']),
  ];
}

/** Some positions of a corner's envelope: its corners, its middle and what lies between. */
function positionsOf(corner: StoodCorner): { travel: number; rack: number; index: number }[] {
  const { travels, racks, isReached } = reached(corner);
  return [0, 3, 10, 16, 20].flatMap((row) =>
    [0, 6, 10, 20]
      .filter((column) => column < racks.length)
      .map((column) => ({ travel: travels[row], rack: racks[column], index: row * racks.length + column }))
      .filter(({ index }) => isReached[index] === 1),
  );
}

function whereIs(corner: StoodCorner, carrier: string, travel: number, rack: number): Placement {
  const place = atDesign();
  expect(followerOf(corner.axle, corner.side, carrier)(poseAt(corner, travel, rack), rack, place)).toBe(true);
  return place;
}

/** The same corner by another way, in the car's frame. */
function drawn({ car, axle, side }: StoodCorner, travel: number, rack: number): PlacedCorner {
  const { standing } = car[axle.axle]!;
  const answer = placeAxle(car, axle.axle, {
    travel: { left: travel - standing.left, right: travel - standing.right },
    rack,
  });
  if (!answer.ok) throw new Error(answer.failure.message);
  return answer.value[side.mechanism.side];
}

const near = (a: Vector, b: Vector, what: string): void => expect(distance(a, b), what).toBeLessThan(1e-7);

describe('a part on each carrier keeps its distances', () => {
  const draw = drawFrom(20261128);
  const points = Array.from({ length: 5 }, (): Vector => [
    draw.between(-200, 200),
    draw.between(300, 900),
    draw.between(50, 700),
  ]);
  it.each(EVERY_CORNER)('$title', (corner) => {
    for (const carrier of carriersOf(corner))
      for (const { travel, rack } of positionsOf(corner)) {
        const bar = corner.side.parts.bar;
        // a short link does not reach everywhere: then nothing says where arm and link are
        if (carrier.startsWith('bar') && barState(bar!, corner.side.corner, poseAt(corner, travel, rack), rack) === null)
          continue;
        const place = whereIs(corner, carrier, travel, rack);
        points.forEach((a, i) =>
          points.slice(i + 1).forEach((b) => {
            expect(Math.abs(distance(placed(place, a), placed(place, b)) - distance(a, b)), carrier).toBeLessThan(1e-8);
          }),
        );
        // turned, and not mirrored
        expect(dot(turned(place, [1, 0, 0]), cross(turned(place, [0, 1, 0]), turned(place, [0, 0, 1])))).toBeCloseTo(1, 9);
      }
  });
});

const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

it('at design nothing has moved', () => {
  const bare = EVERY_CORNER.filter(({ setup, car }) => Object.keys(car.mechanism.document.setups![setup]).length === 0);
  expect(bare.length).toBeGreaterThan(10);
  for (const corner of bare)
    for (const carrier of carriersOf(corner)) {
      const place = whereIs(corner, carrier, 0, 0);
      atDesign().forEach((value, i) => expect(place[i], `${corner.title} ${carrier} ${i}`).toBeCloseTo(value, 7));
    }
});

describe('ends of what is carried are where the linkage has them', () => {
  it.each(EVERY_CORNER)('$title', (corner) => {
    const { axle, side } = corner;
    const { points } = side.mechanism;
    const { shifts } = side.adjustment;
    const seated = (seat: 'body' | 'arm' | 'knuckle', name: string): Vector => add(points[name], shifts[seat][name] ?? [0, 0, 0]);
    for (const { travel, rack } of positionsOf(corner)) {
      const now = drawn(corner, travel, rack);
      const at = (carrier: string, point: Vector): Vector =>
        inCarFrame(corner, placed(whereIs(corner, carrier, travel, rack), point));
      for (const rod of axle.rods) {
        const { inner, outer } = now.rods.find(({ name }) => name === rod.name)!;
        near(at('knuckle', seated('knuckle', rod.outer)), outer, `${rod.name} outer`);
        const isPaired = axle.rods.some((other) => other !== rod && other.outer === rod.outer);
        const direction = inCarFrame(
          corner,
          turned(whereIs(corner, rod.name, travel, rack), unit(subtract(seated('arm', rod.outer), seated('arm', rod.inner)))),
        );
        if (isPaired) continue;
        near(at(rod.name, seated('arm', rod.inner)), inner, `${rod.name} inner`);
        near(direction, unit(subtract(outer, inner)), `${rod.name} direction`);
      }
      near(at('wheel', points['wheelCentre']), now.wheelCentre, 'wheel');
      if (now.strut !== null) {
        near(at('strutRod', points['strutTop']), now.strut.top, 'strut top');
        near(at('strut', seated('knuckle', 'strutFoot')), now.strut.foot, 'strut foot');
      }
      for (const which of ['spring', 'damper'] as const) {
        const ends = axle[which]?.points;
        if (!ends) continue;
        const lowerOn = which === 'spring' ? axle.spring!.points!.lowerOn : axle.damper!.points!.lowerOn;
        near(at(lowerOn, points[ends.lower]), now[which]!.lower, `${which} lower`);
        if (which === 'damper') {
          near(at('damperUpper', points[ends.upper]), now.damper!.upper, 'damper upper');
          near(at('damperLower', points[ends.lower]), now.damper!.lower, 'damper lower');
        }
      }
      if (now.bar !== null) {
        near(at('bar', side.parts.bar!.armEnd), now.bar.armEnd, 'bar');
        near(at('barLink', side.parts.bar!.armEnd), now.bar.armEnd, 'link, on the arm');
        near(at(axle.bar!.linkOn, axle.bar!.linkEnd), now.bar.linkEnd, 'link, outboard');
      }
    }
  });
});

describe('what is carried, by hand', () => {
  it('what is on the body stays, and so does the ground', () => {
    expect(isStill('body') && isStill('ground')).toBe(true);
    expect(['knuckle', 'rack', 'wheel'].some(isStill)).toBe(false);
    const corner = EVERY_CORNER[0];
    for (const carrier of ['body', 'ground']) expect(whereIs(corner, carrier, 60, 40)).toEqual(atDesign());
  });

  it('wheel and hub spin', () => {
    expect(['wheel', 'hub', 'knuckle', 'driveShaft', 'body'].filter(spinsWithWheel)).toEqual(['wheel', 'hub']);
  });

  it('the rack moves along its axis, the same way in the car on both sides', () => {
    for (const corner of cornersOf('car-23', {
      ...EVERY_CORNER.find(({ title }) => title.startsWith('car-23'))!.car.mechanism.document,
    })) {
      if (corner.axle.steering === null) continue;
      const start: Vector = [-100, 200, 250];
      const now = placed(whereIs(corner, 'rack', 12, 33), start);
      near(subtract(inCarFrame(corner, now), inCarFrame(corner, start)), scale(corner.axle.steering.axis, 33), 'rack');
    }
  });

  it('a spacer carries the wheel out and leaves the hub', () => {
    const { onCar: _, questions: __, ...document } = sample('saltmarsh-hatch');
    const setups = { Bare: {}, Spaced: { rear: { both: { spacer: 15 } } } };
    const corners = cornersOf('hatch', { ...document, limits: [], setups }).filter(({ axle }) => axle.axle === 'rear');
    const [bare, spaced] = [corners[0], corners[2]];
    const point: Vector = [-2640, 740, 400];
    // travel 0 is the spaced wheel centre at its own design height: the same pose of the knuckle
    near(placed(whereIs(spaced, 'hub', 0, 0), point), placed(whereIs(bare, 'hub', 0, 0), point), 'hub');
    const out = subtract(placed(whereIs(spaced, 'wheel', 0, 0), point), placed(whereIs(bare, 'wheel', 0, 0), point));
    near(out, scale(spaced.side.corner.spindle, 15), 'wheel');
  });

  it('a bar’s arm turns about its centre line, which stays', () => {
    const corner = EVERY_CORNER.find(({ title }) => title.startsWith('car-23'))!;
    const { pivot, axis, armEnd } = corner.side.parts.bar!;
    const place = whereIs(corner, 'bar', 35, -20);
    near(placed(place, add(pivot, scale(axis, 77))), add(pivot, scale(axis, 77)), 'axis');
    const arm = (at: Vector): Vector => reject(subtract(at, pivot), axis);
    expect(length(arm(placed(place, armEnd)))).toBeCloseTo(length(arm(armEnd)), 9);
    expect(distance(placed(place, armEnd), armEnd)).toBeGreaterThan(5);
  });

  it('a strut’s rod hangs at its top, along the axis; the tube slides in it and turns with the knuckle', () => {
    const corner = EVERY_CORNER[0];
    const { strutTop, strutFoot } = corner.side.mechanism.points;
    const [rod, tube] = [whereIs(corner, 'strutRod', 41, 55), whereIs(corner, 'strut', 41, 55)];
    const axis = unit(subtract(strutTop, strutFoot));
    near(turned(rod, axis), turned(tube, axis), 'axis');
    near(placed(rod, strutTop), strutTop, 'top');
    const foot = subtract(placed(tube, strutFoot), strutTop);
    expect(length(reject(foot, turned(rod, axis)))).toBeLessThan(1e-8);
    // steered: the tube turned about the axis, the rod did not
    const across = unit(cross(axis, [1, 0, 0]));
    expect(dot(turned(rod, across), turned(tube, across))).toBeLessThan(0.95);
  });

  it('a clamp bolt turns the knuckle and leaves a part on the strut where the strut is', () => {
    const { onCar: _, questions: __, ...document } = sample('saltmarsh-hatch');
    const setups = { Bare: {}, Turned: { front: { both: { clampBolt: 90 } } } };
    const [corner] = cornersOf('hatch', { ...document, setups }).filter(({ setup }) => setup === 'Turned');
    const { strutTop, strutFoot } = corner.side.mechanism.points;
    const axis = unit(subtract(strutTop, strutFoot));
    const now = drawn(corner, 10, 5);
    near(turned(whereIs(corner, 'strut', 10, 5), axis), unit(subtract(now.strut!.top, now.strut!.foot)), 'strut');
    expect(
      distance(turned(whereIs(corner, 'knuckle', 10, 5), axis), unit(subtract(now.strut!.top, now.strut!.foot))),
    ).toBeGreaterThan(0.01);
  });

  it('a drive shaft runs from its inner joint to the outer one on the knuckle, and slides in the inner', () => {
    const corner = EVERY_CORNER[1];
    const { inner, outer } = corner.car.mechanism.document.front!.driveShaft!;
    const follow = driveShaftFollower(corner.side, inner, outer);
    const place = atDesign();
    const knuckle = whereIs(corner, 'knuckle', -44, 31);
    expect(follow(poseAt(corner, -44, 31), 31, place)).toBe(true);
    near(placed(place, outer), placed(knuckle, outer), 'outer');
    const line = unit(subtract(placed(place, outer), inner));
    near(turned(place, unit(subtract(outer, inner))), line, 'line');
    expect(length(reject(subtract(placed(place, inner), inner), line))).toBeLessThan(1e-9);
    expect(() => followerOf(corner.axle, corner.side, 'driveShaft')).toThrow(RangeError);
  });

  it('a lower arm of two rods is one body: all three joints stay in it', () => {
    for (const corner of EVERY_CORNER.filter(({ axle }) => axle.layout === 'strut')) {
      const { points } = corner.side.mechanism;
      const shift = corner.side.adjustment.shifts;
      if (Object.keys(shift.arm).length > 0 || Object.keys(shift.body).some((name) => name.startsWith('arm'))) continue;
      const place = whereIs(corner, 'arm', -30, 0);
      near(placed(place, points['armFront']), points['armFront'], 'front');
      near(placed(place, points['armRear']), points['armRear'], 'rear');
      near(inCarFrame(corner, placed(place, points['ballJoint'])), drawn(corner, -30, 0).arm![2], 'ball');
    }
  });

  it('left and right of a mirrored car are carried alike', () => {
    const [left, right] = cornersOf('hatch', sample('saltmarsh-hatch'));
    for (const carrier of carriersOf(left).filter((name) => name !== 'rack')) {
      const [a, b] = [whereIs(left, carrier, 22, 0), whereIs(right, carrier, 22, 0)];
      expect(b, carrier).toEqual(a);
    }
    const [a, b] = [whereIs(left, 'knuckle', 22, 30), whereIs(right, 'knuckle', 22, -30)];
    b.forEach((value, i) => expect(value).toBeCloseTo(a[i], 9));
    expect(mirror(inCarFrame(right, [1, 2, 3]))).toEqual([1, 2, 3]);
  });
});

it('what an axle does not have carries nothing', () => {
  const rear = EVERY_CORNER.find(({ axle }) => axle.axle === 'rear' && axle.layout === 'multi-link')!;
  for (const name of ['rack', 'strutRod', 'arm', 'upperr', 'tieRod'])
    expect(() => followerOf(rear.axle, rear.side, name), name).toThrow(RangeError);
});

it('a bar whose link does not reach has no place', () => {
  const document = sample('chalkboard');
  const antiRollBar = { ...document.front!.antiRollBar!, armEnd: [-30, 600, 290] as const, linkEnd: [-30, 600, 280] as const };
  const [corner] = cornersOf('short link', { ...document, front: { ...document.front!, antiRollBar } });
  const place = atDesign();
  for (const carrier of ['bar', 'barLink'])
    expect(followerOf(corner.axle, corner.side, carrier)(poseAt(corner, 60, 0), 0, place)).toBe(false);
});

it('poses of the grid are followed as those found on their own', () => {
  const corner = EVERY_CORNER[0];
  const { motions } = reached(corner);
  const follow = followerOf(corner.axle, corner.side, 'knuckle');
  for (const { travel, rack, index } of positionsOf(corner)) {
    const place = atDesign();
    follow(motions.subarray(index * MOTION_WIDTH, (index + 1) * MOTION_WIDTH), rack, place);
    whereIs(corner, 'knuckle', travel, rack).forEach((value, i) => expect(place[i]).toBeCloseTo(value, 8));
  }
});
