import { describe, expect, it } from 'vitest';
import type { AxleDocument, SpringDocument, Triple } from '../../geometry/index';
import { rideFrequency } from '../../geometry/axle/loadTransfer';
import { rowAt, stand } from './ask';
import { hingeAxle } from './hingeAxle';
import { expectRelative, expectWithin } from './near';
import { CLOSED_MM, CLOSED_RELATIVE } from './tolerances';

/** Where the arm's pivot stands in the car, and the plane of arm and spring [mm]. */
const PIVOT = [0, 350, 310] as const;
const at = (y: number, z: number): Triple => [PIVOT[0], PIVOT[1] + y, PIVOT[2] + z];

interface SwingArm {
  /** arm's length to the wheel, to the spring, and the spring's upper end from the pivot [mm] */
  readonly b: number;
  readonly c: number;
  readonly upper: readonly [number, number];
  readonly spring: SpringDocument;
}

/** An arm that swings about a line along the car, level at design; the spring stands on what the spring says. */
const swingArm = ({ b, c, upper, spring }: SwingArm, x = 0): AxleDocument => {
  const moved = ([, y, z]: Triple): Triple => [x, y, z];
  return hingeAxle(
    {
      line: { point: moved(at(0, 0)), direction: [1, 0, 0] },
      wheelCentre: moved(at(b, 0)),
      points: { springLower: moved(at(c, 0)), springUpper: moved(at(...upper)) },
    },
    { spring: { upper: 'springUpper', lower: 'springLower', lowerOn: 'knuckle', ...spring } },
  );
};

// D30. kw = ks (c/b)²: Barton & Fieldhouse, Automotive Chassis Engineering, 2018, eq. 3.33, p. 179 (page read in a public flip-book
// copy); numbers computed for the catalogue of check values. Arm pivot at the origin, wheel at b on the arm, spring on the arm at c,
// its other end at (e, h), arm level; travel is the wheel end's upright movement. N, mm, Hz. Tolerance of the case: 1e-9.
describe('D30 wheel rate', () => {
  it.each([
    [50, 0.625, 19.53125],
    [60, 0.9, 48.6],
  ])('plain: spring of %f N/mm at c/b = %f gives %f N/mm', (rate, part, wheelRate) => {
    // next to no force in it, so that the change of the lever adds nothing
    const arm = swingArm({
      b: 400,
      c: 400 * part,
      upper: [400 * part, 350],
      spring: { rate, installed: 350, freeLength: 350 + 1e-9 },
    });
    const { left } = rowAt(stand({ rear: arm }), 'rear');
    expectWithin(left.springRatio, part, 1e-9, 'ratio');
    expectWithin(left.wheelRate, wheelRate, 1e-9, 'wheel rate');
  });

  const inclined: SwingArm = { b: 400, c: 300, upper: [240, 350], spring: { rate: 60, installed: 250, freeLength: 300 } };

  it('inclined: ratio, and the force term in the wheel rate', () => {
    const arm = swingArm(inclined);
    const { left } = rowAt(stand({ rear: arm }), 'rear');
    expectWithin(left.springForce, 3000, 1e-9, 'spring force');
    expectWithin(left.springRatio, 0.739216691, 1e-9, 'ratio');
    expectWithin(left.wheelRate, 33.601233623, 1e-9, 'wheel rate');
    // d ratio/d travel = 0.00027158487926 per mm
    expectWithin(
      (left.wheelRate! - 60 * left.springRatio! * left.springRatio!) / 3000,
      0.00027158487926,
      1e-12,
      'd ratio/d travel',
    );
  });

  it('inclined: the same with the spring on one of the rods, which lies in the plane of the swing', () => {
    // a sixth point carries the spring: the rod runs from the pivot outwards, so the spring's end swings about it as on the arm
    const arm = swingArm({ ...inclined, spring: { ...inclined.spring, lowerOn: 'three' } });
    const level: AxleDocument = { ...arm, points: { ...arm.points, threeKnuckle: [0, PIVOT[1] + 330, PIVOT[2]] } };
    const { left } = rowAt(stand({ rear: level }), 'rear');
    expectWithin(left.springRatio, 0.739216691, 1e-9, 'ratio');
    expectWithin(left.wheelRate, 33.601233623, 1e-9, 'wheel rate');
  });

  it.each([-60, -25, 40, 85])('inclined, at %i mm of travel: force, ratio and rate from the circle', (travel) => {
    const { left } = rowAt(stand({ rear: swingArm(inclined) }), 'rear', { travel });
    // arm at θ with sin θ = z/b; spring length ℓ(θ)
    const theta = Math.asin(travel / 400);
    const [y, z] = [240 - 300 * Math.cos(theta), 350 - 300 * Math.sin(theta)];
    const length = Math.sqrt(y * y + z * z);
    const [dy, dz] = [300 * Math.sin(theta), -300 * Math.cos(theta)];
    const perTurn = (y * dy + z * dz) / length;
    const perTurn2 = (dy * dy + dz * dz + y * 300 * Math.cos(theta) + z * 300 * Math.sin(theta) - perTurn * perTurn) / length;
    const turn = 1 / (400 * Math.cos(theta));
    const turn2 = Math.sin(theta) / (400 * 400 * Math.cos(theta) * Math.cos(theta) * Math.cos(theta));
    const design = Math.sqrt(60 * 60 + 350 * 350);
    const force = 60 * (300 - (250 - (design - length)));
    const ratio = -perTurn * turn;
    const ratioRate = -(perTurn2 * turn * turn + perTurn * turn2);
    expectWithin(left.springTravel, design - length, CLOSED_MM, 'spring travel');
    expectRelative(left.springForce, force, CLOSED_RELATIVE, 'force');
    expectRelative(left.springRatio, ratio, CLOSED_RELATIVE, 'ratio');
    expectRelative(left.wheelRate, 60 * ratio * ratio + force * ratioRate, CLOSED_RELATIVE, 'wheel rate');
  });

  it('no force and no rate where the spring is loose', () => {
    const arm = swingArm({ ...inclined, spring: { rate: 60, installed: 250, freeLength: 255 } });
    const { left } = rowAt(stand({ rear: arm }), 'rear', { travel: -20 });
    expect(left.springForce).toBe(0);
    expect(left.wheelRate).toBe(0);
  });
});

