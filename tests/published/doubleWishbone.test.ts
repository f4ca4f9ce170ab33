import { describe, expect, it } from 'vitest';
import { toDegrees, toRadians, type CornerReadings, type Vector } from '../../geometry/index';
import { ackermannPercent } from '../../geometry/axle/ackermann';
import { add, cross, distance, dot, subtract, unit } from '../../geometry/core/vector';
import { placedAt, rowAt, stand } from './ask';
import { expectWithin } from './near';
import { RILL, RILL_AXLE, RILL_KINGPIN } from './rillAxle';
import { rotate, turned, turnedAbout } from './turn';

// Source of all three cases: rillAxle.ts.
const car = stand({ front: RILL_AXLE });

// P05. Tolerances of the case: 1e-9 deg, 1e-11 m, contact point 1e-8 m.
describe('P05 steering axis of the double wishbone', () => {
  const { left } = rowAt(car, 'front');

  it('has its kingpin inclination and caster', () => {
    expectWithin(left.kingpinInclination, 10.51820702182836, 1e-9);
    expectWithin(left.caster, 7.05609603790102, 1e-9);
  });

  it('has its trail and scrub radius with camber on the wheel', () => {
    expectWithin(left.mechanicalTrail, 30.32555202671959, 1000 * 1e-11);
    expectWithin(left.scrubRadius, 1.0327091061189432, 1000 * 1e-11);
  });

  it('has its wheel axis and contact point', () => {
    const { spindle, contactCentre } = placedAt(car, 'front').left;
    [0, 0.99990254, -0.01396127].forEach((wanted, i) => expectWithin(spindle[i], wanted, 5e-9, 'wheel axis'));
    [0, 764.02104, -284.97222].forEach((wanted, i) => expectWithin(contactCentre[i], wanted, 1000 * 1e-8, 'contact point'));
  });
});

/** Camber as the source projects it, + top outboard: seen along the car instead of to the wheel's own plane. */
const projectedCamber = ({ camber, steerAngle }: CornerReadings): number => {
  const [c, s] = [toRadians(camber), toRadians(steerAngle)];
  return toDegrees(Math.atan2(Math.sin(c), Math.cos(c) * Math.cos(s)));
};

// P06. phi: turn of the lower arm about its axis A→B, degrees, right hand. The catalogue's figures of W and P in metres; the
// source's toe is + for a left turn, its camber + top inboard. Tolerances of the case: 1e-10 m, 1e-8 deg.
describe('P06 double wishbone against travel', () => {
  const home = placedAt(car, 'front').left.contactCentre;
  const armAxis = { point: RILL.lowerRearBody, direction: subtract(RILL.lowerFrontBody, RILL.lowerRearBody) };

  it.each([
    [
      -10,
      [0.003566817762, 0.747389305036, -0.070198595737],
      [-0.008555035156, 0.752302899387, -0.354898292386],
      0.2385631219,
      0.9989165703,
    ],
    [
      -8,
      [0.002857925616, 0.75306213872, -0.056471145489],
      [-0.006855521534, 0.755130710968, -0.341298057759],
      0.1776459718,
      0.4221646146,
    ],
    [
      -6,
      [0.002146316093, 0.757916369504, -0.042566893162],
      [-0.005150411044, 0.757761643315, -0.327473428421],
      0.1251606976,
      -0.0279105288,
    ],
    [
      -4,
      [0.001432273879, 0.762002670833, -0.028506650404],
      [-0.003439144939, 0.760143528359, -0.313458949689],
      0.0790525316,
      -0.3724638272,
    ],
    [
      -2,
      [0.000716524534, 0.765355734805, -0.014310940775],
      [-0.001722044324, 0.76223909071, -0.299283465611],
      0.0377365947,
      -0.6262758894,
    ],
    [0, [0, 0.768, 0], [0, 0.764021037146, -0.284972222953], 0, -0.799948018],
    [
      2,
      [-0.000716276103, 0.769953004734, 0.014406199723],
      [0.001725706458, 0.765469182044, -0.270548063371],
      -0.0350731327,
      -0.9011877444,
    ],
    [
      4,
      [-0.00143124527, 0.771227454448, 0.028887920504],
      [0.003453511424, 0.766568674824, -0.256032129553],
      -0.0681587699,
      -0.9356020219,
    ],
    [
      6,
      [-0.002143840708, 0.771832545023, 0.043425630561],
      [0.005181637704, 0.767308864601, -0.241444293582],
      -0.0997370968,
      -0.9072055424,
    ],
    [
      8,
      [-0.002852996925, 0.771774830766, 0.057999978075],
      [0.006908138476, 0.76768255415, -0.226803416406],
      -0.1301275642,
      -0.8187546732,
    ],
    [
      10,
      [-0.003557648744, 0.771058799581, 0.07259176623],
      [0.008630925348, 0.767685503565, -0.212127498197],
      -0.1595177544,
      -0.671969119,
    ],
  ] as const)('lower arm at %i deg', (phi, wheel, contact, toe, camber) => {
    const position = { travel: 1000 * wheel[2] };
    const { left } = rowAt(car, 'front', position);
    const placed = placedAt(car, 'front', position).left;
    // fixed to the carrier, not the lowest point of the wheel
    const p = add(placed.wheelCentre, rotate(placed.rotation, subtract(home, RILL.wheelCentre)));
    wheel.forEach((wanted, i) => expectWithin(left.wheelCentre[i], 1000 * wanted, 1000 * 1e-10, 'wheel centre'));
    contact.forEach((wanted, i) => expectWithin(p[i], 1000 * wanted, 1000 * 1e-10, 'contact reference point'));
    expectWithin(left.toe, -toe, 1e-8, 'toe');
    expectWithin(projectedCamber(left), -camber, 1e-8, 'camber');
    const joint = turnedAbout(RILL.lowerKnuckle, armAxis, phi);
    expectWithin(distance(placed.points['lowerKnuckle'], joint), 0, 1000 * 1e-10, 'lower ball joint');
  });

  // toe and camber to six decimals of a degree, roll centre to 1e-6 m: half a unit of the last place
  it.each([
    [-0.05, -0.152229, -0.197731],
    [-0.02, -0.053761, 0.534958],
    [0.02, 0.048076, 0.922173],
    [0.05, 0.113586, 0.874594],
  ])('wheel centre at %f m: toe-in %f deg, camber %f deg', (dz, toe, camber) => {
    const { left } = rowAt(car, 'front', { travel: 1000 * dz });
    expectWithin(left.toe, toe, 5e-7, 'toe');
    expectWithin(left.camber, camber, 5e-7, 'camber');
  });

  it('has its roll centre at the height of the catalogue', () => {
    expectWithin(rowAt(car, 'front').both.rollCentreHeight, 86.013, 5e-4);
  });
});

