import { describe, it } from 'vitest';
import { toDegrees, toRadians, type AxleDocument, type Triple } from '../../geometry/index';
import { add, cross, distance, scale, subtract, unit } from '../../geometry/core/vector';
import { placedAt, rowAt, stand } from './ask';
import { expectRelative, expectWithin } from './near';
import { CENTRE_MM, CLOSED_RELATIVE } from './tolerances';
import { rotate, turned, turnedAbout } from './turn';

// D02. Exact construction (lines that all meet one line form a special linear complex; K. H. Hunt, Kinematic Geometry of
// Mechanisms, 1978, from memory); computed for the catalogue of check values. x forward, y left, z up, origin at the axle; metres
// there, mm here. Tolerance of the case: 1e-8 deg, 1e-10 m; the figures stand to 1e-10 deg and 1e-12 m.
const POINTS: Readonly<Record<string, Triple>> = {
  wheelCentre: [0, 750, 0],
  body1: [350, 200, -30],
  body2: [387.5, 325, -20],
  body3: [425, 450, -10],
  body4: [462.5, 575, 0],
  body5: [500, 700, 10],
  knuckle1: [50, 680, -120],
  knuckle2: [-100, 660, -80],
  knuckle3: [20, 640, 150],
  knuckle4: [-120, 650, 100],
  knuckle5: [120, 700, 30],
};
const axle: AxleDocument = {
  layout: 'multi-link',
  points: POINTS,
  rods: Object.fromEntries([1, 2, 3, 4, 5].map((n) => [`rod${n}`, [`body${n}`, `knuckle${n}`] as const])),
  wheel: { camber: 0, toe: 0, loadedRadius: 310 },
};
const car = stand({ rear: axle });
const hinge = { point: POINTS['body1'], direction: subtract(POINTS['body5'], POINTS['body1']) };

describe('D02 five links that form an exact hinge', () => {
  it.each([
    [-0.06, -7.0093550608, 0.005162350271, 0.753251294919, 0.6517644, 1.9723750987],
    [-0.04, -4.6658975042, 0.002653222296, 0.752404033311, 0.4081579682, 1.3216022944],
    [-0.02, -2.3307581537, 0.000934577524, 0.751319626743, 0.1910087928, 0.6641529319],
    [0, 0, 0, 0.75, 0, 0],
    [0.02, 2.3302480218, -0.000152972181, 0.748445891654, -0.1650342313, -0.670923082],
    [0.04, 4.6638493414, 0.000477091376, 0.746656872587, -0.3041106065, -1.3487221328],
    [0.06, 7.0047177425, 0.001895549192, 0.744631335242, -0.4170950077, -2.0335428086],
  ])('dz = %f m', (dz, angle, x, y, toe, camber) => {
    const { left } = rowAt(car, 'rear', { travel: 1000 * dz });
    expectWithin(left.wheelCentre[0], 1000 * x, 1000 * 1e-10, 'x');
    expectWithin(left.wheelCentre[1], 1000 * y, 1000 * 1e-10, 'y');
    expectWithin(left.toe, toe, 1e-8, 'toe');
    expectWithin(left.camber, camber, 1e-8, 'camber');
    const placed = placedAt(car, 'rear', { travel: 1000 * dz }).left;
    for (const point of [1, 2, 3, 4, 5])
      expectWithin(
        distance(placed.points[`knuckle${point}`], turnedAbout(POINTS[`knuckle${point}`], hinge, angle)),
        0,
        1000 * 1e-10,
        'outer joint',
      );
    const lever = unit(cross(hinge.direction, [1, 0, 0]));
    expectWithin(distance(rotate(placed.rotation, lever), turned(lever, hinge.direction, angle)), 0, toRadians(1e-8), 'turn');
  });

  it('has the motion of a hinge: every rate follows from one screw axis of pitch nothing', () => {
    for (const travel of [-60, -17, 0, 41]) {
      const placed = placedAt(car, 'rear', { travel }).left;
      const { left } = rowAt(car, 'rear', { travel });
      const perTurn = cross(unit(hinge.direction), subtract(placed.wheelCentre, hinge.point));
      const turn = scale(unit(hinge.direction), 1 / perTurn[2]);
      const contact = scale(cross(unit(hinge.direction), subtract(placed.contactCentre, hinge.point)), 1 / perTurn[2]);
      const s = placed.spindle;
      const sDot = cross(turn, s);
      // camber asin(−s_z), toe atan2(s_x, s_y)
      expectRelative(toRadians(left.camberGain), -sDot[2] / Math.sqrt(1 - s[2] * s[2]), CLOSED_RELATIVE, 'camber gain');
      expectRelative(
        toRadians(left.bumpSteer),
        (sDot[0] * s[1] - s[0] * sDot[1]) / (s[0] * s[0] + s[1] * s[1]),
        CLOSED_RELATIVE,
        'bump steer',
      );
      expectRelative(left.longitudinalSlopeContact, contact[0] / contact[2], CLOSED_RELATIVE, 'lengthwise slope');
      expectRelative(left.lateralSlopeContact, contact[1] / contact[2], CLOSED_RELATIVE, 'sideways slope');
      expectRelative(
        left.longitudinalSlopeWheelCentre,
        perTurn[0] / perTurn[2],
        CLOSED_RELATIVE,
        'lengthwise slope of the wheel centre',
      );
      expectRelative(left.jackingPerLateral, -contact[1] / contact[2], CLOSED_RELATIVE, 'jacking per side force');
      expectRelative(left.jackingPerLongitudinal, -contact[0] / contact[2], CLOSED_RELATIVE, 'jacking per lengthwise force');
    }
  });

  it('shows each instant centre where its cross plane cuts the hinge', () => {
    const { left } = rowAt(car, 'rear', { travel: 30 });
    const [cx, cy, cz] = left.contactCentre;
    const { point, direction } = hinge;
    const inPlane = (part: number) => add(point, scale(direction, part));
    const front = inPlane((cx - point[0]) / direction[0]);
    const side = inPlane((cy - point[1]) / direction[1]);
    expectWithin(left.frontViewInstantCentre![0], front[1], CENTRE_MM, 'front view, y');
    expectWithin(left.frontViewInstantCentre![1], front[2], CENTRE_MM, 'front view, z');
    expectWithin(left.sideViewInstantCentre![0], side[0], CENTRE_MM, 'side view, x');
    expectWithin(left.sideViewInstantCentre![1], side[2], CENTRE_MM, 'side view, z');
    // + inboard: this one lies inboard; + ahead: so does this one
    expectWithin(
      left.swingArmLength,
      Math.sqrt((cy - front[1]) * (cy - front[1]) + (cz - front[2]) * (cz - front[2])),
      CENTRE_MM,
    );
    expectWithin(
      left.sideViewSwingArmLength,
      Math.sqrt((side[0] - cx) * (side[0] - cx) + (cz - side[2]) * (cz - side[2])),
      CENTRE_MM,
    );
  });

  it('turns the design camber with the hinge', () => {
    const tilted = stand({ rear: { ...axle, wheel: { ...axle.wheel, camber: -2, toe: 0.3 } } });
    const { left } = rowAt(tilted, 'rear', { travel: 60 });
    const [c, t] = [toRadians(-2), toRadians(0.3)];
    const s = turned([Math.cos(c) * Math.sin(t), Math.cos(c) * Math.cos(t), -Math.sin(c)], hinge.direction, 7.0047177425);
    expectWithin(left.camber, toDegrees(Math.asin(-s[2])), 1e-8);
    expectWithin(left.toe, toDegrees(Math.atan2(s[0], s[1])), 1e-8);
  });
});
