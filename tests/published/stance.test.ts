import { describe, it } from 'vitest';
import { toDegrees, toRadians, type AxleDocument, type SetupDocument, type Vector } from '../../geometry/index';
import { dot, subtract } from '../../geometry/core/vector';
import { rowAt, stand, wholeCarAt } from './ask';
import { hingeAxle } from './hingeAxle';
import { expectWithin } from './near';
import { CENTRE_MM, CLOSED_DEG, CLOSED_MM } from './tolerances';

// Front: wheels on hinges along the car, level with the wheel centres, so that they swing in the cross plane only. Rear: hinges across
// the car, so that they swing in the lengthwise plane only. Everything about where wheels and body stand then has a closed form.
const [RADIUS, HALF, INNER, WHEELBASE, REACH] = [310, 745, 330, 2650, 460];
const ARM = HALF - INNER;
const SILL: Vector = [-420, 640, 185];
const front: AxleDocument = hingeAxle(
  { line: { point: [0, INNER, RADIUS], direction: [1, 0, 0] }, wheelCentre: [0, HALF, RADIUS], loadedRadius: RADIUS },
  { heightAt: { point: SILL, name: 'sill' } },
);
const rear: AxleDocument = hingeAxle({
  line: { point: [-WHEELBASE + REACH, 600, RADIUS], direction: [0, 1, 0] },
  wheelCentre: [-WHEELBASE, HALF, RADIUS],
  loadedRadius: RADIUS,
});
const carWith = (setup: SetupDocument = {}) => stand({ front, rear, setups: { One: setup } });

describe('half track, track and swing arm of a wheel that swings in the cross plane', () => {
  it.each([-60, -15, 0, 35, 70])('at %i mm of travel', (travel) => {
    const { left, right, both } = rowAt(carWith(), 'front', { travel });
    const theta = Math.asin(travel / ARM);
    const wheel: readonly [number, number] = [INNER + ARM * Math.cos(theta), RADIUS + travel];
    // the top leans in by θ, so the contact centre moves out by r·sin θ
    const contact = [wheel[0] + RADIUS * Math.sin(theta), wheel[1] - RADIUS * Math.cos(theta)];
    expectWithin(left.camber, -toDegrees(theta), CLOSED_DEG, 'camber');
    expectWithin(left.contactCentre[1], contact[0], CLOSED_MM, 'contact y');
    expectWithin(left.contactCentre[2], contact[1], CLOSED_MM, 'contact z');
    expectWithin(left.halfTrack, contact[0], CLOSED_MM, 'half track, left');
    expectWithin(right.halfTrack, contact[0], CLOSED_MM, 'half track, right');
    expectWithin(both.track, 2 * contact[0], CLOSED_MM, 'track');
    expectWithin(both.trackChange, 2 * (contact[0] - HALF), CLOSED_MM, 'track change');
    const [dy, dz] = [contact[0] - INNER, contact[1] - RADIUS];
    expectWithin(left.swingArmLength, Math.sqrt(dy * dy + dz * dz), CENTRE_MM, 'swing arm, inboard');
    expectWithin(left.wheelbaseChange, 0, CLOSED_MM, 'no wheelbase change');
  });

  it('counts an instant centre outboard of the contact as minus', () => {
    const outside = hingeAxle({
      line: { point: [0, 1900, 500], direction: [1, 0, 0] },
      wheelCentre: [0, HALF, RADIUS],
      loadedRadius: RADIUS,
    });
    const { left } = rowAt(stand({ front: outside }), 'front');
    expectWithin(left.swingArmLength, -Math.sqrt((1900 - HALF) * (1900 - HALF) + 500 * 500), CENTRE_MM);
  });
});

describe('wheelbase of a wheel that swings in the lengthwise plane', () => {
  it.each([
    [-70, 40],
    [25, -10],
    [60, 60],
  ])('travel %i left, %i right', (left, right) => {
    const car = carWith();
    const row = rowAt(car, 'rear', { travel: { left, right } });
    // upright wheels: the contact centre stays below the wheel centre, which goes forward by reach·(1 − cos θ)
    const forward = (travel: number): number => REACH - Math.sqrt(REACH * REACH - travel * travel);
    // a rear wheel that goes forward makes the wheelbase shorter
    expectWithin(row.left.wheelbaseChange, -forward(left), CLOSED_MM, 'left');
    expectWithin(row.right.wheelbaseChange, -forward(right), CLOSED_MM, 'right');
    const whole = wholeCarAt(car, { travel: { left, right } });
    expectWithin(whole.wheelbaseLeft, WHEELBASE - forward(left), CLOSED_MM, 'wheelbase, left');
    expectWithin(whole.wheelbaseRight, WHEELBASE - forward(right), CLOSED_MM, 'wheelbase, right');
  });

  it('at the front forward is longer', () => {
    const leading = hingeAxle({
      line: { point: [-REACH, 600, RADIUS], direction: [0, 1, 0] },
      wheelCentre: [0, HALF, RADIUS],
      loadedRadius: RADIUS,
    });
    const { left } = rowAt(stand({ front: leading }), 'front', { travel: 50 });
    expectWithin(left.wheelbaseChange, Math.sqrt(REACH * REACH - 2500) - REACH, CLOSED_MM);
  });
});

describe('body height and rake', () => {
  /** Height of a body point over the ground that ride heights and roll lay under the car. */
  function heightOf(point: Vector, [rideFront, rideRear]: readonly [number, number], heave: number, roll: number): number {
    const pitch = Math.atan((rideRear - rideFront) / WHEELBASE);
    const n: Vector = [-Math.sin(pitch), Math.cos(pitch) * Math.sin(roll), Math.cos(pitch) * Math.cos(roll)];
    return dot(subtract(point, [0, 0, heave - rideFront]), n);
  }
  const mirrored: Vector = [SILL[0], -SILL[1], SILL[2]];

  it('stands at its design height without a ride height', () => {
    expectWithin(rowAt(carWith(), 'front').left.bodyHeight, SILL[2], CLOSED_MM);
    expectWithin(wholeCarAt(carWith()).rake, 0, CLOSED_DEG);
  });

  it.each([
    [-12, -12],
    [-20, 6],
    [15, -10],
  ])('ride heights %i front, %i rear', (rideFront, rideRear) => {
    const car = carWith({ front: { rideHeight: rideFront }, rear: { rideHeight: rideRear } });
    const rides = [rideFront, rideRear] as const;
    const { left, right } = rowAt(car, 'front');
    expectWithin(left.bodyHeight, heightOf(SILL, rides, 0, 0), CLOSED_MM, 'left');
    expectWithin(right.bodyHeight, heightOf(mirrored, rides, 0, 0), CLOSED_MM, 'right');
    expectWithin(wholeCarAt(car).rake, toDegrees(Math.atan((rideRear - rideFront) / WHEELBASE)), CLOSED_DEG, 'rake, + nose down');
  });

  it.each([
    [2, 0],
    [-1.5, 10],
  ])('%f deg of roll, body down by %i mm', (degrees, heave) => {
    const car = carWith({ front: { rideHeight: -8 }, rear: { rideHeight: -14 } });
    const { left, right } = rowAt(car, 'front', { roll: toRadians(degrees), travel: heave });
    expectWithin(left.bodyHeight, heightOf(SILL, [-8, -14], heave, toRadians(degrees)), CLOSED_MM, 'left');
    expectWithin(right.bodyHeight, heightOf(mirrored, [-8, -14], heave, toRadians(degrees)), CLOSED_MM, 'right');
  });
});