// P08. Rack at u, lower arm held: the knuckle then turns about the fixed line through its ball joints by delta, which is what the
// source calls the steer angle. Wheelbase 2.7 m; the source takes twice the wheel-centre y, 1.536 m, for the track.
// Tolerance of the case: 1e-8 deg.
describe('P08 left and right steer angles of the double wishbone', () => {
  const rows = [
    [0.0745, -30.986450064601993, -41.24257620978283, -42.37024700451619],
    [0.03725, -15.477056858492741, -16.947915517924457, -18.193895718186898],
  ] as const;

  /** Travel at which the lower arm is at its design angle with the knuckle turned by delta. */
  const travelOf = (delta: number): number => turnedAbout(RILL.wheelCentre, RILL_KINGPIN, delta)[2];

  /** How far the left knuckle has turned about the kingpin from design. */
  function turnOf(rotation: readonly number[]): number {
    const k = unit(RILL_KINGPIN.direction);
    const lever: Vector = unit(cross(k, [1, 0, 0]));
    const now = rotate(rotation, lever);
    return toDegrees(Math.atan2(dot(cross(lever, now), k), dot(lever, now)));
  }

  it.each(rows)('u = %f m: %f deg and %f deg', (u, left, right) => {
    // by symmetry the right wheel turns by minus what the left one does at −u
    for (const [rack, delta] of [
      [1000 * u, left],
      [-1000 * u, -right],
    ]) {
      const placed = placedAt(car, 'front', { travel: { left: travelOf(delta), right: 0 }, rack }).left;
      expectWithin(turnOf(placed.rotation), delta, 1e-8, 'turn about the kingpin');
      const spindle = turned(placedAt(car, 'front').left.spindle, RILL_KINGPIN.direction, delta);
      expectWithin(distance(placed.spindle, spindle), 0, 1e-9, 'spindle');
      expectWithin(distance(placed.points['lowerKnuckle'], RILL.lowerKnuckle), 0, 1e-6, 'lower ball joint');
    }
  });

  it.each(rows)('u = %f m: the inner angle of the Ackermann geometry', (_u, outer, inner, ideal) => {
    const percent = ackermannPercent(toRadians(outer), toRadians(inner), 1536, 2700);
    expectWithin(percent, (100 * (inner - outer)) / (ideal - outer), 1e-6);
    // with the ideal inner angle it is all of it, to 1e-8 deg of that angle
    expectWithin(ackermannPercent(toRadians(outer), toRadians(ideal), 1536, 2700), 100, (100 * 1e-8) / (outer - ideal));
    expect(percent).toBeLessThan(100);
  });
});
