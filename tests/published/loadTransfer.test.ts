import { describe, it } from 'vitest';
import { toDegrees, toRadians, type AxleDocument, type BodyDocument } from '../../geometry/index';
import { loadTransfers, rollGradient } from '../../geometry/axle/loadTransfer';
import { rowAt, stand, wholeCarAt } from './ask';
import { hingeAxle } from './hingeAxle';
import { expectRelative, expectWithin } from './near';
import { CENTRE_MM, CLOSED_DEG, LIGHT_SPRING_RELATIVE } from './tolerances';

// P33. D. C. Barton, J. D. Fieldhouse, Automotive Chassis Engineering, Springer 2018, pp. 173-174, worked example; page 174 read in
// a public flip-book copy, page 173 not seen. 0.6 g with g = 9.81. N, m, kg there. Tolerances of the case: 0.6 N, gradient 0.5 %.
// The elastic parts (printed 1556 and 671 N) need the stiffness of each axle, which stands on the page not seen.
describe('P33 load transfer and roll gradient of a worked example', () => {
  const [G, LATERAL] = [9.81, 0.6];
  const gradient = rollGradient(1280, 365, 28650, G)!;
  it.each([
    ['front', 0.54, 70, 140, 280, 195, 195.06, 158, 158.035],
    ['rear', 0.46, 320, 180, 300, 760, 759.6, 218, 217.701],
  ] as const)(
    '%s: through the roll centre and of the wheels',
    (_name, share, rollCentreHeight, unsprung, unsprungHeight, printed, own, printedUnsprung, ownUnsprung) => {
      const axle = { sprung: 1280 * share, unsprung, unsprungHeight, rollCentreHeight, track: 1460, stiffness: 14325 };
      const { geometric, unsprung: wheels } = loadTransfers(axle, gradient, G);
      expectWithin(LATERAL * geometric, printed, 0.6, 'geometric, as printed');
      expectWithin(LATERAL * geometric, own, 0.01, 'geometric');
      expectWithin(LATERAL * wheels, printedUnsprung, 0.6, 'unsprung, as printed');
      expectWithin(LATERAL * wheels, ownUnsprung, 0.001, 'unsprung');
    },
  );

  it('roll gradient 0.0194 rad/(m/s²), 10.9 deg/g', () => {
    expectRelative(gradient / G, 0.0194, 0.005, 'as printed');
    expectWithin(gradient / G, 0.019412661, 1e-9);
    expectRelative(toDegrees(gradient), 10.9, 0.005, 'as printed');
    expectWithin(toDegrees(gradient), 10.911305, 1e-6);
  });
});

const AXLES = {
  front: { share: 1400 / 2500, rollCentreHeight: 50, track: 1500, rate: 30 },
  rear: { share: 1100 / 2500, rollCentreHeight: 50, track: 1460, rate: 35 },
} as const;

// D27. Textbook formulas (only k·t²/2 read, the rest from memory), computed for the catalogue of check values. Springs only, roll
// centres at the axles, g = 9.81. N, mm, deg. Tolerance of the case: closed form 1e-6.
describe('D27 roll angle and load transfer of a plain car', () => {
  const G = 9.81;
  const stiffness = (name: 'front' | 'rear'): number => (AXLES[name].rate * AXLES[name].track * AXLES[name].track) / 2 / 1000;
  const gradient = rollGradient(1000, 400, stiffness('front') + stiffness('rear'), G)!;

  it('stiffness and roll gradient', () => {
    expectWithin(stiffness('front'), 33750, 1e-6);
    expectWithin(stiffness('rear'), 37303, 1e-6);
    expectWithin(toDegrees(gradient), 3.34920286, 1e-6);
    expectWithin(0.1 * toDegrees(gradient), 0.334920286, 1e-6);
  });

  it.each([
    ['front', 131.5228888, 18.312],
    ['rear', 149.351547, 14.7821918],
  ] as const)('transfer of the %s axle at 0.1 g', (name, elastic, geometric) => {
    const { share, rollCentreHeight, track } = AXLES[name];
    const own = loadTransfers(
      { sprung: 1000 * share, unsprung: 0, unsprungHeight: 0, rollCentreHeight, track, stiffness: stiffness(name) },
      gradient,
      G,
    );
    expectWithin(0.1 * own.elastic, elastic, 1e-6, 'elastic');
    expectWithin(0.1 * own.geometric, geometric, 1e-6, 'geometric');
  });
});

const STANDARD_GRAVITY = 9.80665;
const UNSPRUNG = 40;
const WHEEL_HEIGHT = 300;

/** Wheels on hinges along the car whose height puts the roll centre where the case has it; an upright spring at each wheel centre. */
function rollAxle(name: 'front' | 'rear', x: number, rollCentreHeight: number): AxleDocument {
  const { track, rate } = AXLES[name];
  const half = track / 2;
  // the line from contact to instant centre crosses the middle at the roll centre: twice as high at twice the distance
  const point = [x, -half, 2 * rollCentreHeight] as const;
  return hingeAxle(
    {
      line: { point, direction: [1, 0, 0] },
      wheelCentre: [x, half, WHEEL_HEIGHT],
      points: { springLower: [x, half, WHEEL_HEIGHT], springUpper: [x, half, WHEEL_HEIGHT + 400] },
    },
    // next to no force in it at design, so that only the rate counts
    { spring: { upper: 'springUpper', lower: 'springLower', lowerOn: 'knuckle', rate, installed: 300, freeLength: 300 + 1e-7 } },
  );
}

