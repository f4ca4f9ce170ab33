import { describe, expect, it } from 'vitest';
import { placeAxle, readingsOfAxle, solvePoses, MOTION_WIDTH } from '../../../geometry/index';
import type { AxleDocument, CarDocument } from '../../../geometry/car/document';
import { dot, distance, subtract, unit } from '../../../geometry/core/vector';
import { envelopeOf, ENVELOPE_STEPS, trackAt, travelWhere } from '../../../geometry/fitup/envelope';
import { inInches } from '../../golden/inInches';
import { cornersOf, EVERY_CORNER, fitted, poseAt, reached, type StoodCorner } from './envelopes';
import { sample } from './loadedCars';

const documentOf = ({ car, axle }: StoodCorner): AxleDocument => car.mechanism.document[axle.axle]!;

/** Length of the damper where its wheel is at a travel from design: between its eyes, or along the strut [mm]. */
function damperLength(corner: StoodCorner, travel: number): number {
  const { car, axle, side } = corner;
  const name = side.mechanism.side;
  const { standing } = car[axle.axle]!;
  const answer = placeAxle(car, axle.axle, {
    travel: { ...standing, left: travel - standing.left, right: travel - standing.right },
  });
  if (!answer.ok) throw new Error(answer.failure.message);
  const placed = answer.value[name];
  if (axle.damper!.points !== null) return distance(placed.damper!.upper, placed.damper!.lower);
  return distance(placed.strut!.top, placed.strut!.foot);
}

const DAMPED = EVERY_CORNER.filter((corner) => {
  const damper = documentOf(corner).damper;
  return damper !== undefined && (damper.open !== undefined || damper.stroke !== undefined);
});

describe('the ends of the travel', () => {
  it('are asked of struts, rods with a blade and five rods', () => {
    expect(new Set(DAMPED.map(({ axle }) => `${axle.axle} ${axle.layout} ${axle.rods.length}`)).size).toBeGreaterThan(3);
  });

  it.each(DAMPED)('$title: the damper has its own open and solid length there', (corner) => {
    const { mechanism } = corner.car;
    const { open, closed, stroke, droopStopAt } = documentOf(corner).damper!;
    const { open: droop, solid, travels } = reached(corner);
    const mm = mechanism.mmPerUnit;
    // eye to eye as the file gives it; without eyes from the length at design
    const points = corner.side.mechanism.points;
    const ends = corner.axle.damper!.points;
    const atDesign =
      ends === null ? distance(points['strutTop'], points['strutFoot']) : distance(points[ends.upper], points[ends.lower]);
    const longest = open === undefined ? atDesign + droopStopAt! * mm : open * mm;
    const shortest = closed === undefined ? longest - stroke! * mm : closed * mm;
    // a threaded foot moves the eye, and a foot off the strut's own line makes the straight distance longer than the strut
    const gone = corner.side.adjustment.strutBody;
    if (corner.axle.damper!.points !== null) {
      expect(damperLength(corner, droop) - gone).toBeCloseTo(longest, 8);
      expect(damperLength(corner, solid) - gone).toBeCloseTo(shortest, 8);
    }
    const stood = corner.car[corner.axle.axle]!.standing;
    const left = (travel: number) => {
      const row = readingsOfAxle(corner.car, corner.axle.axle, {
        travel: { left: travel - stood.left, right: travel - stood.right },
      });
      if (!row.ok) throw new Error(row.failure.message);
      return row.value[corner.side.mechanism.side];
    };
    expect(left(droop).droopLeft).toBeCloseTo(0, 8);
    expect(left(solid).solidLeft).toBeCloseTo(0, 8);
    expect(left(droop).solidLeft).toBeCloseTo(longest - shortest, 8);
    expect(travels).toHaveLength(ENVELOPE_STEPS);
    expect([travels[0], travels.at(-1)]).toEqual([droop, solid]);
    const touchAt = documentOf(corner).damper!.bumpStopAt;
    const { touch } = reached(corner);
    if (touchAt === undefined) expect(touch).toBeNull();
    else expect(left(touch!).bumpLeft).toBeCloseTo(0, 8);
  });

  it('come of the file’s own travel where no damper says them, and then no touch is known', () => {
    const document = sample('chalkboard');
    const { damper: _, ...front } = document.front!;
    const [corner] = cornersOf('no damper', { ...document, front: { ...front, travel: [-55, 60] } });
    expect(reached(corner)).toMatchObject({ open: -55, solid: 60, touch: null });
  });

  it('are said to be missing where the file has neither, and so is the lock of a rack without travel', () => {
    const document = sample('chalkboard');
    const { damper: _, ...front } = document.front!;
    const [corner] = cornersOf('no damper', { ...document, front });
    const none = envelopeOf(corner.axle, 'As drawn', corner.side);
    expect('missing' in none && none.missing).toContain('front.damper');
    const steering = { axis: [0, 1, 0] as const, rod: 'tieRod' };
    const [unlocked] = cornersOf('no lock', { ...document, front: { ...document.front!, steering } });
    const without = envelopeOf(unlocked.axle, 'As drawn', unlocked.side);
    expect('missing' in without && without.missing).toContain('front.steering.travel');
  });

  it('are where the links end when they give out before the damper, and that is said', () => {
    const document = sample('saltmarsh-hatch');
    const damper = { ...document.front!.damper!, droopStopAt: 70, stroke: 700 };
    const [corner] = cornersOf('long damper', { ...document, front: { ...document.front!, damper } });
    const envelope = reached(corner);
    expect(() => poseAt(corner, envelope.solid, 0)).not.toThrow();
    expect(() => poseAt(corner, envelope.solid + 0.002, 0)).toThrow('not reached');
    const [past] = envelope.unreachable;
    expect(past.travel).toBeGreaterThan(envelope.solid);
    expect(past.travel).toBeLessThan(envelope.solid + 0.002);
    expect(past.rack).toBe(0);
    expect(past.message).toContain('Left wheel');
  });
});

