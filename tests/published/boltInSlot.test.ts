import { describe, it } from 'vitest';
import type { AxleDocument } from '../../geometry/index';
import { rowAt, stand } from './ask';
import { expectWithin } from './near';

// P12. Lincoln Navigator (2004) rear camber adjustment chart, upper-arm-to-knuckle bolt in its slot (manufacturer service data).
// Outboard bolt shift is positive camber, symmetric for inboard. The lever of 260 mm between the joints of the knuckle is inferred:
// atan(shift/L) gives every row for any L from 258.7 to 261.8 mm. Tolerance of the case: 0.05 deg.
// No coordinates are published: the corner here is invented around that lever, with level arms so that the joints move upright.
const LEVER = 260;
const axle: AxleDocument = {
  layout: 'multi-link',
  points: {
    wheelCentre: [0, 820, 400],
    lowerFrontBody: [200, 320, 270],
    lowerRearBody: [-200, 320, 270],
    lowerKnuckle: [0, 760, 270],
    upperFrontBody: [160, 400, 270 + LEVER],
    upperRearBody: [-160, 400, 270 + LEVER],
    upperKnuckle: [0, 760, 270 + LEVER],
    toeBody: [-150, 360, 400],
    toeKnuckle: [-150, 760, 400],
  },
  rods: {
    lowerFront: ['lowerFrontBody', 'lowerKnuckle'],
    lowerRear: ['lowerRearBody', 'lowerKnuckle'],
    upperFront: ['upperFrontBody', 'upperKnuckle'],
    upperRear: ['upperRearBody', 'upperKnuckle'],
    toe: ['toeBody', 'toeKnuckle'],
  },
  wheel: { camber: 0, toe: 0, loadedRadius: 400 },
  adjusters: { slot: { kind: 'slide', moves: 'upperKnuckle', along: [0, 1, 0], seat: 'arm', range: [-10, 10], step: 1 } },
};
const camberAt = (slot: number): number =>
  rowAt(stand({ rear: axle, setups: { Shifted: { rear: { both: { slot } } } } }), 'rear').left.camber;

describe('P12 camber per mm of bolt shift', () => {
  it.each([
    [1, 0.2],
    [2, 0.4],
    [3, 0.7],
    [4, 0.9],
    [5, 1.1],
    [6, 1.3],
    [7, 1.5],
    [8, 1.8],
    [9, 2.0],
    [10, 2.2],
  ])('%i mm outboard: %f deg', (shift, camber) => {
    expectWithin(camberAt(shift), camber, 0.05, 'outboard');
    expectWithin(camberAt(-shift), -camber, 0.05, 'inboard');
  });
});
