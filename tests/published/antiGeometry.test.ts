import { describe, expect, it } from 'vitest';
import type { BodyDocument } from '../../geometry/index';
import { rowAt, stand } from './ask';
import { hingeAxle } from './hingeAxle';
import { expectRelative, expectWithin } from './near';
import { CENTRE_MM, CLOSED_RELATIVE, CLOSED_SLOPE } from './tolerances';

const [WHEELBASE, HEIGHT] = [2700, 550];
const RADIUS = 300;
const body: BodyDocument = { mass: 1200, frontShare: 0.55, centreOfGravityHeight: HEIGHT, brakeFrontShare: 0.65 };

// Hinges across the car stand in for the side-view instant centres: 3.0 m behind and 0.20 m above the front contact point, 2.0 m
// ahead and 0.30 m above the rear one.
const front = hingeAxle({
  line: { point: [-3000, 600, 200], direction: [0, 1, 0] },
  wheelCentre: [0, 750, RADIUS],
  loadedRadius: RADIUS,
});
const rear = hingeAxle({
  line: { point: [-WHEELBASE + 2000, 600, 300], direction: [0, 1, 0] },
  wheelCentre: [-WHEELBASE, 750, RADIUS],
  loadedRadius: RADIUS,
});
const carWith = (more: BodyDocument) => stand({ front, rear, body: { ...body, ...more } });

// D06. Textbook relations (Gillespie; Milliken & Milliken; Dixon), from memory; values computed for the catalogue of check values.
// anti-dive = 100 · share · (dx/dz) · L/h; anti-lift of the rear = 100 · (1 − share) · (−dx/dz) · L/h. Metres and per cent.
// Tolerance of the case: 1e-9; the figures are printed to nine decimals.
describe('D06 anti-dive and anti-lift with outboard brakes', () => {
  const car = carWith({});
  const [f, r] = [rowAt(car, 'front'), rowAt(car, 'rear')];

  it('front', () => {
    expectWithin(f.left.longitudinalSlopeContact, 0.066666666667, 1e-9, 'dx/dz');
    expectWithin(f.both.antiDive, 21.272727273, 1e-9, 'anti-dive');
    expectWithin(f.left.sideViewInstantCentre![0], -3000, CENTRE_MM, 'instant centre x');
    expectWithin(f.left.sideViewInstantCentre![1], 200, CENTRE_MM, 'instant centre z');
    // behind the contact: minus
    expectRelative(f.left.sideViewSwingArmLength, -Math.sqrt(3000 * 3000 + 200 * 200), CLOSED_RELATIVE, 'side-view swing arm');
    expectWithin(f.left.jackingPerLongitudinal, -1 / 15, CLOSED_SLOPE, 'jacking');
  });

  it('rear', () => {
    expectWithin(r.left.longitudinalSlopeContact, -0.15, 1e-9, 'dx/dz');
    expectWithin(r.both.antiLiftBraking, 25.772727273, 1e-9, 'anti-lift');
    expectRelative(r.left.sideViewSwingArmLength, Math.sqrt(2000 * 2000 + 300 * 300), CLOSED_RELATIVE, 'side-view swing arm');
  });

  it('belongs to one end each, and says so at the other', () => {
    expect(f.both.antiLiftBraking).toBeNull();
    expect(f.why['both.antiLiftBraking']).toEqual(expect.any(String));
    expect(r.both.antiDive).toBeNull();
    expect(r.why['both.antiDive']).toEqual(expect.any(String));
  });
});

// The same relations for drive through shafts, closed form: the force acts at the wheel centre, whose slope is that of the line from
// it to the instant centre: (200 − 300)/3000 in front, −(300 − 300)/2000 behind; a hinge 480 mm up behind gives −180/2000.
describe('anti-lift and anti-squat under drive', () => {
  const high = hingeAxle({
    line: { point: [-WHEELBASE + 2000, 600, 480], direction: [0, 1, 0] },
    wheelCentre: [-WHEELBASE, 750, RADIUS],
    loadedRadius: RADIUS,
  });

  it.each([
    ['front', { drivenAxle: 'front' }, 1],
    ['both', { drivenAxle: 'both', driveFrontShare: 0.4 }, 0.4],
  ] as const)('driven axle %s: the front lifts against the drive', (_name, drive, share) => {
    const { left, both } = rowAt(carWith(drive), 'front');
    expectWithin(left.longitudinalSlopeWheelCentre, -100 / 3000, CLOSED_SLOPE, 'dx/dz of the wheel centre');
    expectRelative(both.antiLiftDrive, (100 * share * -100 * WHEELBASE) / (3000 * HEIGHT), CLOSED_RELATIVE);
  });

  it.each([
    ['rear', { drivenAxle: 'rear' }, 1],
    ['both', { drivenAxle: 'both', driveFrontShare: 0.4 }, 0.6],
  ] as const)('driven axle %s: anti-squat', (_name, drive, share) => {
    expectWithin(rowAt(carWith(drive), 'rear').both.antiSquat, 0, CLOSED_SLOPE, 'instant centre level with the wheel centre');
    const { both } = rowAt(stand({ front, rear: high, body: { ...body, ...drive } }), 'rear');
    expectRelative(both.antiSquat, (100 * share * 180 * WHEELBASE) / (2000 * HEIGHT), CLOSED_RELATIVE);
  });

  it('has no value on an axle that is not driven', () => {
    const { both, why } = rowAt(carWith({ drivenAxle: 'front' }), 'rear');
    expect(both.antiSquat).toBeNull();
    expect(why['both.antiSquat']).toEqual(expect.any(String));
  });
});
