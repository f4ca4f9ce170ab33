import { describe, it } from 'vitest';
import { rowAt, stand } from './ask';
import { expectWithin } from './near';
import { positionFor, steeredAxle, WHEEL_CENTRE, kingpinOf } from './steeredAxle';
import { CLOSED_DEG, CLOSED_MM } from './tolerances';

// D03. Rigid rotation about an inclined axis (exact); the small-angle form camber0 + KPI·(1 − cos d) + caster·sin d is textbook
// (Dixon; Milliken & Milliken), from memory. Left wheel, rotation + to the left; axis along (−tan caster, −tan KPI, 1). Degrees.
// Tolerances of the case: exact 1e-8, small-angle form 0.21.
const ROWS = [
  [14, 0, 0, -30, -29.037893017, 1.802171004, 1.875644],
  [14, 0, 0, -20, -19.383770375, 0.811123324, 0.844303],
  [14, 0, 0, -10, -9.700103262, 0.204326577, 0.212691],
  [14, 0, 0, 10, 9.700103262, 0.204326577, 0.212691],
  [14, 0, 0, 20, 19.383770375, 0.811123324, 0.844303],
  [14, 0, 0, 30, 29.037893017, 1.802171004, 1.875644],
  [0, 7, 0, -30, -29.814726906, -3.493463685, -3.5],
  [0, 7, 0, -20, -19.862621523, -2.38888159, -2.394141],
  [0, 7, 0, -10, -9.926949656, -1.212606119, -1.215537],
  [0, 7, 0, 10, 9.926949656, 1.212606119, 1.215537],
  [0, 7, 0, 20, 19.862621523, 2.38888159, 2.394141],
  [0, 7, 0, 30, 29.814726906, 3.493463685, 3.5],
  [14, 7, 0, -30, -29.061019848, -1.612622657, -1.624356],
  [14, 7, 0, -20, -19.351375606, -1.518690803, -1.549838],
  [14, 7, 0, -10, -9.657779186, -0.975590919, -1.002846],
  [14, 7, 0, 10, 9.608992262, 1.378609971, 1.428229],
  [14, 7, 0, 20, 19.165803002, 3.119543788, 3.238444],
  [14, 7, 0, 30, 28.678093419, 5.172746885, 5.375644],
  [13.95, 6.35, -0.1833, -30, -29.103910541, -1.482663037, -1.489354],
  [13.95, 6.35, -0.1833, -20, -19.385243088, -1.487795207, -1.51384],
  [13.95, 6.35, -0.1833, -10, -9.677297321, -1.050189815, -1.074034],
  [13.95, 6.35, -0.1833, 10, 9.632542172, 1.086592862, 1.131298],
  [13.95, 6.35, -0.1833, 20, 19.214969382, 2.721791749, 2.829816],
  [13.95, 6.35, -0.1833, 30, 28.752385964, 4.674951575, 4.860646],
] as const;

describe.each(['strut', 'multi-link'] as const)('D03 camber with steer about a kingpin, %s', (layout) => {
  it.each(ROWS)(
    'KPI %f, caster %f, camber %f, turned by %i deg',
    (kingpinInclination, caster, camber, turn, steer, exact, small) => {
      // the wheel centre beside the axis, so that it rises and falls as it is steered
      const wanted = { layout, kingpinInclination, caster, camber, offset: [8, -55, 0] as const };
      const { travel, rack } = positionFor(wanted, turn);
      const { left } = rowAt(stand({ front: steeredAxle(wanted) }), 'front', { travel: { left: travel, right: 0 }, rack });
      expectWithin(left.steerAngle, steer, 1e-8, 'steer angle');
      expectWithin(left.camber, exact, 1e-8, 'camber');
      expectWithin(left.camber, small, 0.21, 'camber by the small-angle form');
      expectWithin(left.caster, caster, CLOSED_DEG, 'caster, whose axis stands still');
      expectWithin(left.kingpinInclination, kingpinInclination, CLOSED_DEG, 'kingpin inclination');
    },
  );
});

// The axis is chosen, so where it meets the ground and the plane of the wheel centre is known: closed form.
describe.each(['strut', 'multi-link'] as const)('trail and scrub radius of a chosen axis, %s', (layout) => {
  it('follow from where the axis meets the plane', () => {
    const wanted = { layout, kingpinInclination: 12, caster: 6, offset: [8, -55, 0] as const };
    const { left } = rowAt(stand({ front: steeredAxle(wanted) }), 'front');
    const { point, direction } = kingpinOf(wanted);
    const atGround = (WHEEL_CENTRE[2] - 310 - point[2]) / direction[2];
    expectWithin(left.trailAtWheelCentre, 8, CLOSED_MM, 'trail at the wheel centre');
    expectWithin(left.scrubAtWheelCentre, 55, CLOSED_MM, 'scrub at the wheel centre');
    expectWithin(left.mechanicalTrail, point[0] + atGround * direction[0] - WHEEL_CENTRE[0], CLOSED_MM, 'trail');
    expectWithin(left.scrubRadius, WHEEL_CENTRE[1] - (point[1] + atGround * direction[1]), CLOSED_MM, 'scrub radius');
  });
});
