import { describe, it } from 'vitest';
import { toDegrees, toRadians } from '../../geometry/index';
import { placedAt, rowAt, stand } from './ask';
import { expectWithin } from './near';
import { AT_300, AT_ROW_0, planarStrutAxle } from './planarStrut';
import { CLOSED_MM } from './tolerances';

// D01. Geometry of P01; the roll-centre construction from the textbooks (Reimpell/Stoll/Betzler; Milliken & Milliken; Dixon) from
// memory, numbers computed for the catalogue of check values. Centre line at X = 0, ground at Y = 0, contact 0.30 m below the
// wheel centre. Tolerance of the case: 1e-9 m, rad, deg.
describe('D01 instant centre and roll centre of the planar strut at 0.30 m', () => {
  const car = stand({ front: planarStrutAxle(AT_300) });
  const { left, both } = rowAt(car, 'front');

  it('shows the instant centre and the camber gain', () => {
    expectWithin(left.frontViewInstantCentre![0], -1060.873641184, 1e-6, 'y');
    expectWithin(left.frontViewInstantCentre![1], 443.741307096, 1e-6, 'z');
    expectWithin(-1000 * toRadians(left.camberGain), 0.608523870208, 1e-9, 'dphi/dy');
  });

  it('shows the roll centre', () => {
    [0, 582.447268574, 0].forEach((wanted, i) => expectWithin(left.contactCentre[i], wanted, CLOSED_MM, 'contact'));
    expectWithin(both.rollCentreHeight, 157.276592014, 1e-6, 'height');
    expectWithin(both.rollCentreOffset, 0, CLOSED_MM, 'offset');
    // half track times the slope of the contact: the half track enters once
    expectWithin(both.rollCentreHeight, left.halfTrack * left.lateralSlopeContact, CLOSED_MM, 'by the slope');
  });

  it('shows the kingpin inclination from ball joint to top', () => {
    expectWithin(left.kingpinInclination, 14.639604752, 1e-9);
    expectWithin(left.caster, 0, 1e-9);
  });

  it('is the mechanism of P01 moved there', () => {
    const other = stand({ front: planarStrutAxle(AT_ROW_0) });
    const travel = 300 - AT_ROW_0.wheelCentre[2];
    const row = rowAt(other, 'front', { travel });
    const [, y, z] = placedAt(other, 'front', { travel }).left.points['ballJoint'];
    expectWithin(row.left.wheelCentre[1], 582.447268574, 1e-6, 'x of the case');
    expectWithin(toRadians(row.left.camber), 6.08207751501265 - 6.049444866855, 1e-9, 'phi of the case');
    expectWithin(y, 566.234018284, 1e-6, 'A, across');
    expectWithin(z, 231.903520539, 1e-6, 'A, up');
  });
});

// D07. Geometry of P01/P03 at a wheel-centre height of 0.30 m; computed for the catalogue (a solver in three dimensions and a
// planar one agree to 1e-12 deg). Metres and degrees. Tolerance of the case: 1e-8 deg; lengths as printed, 1e-11 m.
describe('D07 camber plate: the top mount moved sideways', () => {
  const plate = { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-20, 20], step: 1 } as const;
  const shifted = (shift: number) =>
    rowAt(
      stand({
        front: planarStrutAxle(AT_300, { adjusters: { plate } }),
        setups: { Moved: { front: { both: { plate: shift } } } },
      }),
      'front',
    ).left;

  it.each([
    [-0.015, -1.3230701125, 15.963187117, -0.00162318213],
    [-0.01, -0.8839282694, 15.523871436, -0.00108401881],
    [-0.005, -0.4428944913, 15.082666884, -0.00054293178],
    [0.005, 0.4447230932, 14.19471722, 0.00054469558],
    [0.01, 0.8912417915, 13.748037355, 0.00109107207],
  ])('%f m outboard: camber %f deg, kingpin inclination %f deg, wheel %f m', (shift, camber, inclination, wheel) => {
    const left = shifted(1000 * shift);
    expectWithin(left.camber, camber, 1e-8, 'camber');
    expectWithin(left.kingpinInclination, inclination, 1e-8, 'kingpin inclination');
    expectWithin(left.wheelCentre[1] - AT_300.wheelCentre[1], 1000 * wheel, 1000 * 1e-11, 'wheel centre');
    expectWithin(left.wheelCentre[2], 300, CLOSED_MM, 'wheel-centre height, which is kept');
  });
});

// D08. Geometry of D07; computed for the catalogue. e: outboard shift of the upper hole of the knuckle against the strut, the
// lower bolt the pivot, 60 mm between the bolts. Tolerance of the case: 1e-8 deg.
// The case turns the clamp by atan(e/60); a clamp-eccentric of the file turns it by asin(throw · sin(clock)/60), so the throw is
// 60 · sin(atan(e/60)) at a clock of ±90.
describe('D08 clamp-bolt eccentric: the wheel turns less than the clamp', () => {
  const SPACING = 60;
  const [foot, bolt] = [
    [0, 520, 400],
    [0, 520, 460],
  ] as const;

  it.each([
    [-0.002, -1.909152433, -1.3583864698, 0.71151284, -0.00166655852],
    [-0.001, -0.9548412539, -0.6790837213, 0.71120065, -0.00083265119],
    [0.001, 0.9548412539, 0.6785460147, 0.71063751, 0.0008308769],
    [0.002, 1.909152433, 1.3562368798, 0.7103869, 0.00165946515],
  ])('e = %f m: clamp %f deg, camber %f deg', (e, clamp, camber, ratio, wheel) => {
    const angle = Math.atan((1000 * Math.abs(e)) / SPACING);
    expectWithin(Math.sign(e) * toDegrees(angle), clamp, 1e-8, 'turn of the clamp');
    const axle = planarStrutAxle(AT_300);
    // + about −X takes the top outboard
    const camberBolt = {
      kind: 'clamp-eccentric',
      pivot: 'clampLower',
      bolt: 'clampUpper',
      axis: [-1, 0, 0],
      throw: SPACING * Math.sin(angle),
      mark: 15,
    } as const;
    const front = { ...axle, points: { ...axle.points, clampLower: foot, clampUpper: bolt }, adjusters: { camberBolt } };
    const { left } = rowAt(stand({ front, setups: { Turned: { front: { both: { camberBolt: 90 * Math.sign(e) } } } } }), 'front');
    expectWithin(left.camber, camber, 1e-8, 'camber');
    expectWithin(left.camber / clamp, ratio, 1e-8, 'part of the turn');
    expectWithin(left.wheelCentre[1] - AT_300.wheelCentre[1], 1000 * wheel, 1000 * 1e-11, 'wheel centre');
    expectWithin(left.wheelCentre[2], 300, CLOSED_MM, 'wheel-centre height, which is kept');
  });
});