// The plain car of D27 built as a car: the same formulas with standard gravity and wheels of 40 kg, every reading of the program.
describe.each([
  ['level', 50, 50],
  ['rising to the rear', 30, 110],
])('a plain car built from hinges, roll axis %s', (_name, frontHeight, rearHeight) => {
  const [WHEELBASE, SPRUNG, SPRUNG_HEIGHT] = [2500, 1000, 450];
  const mass = SPRUNG + 4 * UNSPRUNG;
  const body: BodyDocument = {
    mass,
    frontShare: (SPRUNG * AXLES.front.share + 2 * UNSPRUNG) / mass,
    centreOfGravityHeight: (SPRUNG * SPRUNG_HEIGHT + 4 * UNSPRUNG * WHEEL_HEIGHT) / mass,
    unsprungFront: UNSPRUNG,
    unsprungRear: UNSPRUNG,
  };
  const car = stand({ front: rollAxle('front', 0, frontHeight), rear: rollAxle('rear', -WHEELBASE, rearHeight), body });
  const rows = { front: rowAt(car, 'front'), rear: rowAt(car, 'rear') };
  const whole = wholeCarAt(car);
  const heights = { front: frontHeight, rear: rearHeight };
  const slope = (rearHeight - frontHeight) / WHEELBASE;
  const axisUnder = (behindFront: number): number => frontHeight + slope * behindFront;
  const foreshortened = 1 / Math.sqrt(1 + slope * slope);
  const [kFront, kRear] = [33750, 37303];
  const lever = (SPRUNG_HEIGHT - axisUnder(WHEELBASE * AXLES.rear.share)) * foreshortened;
  const overturning = (SPRUNG * STANDARD_GRAVITY * lever) / 1000;
  const gradient = overturning / (kFront + kRear - overturning);

  it('has the roll centres and stiffnesses of the case', () => {
    for (const name of ['front', 'rear'] as const) expectWithin(rows[name].both.rollCentreHeight, heights[name], CENTRE_MM, name);
    expectRelative(rows.front.both.springRollStiffness, toRadians(kFront), LIGHT_SPRING_RELATIVE, 'front');
    expectRelative(rows.rear.both.springRollStiffness, toRadians(kRear), LIGHT_SPRING_RELATIVE, 'rear');
    expectRelative(rows.rear.both.rollStiffness, toRadians(kRear), LIGHT_SPRING_RELATIVE, 'rear, in all');
  });

  it('has its roll gradient and roll axis', () => {
    expectRelative(whole.rollGradient, toDegrees(gradient), LIGHT_SPRING_RELATIVE, 'roll gradient');
    expectWithin(whole.rollAxisInclination, toDegrees(Math.atan(slope)), CLOSED_DEG, 'inclination');
    const behindFront = WHEELBASE * (1 - body.frontShare!);
    expectWithin(
      whole.rollAxisToCentreOfGravity,
      (body.centreOfGravityHeight! - axisUnder(behindFront)) * foreshortened,
      CENTRE_MM,
      'lever',
    );
  });

  it.each([
    ['front', kFront],
    ['rear', kRear],
  ] as const)('has its load transfers, %s', (name, stiffness) => {
    const { share, track } = AXLES[name];
    const { both } = rows[name];
    expectRelative(
      both.loadTransferGeometric,
      (SPRUNG * share * STANDARD_GRAVITY * heights[name]) / track,
      LIGHT_SPRING_RELATIVE,
      'geometric',
    );
    expectRelative(both.loadTransferElastic, (1000 * stiffness * gradient) / track, LIGHT_SPRING_RELATIVE, 'elastic');
    expectRelative(
      both.loadTransferUnsprung,
      (2 * UNSPRUNG * STANDARD_GRAVITY * WHEEL_HEIGHT) / track,
      LIGHT_SPRING_RELATIVE,
      'unsprung',
    );
  });

  it('moves as much load as the overturning moment asks for', () => {
    // per g: weight × height over the ground, and the weight that leans out. The lever is square to an inclined axis, the
    // moment is about the ground's x: they differ by the square of its slope.
    const moved = (['front', 'rear'] as const).reduce((sum, name) => {
      const { loadTransferElastic, loadTransferGeometric, loadTransferUnsprung, track } = rows[name].both;
      return sum + (loadTransferElastic! + loadTransferGeometric! + loadTransferUnsprung!) * track;
    }, 0);
    const leaning = 1000 * overturning * gradient;
    expectRelative(moved, mass * STANDARD_GRAVITY * body.centreOfGravityHeight! + leaning, LIGHT_SPRING_RELATIVE + slope * slope);
  });
});
