import { describe, expect, it } from 'vitest';
import { toDegrees, toRadians, type AxleDocument } from '../../geometry/index';
import { ackermannPercent } from '../../geometry/axle/ackermann';
import { rowAt, stand } from './ask';
import { hingeAxle } from './hingeAxle';
import { expectRelative, expectWithin } from './near';
import { CLOSED_DEG, CLOSED_RELATIVE, SMALL_DIFFERENCE_RELATIVE } from './tolerances';

// D05. cot(outer) − cot(inner) = track/wheelbase; ISO 8855:2011 clause 7.1.9 defines the Ackermann geometry (read in a public
// preview). Closed form; 2.6/1.5/28 is a textbook exercise. Metres and degrees. Tolerance of the case: 1e-8 deg.
const ROWS = [
  [2.7, 1.536, 20, 16.77988913],
  [2.7, 1.536, 41.24257620978283, 30.326659416],
  [2.6, 1.5, 28, 22.141055623],
  [2.5, 1.2, 30, 24.326259723],
] as const;
describe('D05 Ackermann geometry', () => {
  it.each(ROWS)('wheelbase %f m, track %f m: inner %f deg goes with outer %f deg', (wheelbase, track, inner, outer) => {
    // 1e-8 deg of either angle in per cent of their difference
    const tolerance = (100 * 3e-8) / (inner - outer);
    const percent = (left: number, right: number) => ackermannPercent(toRadians(left), toRadians(right), track, wheelbase);
    expectWithin(percent(inner, outer), 100, tolerance, 'to the left');
    expectWithin(percent(-outer, -inner), 100, tolerance, 'to the right');
    expectWithin(percent(outer, outer), 0, tolerance, 'parallel steering');
  });
});

const [LEVER, ROD, PER_TURN, WHEELBASE, KINGPINS] = [140, 360, 44, 2600, 1400];

/** Upright kingpins through the wheel centres, a steering arm straight behind of `LEVER` turned in by `splay` degrees, a tie rod across. */
function uprightAxle(splay: number): AxleDocument {
  const [x, y] = [-LEVER * Math.cos(toRadians(splay)), 0.5 * KINGPINS - LEVER * Math.sin(toRadians(splay))];
  return {
    layout: 'multi-link',
    points: {
      wheelCentre: [0, 0.5 * KINGPINS, 300],
      lowerFrontBody: [160, 320, 180],
      lowerRearBody: [-160, 320, 180],
      lowerKnuckle: [0, 0.5 * KINGPINS, 180],
      upperFrontBody: [120, 380, 420],
      upperRearBody: [-120, 380, 420],
      upperKnuckle: [0, 0.5 * KINGPINS, 420],
      rackEnd: [x, y - ROD, 300],
      tieRodEnd: [x, y, 300],
    },
    rods: {
      lowerFront: ['lowerFrontBody', 'lowerKnuckle'],
      lowerRear: ['lowerRearBody', 'lowerKnuckle'],
      upperFront: ['upperFrontBody', 'upperKnuckle'],
      upperRear: ['upperRearBody', 'upperKnuckle'],
      tieRod: ['rackEnd', 'tieRodEnd'],
    },
    wheel: { camber: 0, toe: 0, loadedRadius: 300, tyreWidth: 205 },
    steering: { axis: [0, 1, 0], travel: 80, perTurn: PER_TURN, rod: 'tieRod' },
  };
}

const REAR = hingeAxle({ line: { point: [-WHEELBASE, 0, 300], direction: [1, 0, 0] }, wheelCentre: [-WHEELBASE, 700, 300] });

/**
 * Steer angle of the left wheel, + left, in the plane: the end of the arm at (−a cos, −a sin) of splay + δ from the kingpin stands
 * a rod's length from the rack's end. With q the half-angle's tangent left out: A cos δ + B sin δ = C.
 */
