import { describe, expect, it } from 'vitest';
import { swingGauge, toDegrees, toRadians } from '../../geometry/index';
import { rowAt, stand } from './ask';
import { expectWithin } from './near';
import { kingpinOf, positionFor, steeredAxle } from './steeredAxle';
import { bisect, turned } from './turn';
import { CLOSED_DEG, CLOSED_MM } from './tolerances';

// D04. D. B. January, Steering Geometry and Caster Measurement, SAE 850219, 1985 (abstract and first page read in a public copy):
// caster is measured from camber during a steer sweep. Camber of the left wheel at equal steer angles to the left and to the right,
// to the ground; the numbers are computed for the catalogue of check values. Degrees.
// Tolerances of the case: camber 1e-7, estimate against true caster 0.06. The estimate is printed to six decimals.
const ROWS = [
  [14, 7, 10, 1.442875219, -1.002305036, 7.040616],
  [14, 7, 20, 3.287577962, -1.539081017, 7.056103],
  [12, 4, 10, 0.882117374, -0.510206808, 4.009038],
  [12, 4, 20, 2.112088679, -0.635074287, 4.016084],
  [0, 7, 10, 1.221436312, -1.221436312, 7.033971],
  [0, 7, 20, 2.404711452, -2.404711452, 7.030906],
  [14, 0, 10, 0.217129507, 0.217129507, 0],
  [14, 0, 20, 0.863073194, 0.863073194, 0],
] as const;

/** 1/(2 sin steer) of the case. */
const FACTORS: Readonly<Record<number, number>> = { 10: 2.879385241571817, 20: 1.4619022000815438 };

describe.each(['strut', 'multi-link'] as const)('D04 caster from a steer sweep, %s', (layout) => {
  it.each(ROWS)('KPI %f, caster %f, swing %i deg', (kingpinInclination, caster, steer, camberLeft, camberRight, estimate) => {
    // with the wheel centre on the axis the arms stay still at a held travel, and the axis with them
    const wanted = { layout, kingpinInclination, caster };
    const car = stand({ front: steeredAxle(wanted) });
    const camberAt = (groundAngle: number): number => {
      const { direction } = kingpinOf(wanted);
      const miss = (turn: number): number => {
        const s = turned([0, 1, 0], direction, turn);
        return toDegrees(Math.atan2(-s[0], s[1])) - groundAngle;
      };
      const { rack, travel } = positionFor(wanted, bisect(miss, -40, 40));
      expectWithin(travel, 0, CLOSED_MM, 'travel');
      const { left } = rowAt(car, 'front', { rack });
      expectWithin(left.steerAngle, groundAngle, 1e-8, 'steer angle');
      return left.camber;
    };
    const [left, right] = [camberAt(steer), camberAt(-steer)];
    expectWithin(left, camberLeft, 1e-7, 'camber, turned left');
    expectWithin(right, camberRight, 1e-7, 'camber, turned right');
    expectWithin((left - right) * FACTORS[steer], estimate, 5e-7, 'estimate');
    expectWithin(estimate, caster, 0.06, 'estimate against true caster');
  });

  it.each(ROWS.filter(([, , steer]) => steer === 20))(
    'reads KPI %f, caster %f with the gauge of 20 deg',
    (kingpinInclination, caster, _steer, camberLeft, camberRight, estimate) => {
      const { left, right } = rowAt(stand({ front: steeredAxle({ layout, kingpinInclination, caster }) }), 'front');
      const wanted = (camberLeft - camberRight) / (2 * Math.sin(toRadians(20)));
      expectWithin(left.casterBySwing, wanted, 2e-7 * FACTORS[20], 'caster by swing');
      expectWithin(left.casterBySwing, estimate, 5e-7, 'caster by swing, as printed');
      expect(right.casterBySwing).toBe(left.casterBySwing);
    },
  );

  it.each(ROWS)(
    'the gauge reads KPI %f, caster %f with a swing of %i deg',
    (kingpinInclination, caster, steer, camberLeft, camberRight, estimate) => {
      const car = stand({ front: steeredAxle({ layout, kingpinInclination, caster }) });
      const gauge = swingGauge(car, 'front', { swing: toRadians(steer) });
      if (!gauge.ok) throw new Error(gauge.failure.message);
      const { left, right } = gauge.value;
      if (left === null || right === null) throw new Error('the rack turns both wheels so far');
      expectWithin(toDegrees(left.outward), camberLeft, 1e-7, 'camber, turned out');
      expectWithin(toDegrees(left.inward), camberRight, 1e-7, 'camber, turned in');
      expectWithin(toDegrees(left.bySwing), estimate, 5e-7, 'caster by swing');
      expectWithin(toDegrees(left.caster ?? NaN), caster, CLOSED_DEG, 'caster of the axis');
      expect(right).toEqual(left);
    },
  );

  it('does not depend on where the rack stands', () => {
    const car = stand({ front: steeredAxle({ layout, kingpinInclination: 14, caster: 7 }) });
    expectWithin(rowAt(car, 'front', { rack: 17 }).left.casterBySwing, rowAt(car, 'front').left.casterBySwing!, CLOSED_DEG);
  });

  it('has no value on an axle that is not steered, and says why', () => {
    const { steering: _steering, ...rear } = steeredAxle({ layout: 'multi-link', kingpinInclination: 8, caster: 3 });
    const { left, why } = rowAt(stand({ rear }), 'rear');
    expect(left.casterBySwing).toBeNull();
    expect(why['left.casterBySwing']).toEqual(expect.any(String));
  });
});