// D30, ride frequency: 48.6 N/mm on 280 kg: 2.096810828 Hz, static deflection 56.518518519 mm = g/(2π f)² with g = 9.81;
// 28.125 N/mm (50 × 0.75²) on 350 kg: 1.42669906 Hz.
describe('D30 ride frequency', () => {
  it.each([
    [60, 0.9, 280, 2.096810828],
    [50, 0.75, 350, 1.42669906],
  ])('spring of %f N/mm at c/b = %f under %f kg a corner: %f Hz', (rate, part, mass, frequency) => {
    const arm = (x: number): AxleDocument =>
      swingArm({ b: 400, c: 400 * part, upper: [400 * part, 350], spring: { rate, installed: 350, freeLength: 350 + 1e-9 } }, x);
    const body = { mass: 4 * mass + 160, frontShare: 0.5, centreOfGravityHeight: 500, unsprungFront: 40, unsprungRear: 40 };
    const { both } = rowAt(stand({ front: arm(0), rear: arm(-2600), body }), 'front');
    expectWithin(both.rideFrequency, frequency, 1e-8);
    expectWithin(rideFrequency(rate * part * part, mass), frequency, 1e-8, 'by the formula');
  });

  it('goes with the static deflection', () => {
    const turn = 2 * Math.PI * rideFrequency(48.6, 280);
    expectWithin((1000 * 9.81) / (turn * turn), 56.518518519, 1e-8);
  });
});

// Without lengths a spring carries its sprung corner where the car stands: force × ratio = weight there.
describe('spring force from the corner weight', () => {
  it('balances the sprung weight at the wheel', () => {
    const arm = (x: number): AxleDocument => swingArm({ b: 400, c: 300, upper: [240, 350], spring: { rate: 60 } }, x);
    const body = {
      mass: 1320,
      frontShare: 0.6,
      leftShare: 0.52,
      centreOfGravityHeight: 500,
      unsprungFront: 40,
      unsprungRear: 35,
    };
    const car = stand({ front: arm(0), rear: arm(-2600), body });
    for (const [side, share] of [
      ['left', 0.52],
      ['right', 0.48],
    ] as const) {
      const { springForce, springRatio } = rowAt(car, 'front')[side];
      expectRelative(springForce! * springRatio!, (1320 * 0.6 * share - 40) * 9.80665, CLOSED_RELATIVE, side);
    }
    const { springForce, springTravel } = rowAt(car, 'front', { travel: 30 }).left;
    expectRelative(springForce, rowAt(car, 'front').left.springForce! + 60 * springTravel!, CLOSED_RELATIVE, 'with travel');
  });
});