function planeSteer(splay: number, rack: number): number {
  const arm = toRadians(splay);
  const [x0, y0] = [-LEVER * Math.cos(arm), -LEVER * Math.sin(arm)];
  const [rx, ry] = [x0, y0 - ROD + rack];
  // |turned arm − rack end|² = ROD², the arm turned by δ to the left
  const a = rx * x0 + ry * y0;
  const b = ry * x0 - rx * y0;
  const c = 0.5 * (rx * rx + ry * ry + LEVER * LEVER - ROD * ROD);
  const [middle, reach] = [Math.atan2(b, a), Math.acos(c / Math.sqrt(a * a + b * b))];
  const roots = [middle + reach, middle - reach].map((angle) => Math.atan2(Math.sin(angle), Math.cos(angle)));
  return toDegrees(Math.abs(roots[0]) < Math.abs(roots[1]) ? roots[0] : roots[1]);
}

// Upright kingpins: the steering is a plane four-bar, and every reading of it has a closed form.
describe.each([0, 12, -9])('steering by upright kingpins, arms splayed by %f deg', (splay) => {
  const car = stand({ front: uprightAxle(splay), rear: REAR });

  it.each([-45, -12, 30, 55])('rack at %i mm', (rack) => {
    const { left, right, both } = rowAt(car, 'front', { rack });
    // the right corner is the mirror image: its wheel turns by minus what the left one does at −rack
    const [steerLeft, steerRight] = [planeSteer(splay, rack), -planeSteer(splay, -rack)];
    expectWithin(left.steerAngle, steerLeft, CLOSED_DEG, 'left');
    expectWithin(right.steerAngle, steerRight, CLOSED_DEG, 'right');
    const [inner, outer] = steerLeft + steerRight > 0 ? [steerLeft, steerRight] : [-steerRight, -steerLeft];
    const cot = (degrees: number): number => 1 / Math.tan(toRadians(degrees));
    const ideal = toDegrees(Math.atan(1 / (cot(outer) - KINGPINS / WHEELBASE)));
    expectRelative(both.ackermann, (100 * (inner - outer)) / (ideal - outer), SMALL_DIFFERENCE_RELATIVE, 'Ackermann');
    expectRelative(both.turningCircle, 2 * (WHEELBASE / Math.sin(toRadians(outer)) + 205 / 2), CLOSED_RELATIVE, 'turning circle');
    expectRelative(
      both.steeringRatio,
      Math.abs((360 * rack) / PER_TURN / (0.5 * (steerLeft + steerRight))),
      CLOSED_RELATIVE,
      'steering ratio',
    );
  });

  it('with the rack centred: the local steering ratio, and no Ackermann or turning circle', () => {
    const { both, why } = rowAt(car, 'front');
    // the tie rod lies across: dδ/drack = −1/(arm's length along the car)
    const slope = 1 / (LEVER * Math.cos(toRadians(splay)));
    expectRelative(both.steeringRatio, (2 * Math.PI) / PER_TURN / slope, CLOSED_RELATIVE);
    for (const key of ['ackermann', 'turningCircle'] as const) {
      expect(both[key]).toBeNull();
      expect(why[`both.${key}`]).toEqual(expect.any(String));
    }
  });
});

describe('turning circle at known angles', () => {
  it('is 2·(L/sin 20° + width/2) when the outer wheel is at 20 deg', () => {
    const car = stand({ front: uprightAxle(0), rear: REAR });
    // the arm turned by 20 deg to the right, rod length kept: to the left wheel, the outer one
    const turn = toRadians(20);
    const dx = -LEVER * Math.cos(turn) + LEVER;
    const rack = LEVER * Math.sin(turn) + ROD - Math.sqrt(ROD * ROD - dx * dx);
    const { left, both } = rowAt(car, 'front', { rack });
    expectWithin(left.steerAngle, -20, CLOSED_DEG);
    expectRelative(both.turningCircle, 2 * (WHEELBASE / Math.sin(turn) + 102.5), CLOSED_RELATIVE);
  });
});
