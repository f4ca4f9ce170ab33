import { describe, expect, it } from 'vitest';
import { toDegrees, toRadians, type AxleDocument, type SetupAxleDocument, type Triple, type Vector } from '../../geometry/index';
import { distance } from '../../geometry/core/vector';
import { placedAt, rowAt, stand } from './ask';
import { hingeAxle } from './hingeAxle';
import { expectRelative, expectWithin } from './near';
import { CLOSED_DEG, CLOSED_MM, CLOSED_RELATIVE, DIFFERENCE_RELATIVE } from './tolerances';
import { bisect } from './turn';

// A wheel on a trailing hinge across the car, level with it, and a bar whose arm is the image of the line from the hinge to the
// link's end: arm, link, knuckle and body are a parallelogram, so the bar turns with the knuckle, sin θ = travel/reach.
const [REACH, ARM, HALF] = [420, 200, 740];
const HINGE = [-2180, 600, 330] as const;
const PIVOT: Triple = [HINGE[0] + 10, 480, HINGE[2] - 120];
const RATE = 21;

/** Points of the arm and of the link's end, from their centres, turned by θ so that the wheel rises. */
const turnedArm = (centre: readonly [number, number, number], length: number, theta: number): Vector => [
  centre[0] - length * Math.cos(theta),
  centre[1],
  centre[2] + length * Math.sin(theta),
];

const LINK_END: Triple = [HINGE[0] - ARM, 560, HINGE[2]];
const axle: AxleDocument = hingeAxle(
  { line: { point: HINGE, direction: [0, 1, 0] }, wheelCentre: [HINGE[0] - REACH, HALF, HINGE[2]], loadedRadius: 310 },
  {
    antiRollBar: {
      pivot: PIVOT,
      armEnd: [PIVOT[0] - ARM, 490, PIVOT[2]],
      linkEnd: LINK_END,
      linkOn: 'knuckle',
      rate: RATE,
      holes: [
        { name: 'stiff', armEnd: [PIVOT[0] - 0.8 * ARM, 490, PIVOT[2]] },
        { name: 'own', armEnd: [PIVOT[0] - 0.8 * ARM, 490, PIVOT[2]], rate: 44 },
      ],
    },
    adjusters: { link: { kind: 'turnbuckle', rod: 'barLink', perTurn: 2, range: [-6, 6], step: 0.5 } },
  },
);
const carWith = (rear: SetupAxleDocument = {}) => stand({ rear: axle, setups: { One: { rear } } });
const turnOf = (travel: number): number => Math.asin(travel / REACH);

describe('anti-roll bar as a parallelogram', () => {
  it.each([
    [0, 0],
    [40, -25],
    [-60, 70],
    [55, 55],
  ])('travel %i left, %i right: twist, ratio and places', (left, right) => {
    const position = { travel: { left, right } };
    const row = rowAt(carWith(), 'rear', position);
    // + on the wheel that is the more bumped
    const twist = toDegrees(turnOf(left) - turnOf(right));
    expectWithin(row.left.barTwist, twist, CLOSED_DEG, 'twist, left');
    expectWithin(row.right.barTwist, -twist, CLOSED_DEG, 'twist, right');
    expectRelative(row.left.barRatio, ARM / (REACH * Math.cos(turnOf(left))), CLOSED_RELATIVE, 'ratio, left');
    expectRelative(row.right.barRatio, ARM / (REACH * Math.cos(turnOf(right))), CLOSED_RELATIVE, 'ratio, right');
    const { bar } = placedAt(carWith(), 'rear', position).left;
    expectWithin(distance(bar!.armEnd, turnedArm([PIVOT[0], 490, PIVOT[2]], ARM, turnOf(left))), 0, CLOSED_MM, 'end of the arm');
    expectWithin(
      distance(bar!.linkEnd, turnedArm([HINGE[0], 560, HINGE[2]], ARM, turnOf(left))),
      0,
      CLOSED_MM,
      'end of the link',
    );
  });

  it('holds its twist where the two wheels bump alike, and says nothing where there is no bar', () => {
    expect(rowAt(carWith(), 'rear', { travel: 33 }).left.barTwist).toBe(0);
    const { antiRollBar: _bar, adjusters: _link, ...bare } = axle;
    const { left, both, why } = rowAt(stand({ rear: bare }), 'rear');
    expect([left.barTwist, left.barRatio, both.barRollStiffness]).toEqual([null, null, null]);
    expect(why['left.barTwist']).toEqual(expect.any(String));
  });

  it('is twisted, standing, by a link turned on one side only', () => {
    const car = carWith({ left: { link: 3 } });
    const length = distance([PIVOT[0] - ARM, 490, PIVOT[2]], LINK_END) + 6;
    // a longer link pushes the arm's end down while the wheel is still
    const miss = (theta: number): number => distance(turnedArm([PIVOT[0], 490, PIVOT[2]], ARM, theta), LINK_END) - length;
    const theta = bisect(miss, -0.3, 0.3);
    expectWithin(rowAt(car, 'rear').left.barTwist, toDegrees(theta), CLOSED_DEG, 'left');
    expectWithin(rowAt(car, 'rear').right.barTwist, -toDegrees(theta), CLOSED_DEG, 'right');
    expect(theta).toBeLessThan(0);
  });
});

// Wheels that go by ±y·φ move the arm ends against each other by s = 2·ratio·y·φ; the bar holds with rate·s at each end, so its
// energy is ½·rate·s² and its roll stiffness rate·(2·ratio·y)².
describe('roll stiffness of the bar', () => {
  const stiffness = (rate: number, ratio: number): number => toRadians((rate * 2 * ratio * HALF * 2 * ratio * HALF) / 1000);

  it('goes with rate and ratio', () => {
    const { both } = rowAt(carWith(), 'rear');
    expectRelative(both.barRollStiffness, stiffness(RATE, ARM / REACH), CLOSED_RELATIVE);
  });

  it('is gone with the bar unhooked, and takes the rate of the setup', () => {
    expect(rowAt(carWith({ barRate: 0 }), 'rear').both.barRollStiffness).toBe(0);
    expectRelative(rowAt(carWith({ barRate: 30 }), 'rear').both.barRollStiffness, stiffness(30, ARM / REACH), CLOSED_RELATIVE);
  });

  it.each([
    ['stiff', RATE / (0.8 * 0.8)],
    ['own', 44],
  ])('hole "%s" at 0.8 of the arm: rate by (arm/armᵢ)², or its own', (barHole, rate) => {
    const { left, both } = rowAt(carWith({ barHole }), 'rear');
    expectRelative(both.barRollStiffness, stiffness(rate, left.barRatio!), CLOSED_RELATIVE);
  });

  it('is the slope of the energy that the bar takes up in opposed bump', () => {
    const car = carWith();
    const energy = (travel: number): number => {
      const { left } = rowAt(car, 'rear', { travel: { left: travel, right: -travel } });
      const apart = ARM * toRadians(left.barTwist!);
      return 0.5 * RATE * apart * apart;
    };
    // ½ K φ² with φ = travel/half track, in N·mm
    const travel = 0.5;
    const bySlope = (2 * energy(travel) * HALF * HALF) / (travel * travel) / 1000;
    expectRelative(rowAt(car, 'rear').both.barRollStiffness, toRadians(bySlope), DIFFERENCE_RELATIVE);
  });
});