describe('lock to lock', () => {
  it.each(EVERY_CORNER)('$title', (corner) => {
    const { rackMin, rackMax, racks } = reached(corner);
    const travel = documentOf(corner).steering?.travel;
    const mm = corner.car.mechanism.mmPerUnit;
    const [least, most] = travel === undefined ? [0, 0] : typeof travel === 'number' ? [-travel, travel] : travel;
    expect([rackMin, rackMax]).toEqual([least * mm, most * mm]);
    expect(racks).toHaveLength(travel === undefined ? 1 : ENVELOPE_STEPS);
    expect([racks[0], racks.at(-1)]).toEqual([rackMin, rackMax]);
  });

  it('may have unlike ends', () => {
    const document = sample('chalkboard');
    const steering = { ...document.front!.steering!, travel: [-50, 62] as const };
    const [corner] = cornersOf('unlike', { ...document, front: { ...document.front!, steering } });
    expect(reached(corner)).toMatchObject({ rackMin: -50, rackMax: 62 });
  });
});

describe('the poses', () => {
  it.each(EVERY_CORNER)('$title: each is what is found on its own', (corner) => {
    const { travels, racks, motions, isReached } = reached(corner);
    const positions = travels.flatMap((travel) => racks.map((rack) => ({ travel, rack })));
    const alone = solvePoses(corner.side.corner, {
      travel: positions.map(({ travel }) => travel),
      rack: positions.map(({ rack }) => rack),
    });
    let worst = 0;
    positions.forEach((_, i) => {
      expect(isReached[i]).toBe(alone.status[i] === 0 ? 1 : 0);
      // place and turn; rates follow from them
      for (let k = i * MOTION_WIDTH; k < i * MOTION_WIDTH + 12; k++)
        if (isReached[i] === 1) worst = Math.max(worst, Math.abs(motions[k] - alone.motions[k]));
    });
    expect(worst).toBeLessThan(1e-8);
  });

  it('a track goes on from any of them', () => {
    const corner = EVERY_CORNER[0];
    const track = trackAt(reached(corner), 4, 17);
    expect(
      Math.max(
        ...poseAt(corner, track.travel, track.rack)
          .slice(0, 12)
          .map((value, i) => Math.abs(value - track.motion[i])),
      ),
    ).toBeLessThan(1e-8);
  });
});

