import { describe, expect, it } from 'vitest';
import { parseCar, type AdjusterDocument, type Vector } from '../../geometry/index';
import { add, distance, subtract } from '../../geometry/core/vector';
import { carOf, placedAt, stand } from './ask';
import { hingeAxle } from './hingeAxle';
import { expectWithin } from './near';
import { CLOSED_MM } from './tolerances';

const axle = hingeAxle({ line: { point: [-2600, 300, 320], direction: [1, 0.2, 0.1] }, wheelCentre: [-2600, 760, 310] });
const POINT = 'oneBody';

/** The left corner of an axle with one adjuster on it at a setting. */
function cornerWith(adjuster: AdjusterDocument, setting: number) {
  const rear = { ...axle, adjusters: { one: adjuster } };
  return placedAt(stand({ rear, setups: { Set: { rear: { both: { one: setting } } } } }), 'rear').left;
}

/** How far the adjuster moves the point from where it is with the adjuster at another setting [mm]. */
const movedFrom = (adjuster: AdjusterDocument, from: number, setting: number): Vector =>
  subtract(cornerWith(adjuster, setting).points[POINT], cornerWith(adjuster, from).points[POINT]);

const cam = { kind: 'eccentric-bolt', moves: POINT, slot: [0, 1, 0], throw: 7, mark: 15 } as const;

// P09. Mazda CX-5 (2025) rear multi-link, body-side adjusting cam bolt table, section Rear Wheel Alignment / Total Toe-In
// Adjustment (manufacturer service data). Scale in graduations from the end position of the cam; 7.0 mm of eccentricity and 15 deg
// a graduation are inferred from the table. Tolerance of the case: 0.005 mm.
describe('P09 cam bolt counted from its end position', () => {
  it.each([
    [1, 0.24],
    [2, 0.94],
    [3, 2.05],
    [4, 3.5],
    [5, 5.19],
    [6, 7.0],
  ])('graduation %i moves the link by %f mm', (scale, movement) => {
    expectWithin(movedFrom(cam, -90, 15 * scale - 90)[1], movement, 0.005);
  });
});

// P10. Mazda MX-5 (ND, 2016) rear multi-link, lower-link adjusting cam bolt table (manufacturer service data). Scale in
// graduations from neutral; eccentricity and graduation inferred as in P09. Tolerance of the case: 0.05 mm.
describe('P10 cam bolt counted from its neutral', () => {
  it.each([
    [1, 1.8],
    [2, 3.5],
    [3, 4.9],
    [4, 6.1],
    [5, 6.8],
    [6, 7.0],
  ])('graduation %i moves the link by %f mm', (scale, movement) => {
    expectWithin(movedFrom(cam, 0, 15 * scale)[1], movement, 0.05);
    expectWithin(movedFrom(cam, 0, -15 * scale)[1], -movement, 0.05, 'the other way');
  });
});

// D09. Circle geometry, witnessed by P09 and P10. Eccentricity 7 mm. Tolerance of the case: 1e-8 mm.
describe('D09 cam law', () => {
  const rows = [
    [0, 0, 0],
    [15, 1.811733316, 0.238519216],
    [30, 3.5, 0.937822174],
    [45, 4.949747468, 2.050252532],
    [60, 6.062177826, 3.5],
    [75, 6.761480784, 5.188266684],
    [90, 7, 7],
  ] as const;
  const bushing = { kind: 'offset-bushing', moves: POINT, axis: [1, 0, 0], twelve: [0, 0, 1], offset: 7, index: 15 } as const;

  it.each(rows)('%i deg: along the slot %f mm, from the dead point %f mm', (t, along, fromDead) => {
    const moved = movedFrom(cam, 0, t);
    expectWithin(moved[1], along, CLOSED_MM, 'along the slot');
    expectWithin(distance(moved, [0, moved[1], 0]), 0, CLOSED_MM, 'across the slot');
    expectWithin(movedFrom(cam, -90, t - 90)[1], fromDead, CLOSED_MM, 'from the dead point');
  });

  it.each(rows)('%i deg of an offset bushing, which nothing guides: %f mm across and %f mm down', (t, across, down) => {
    const moved = movedFrom(bushing, 0, t);
    expectWithin(distance(moved, [0, -across, -down]), 0, CLOSED_MM);
  });

  it('an offset bushing set at no clock is a concentric one', () => {
    const rear = { ...axle, adjusters: { one: bushing } };
    const none = placedAt(stand({ rear }), 'rear').left.points[POINT];
    const twelve = cornerWith(bushing, 0).points[POINT];
    expectWithin(distance(twelve, add(none, [0, 0, 7])), 0, CLOSED_MM);
  });
});

// D12. ISO 261/262 metric pitches, from memory. Two ends of opposite hand: twice the pitch a turn. Tolerance of the case: 1e-6 mm.
describe('D12 turnbuckle', () => {
  const rodLength = (adjuster: AdjusterDocument, turns: number): number => {
    const { inner, outer } = cornerWith(adjuster, turns).rods.find(({ name }) => name === 'five')!;
    return distance(inner, outer);
  };
  const turnbuckle = (pitch: number, ends: 1 | 2, perTurn = ends * pitch): AdjusterDocument => ({
    kind: 'turnbuckle',
    rod: 'five',
    perTurn,
    range: [-4, 4],
    step: 0.125,
    flats: 6,
    thread: { diameter: 14, pitch, engaged: 20, ends },
  });

  it.each([
    [1.0, 2.0, 1.0, 0.333333],
    [1.25, 2.5, 1.25, 0.416667],
    [1.5, 3.0, 1.5, 0.5],
    [1.75, 3.5, 1.75, 0.583333],
    [2.0, 4.0, 2.0, 0.666667],
  ])('pitch %f mm: %f mm a turn of the body, %f mm of a single end, %f mm a flat', (pitch, body, single, flat) => {
    const change = (ends: 1 | 2, turns: number): number =>
      rodLength(turnbuckle(pitch, ends), turns) - rodLength(turnbuckle(pitch, ends), 0);
    expectWithin(change(2, 1), body, 1e-6, 'body');
    expectWithin(change(2, -1), -body, 1e-6, 'body, back');
    expectWithin(change(1, 1), single, 1e-6, 'single end');
    expectWithin(change(2, 1 / 6), flat, 1e-6, 'flat of the hexagon');
  });

  it('is refused when two ends of opposite hand are said to move by another amount', () => {
    const rear = { ...axle, adjusters: { one: turnbuckle(1.5, 2, 1.5) } };
    const parsed = parseCar(JSON.stringify(carOf({ rear })));
    expect(parsed.ok ? [] : parsed.failure.faults.map(({ code, path }) => [code, path])).toEqual([
      ['thread-mismatch', 'rear.adjusters.one.perTurn'],
    ]);
  });
});