describe('positions that cannot be reached', () => {
  const far = (document: CarDocument): CarDocument => ({
    ...document,
    front: { ...document.front!, steering: { ...document.front!.steering!, travel: 190 } },
  });
  it.each(
    [...cornersOf('hatch', far(sample('saltmarsh-hatch'))), ...cornersOf('coupe', far(sample('marram-coupe')))].filter(
      ({ axle, setup }) => axle.axle === 'front' && (setup === 'Baseline' || setup === 'As built'),
    ),
  )('$title: are listed, each with its reason, and the rest is there', (corner) => {
    const { unreachable, isReached } = reached(corner);
    expect(unreachable.length).toBeGreaterThan(10);
    expect(unreachable.length + isReached.reduce((sum, one) => sum + one, 0)).toBe(ENVELOPE_STEPS ** 2);
    for (const { travel, rack, message } of unreachable.slice(0, 12)) {
      expect(() => poseAt(corner, travel, rack)).toThrow('not reached');
      expect(message).toMatch(/^(Left|Right) wheel at travel/);
    }
  });
});

it('left and right of a mirrored car have one envelope, a car with right-hand points of its own has two', () => {
  const [left, right] = cornersOf('hatch', sample('saltmarsh-hatch')).slice(0, 2).map(reached);
  expect({ ...right, side: 'left', motions: 0 }).toEqual({ ...left, motions: 0 });
  const [own, other] = cornersOf('car-23', fitted('car-23')).slice(0, 2).map(reached);
  expect(own.solid).not.toBe(other.solid);
});

it('a file in inches has the same envelope', () => {
  const corners = cornersOf('car-23', fitted('car-23'));
  cornersOf('inches', inInches(fitted('car-23'))).forEach((inch, i) => {
    const [a, b] = [reached(inch), reached(corners[i])];
    for (const key of ['open', 'solid', 'rackMin', 'rackMax'] as const)
      expect(a[key], `${inch.title} ${key}`).toBeCloseTo(b[key], 7);
  });
});

// A rod that turns as a hinge: a damper from its pivot's height to its end has a length by the law of cosines.
it('the travel of a damper is found by the law of cosines on a wheel that swings as a hinge', () => {
  const corner = cornersOf('chalkboard', sample('chalkboard')).find(({ axle }) => axle.axle === 'front')!;
  // arm axes along X: the lower arm's outer end runs on a circle in the plane x = 0
  const { lowerFrontBody, lowerBall } = corner.side.mechanism.points;
  const damperTravel = 17.5;
  const travel = travelWhere(corner.side, damperTravel);
  const placed = placeAxle(corner.car, 'front', { travel });
  if (!placed.ok) throw new Error(placed.failure.message);
  const ball = placed.value.left.points['lowerBall'];
  const pivot = [lowerBall[0], lowerFrontBody[1], lowerFrontBody[2]] as const;
  expect(distance(ball, pivot)).toBeCloseTo(350, 9);
  const angle = Math.asin((ball[2] - 200) / 350);
  // damper from [·, 600, 600] to a point 250 out on the arm: triangle with the pivot
  const upper = [60, 600, 600] as const;
  const from = subtract(upper, [60, pivot[1], pivot[2]]);
  const between = Math.acos(dot(unit(from), [0, Math.cos(angle), Math.sin(angle)]));
  const size = Math.hypot(...from);
  const length = Math.sqrt(size * size + 250 * 250 - 2 * size * 250 * Math.cos(between));
  expect(400 - length).toBeCloseTo(damperTravel, 8);
});
