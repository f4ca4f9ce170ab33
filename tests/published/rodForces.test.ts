import { describe, it } from 'vitest';
import { cross, dot, scale, subtract, unit, type Vector } from '../../geometry/core/vector';
import { solveBalance, wrenchAt, type Wrench } from '../../geometry/fitup/loads/balance';
import { areaOf, bucklingOf, eulerLoad, secondMoment } from '../../geometry/fitup/loads/buckling';
import { greatestBending } from '../../geometry/fitup/loads/bending';
import { expectRelative, expectWithin } from './near';

/** A rod in tension pulls the joint towards its other end. */
const pull = (joint: Vector, other: Vector): Wrench => wrenchAt(unit(subtract(other, joint)), joint, joint);
const load = (force: Vector): Wrench => ({ force, moment: [0, 0, 0] });
const forcesAt = (unknowns: readonly Wrench[], force: Vector): number[] => {
  const found = solveBalance(unknowns, load(force), 1);
  if (found === null) throw new Error('the joint is not held');
  return found;
};

// P36. Statics text, question 3.5.4 (cube ABCDEFGH), as published at holooly.com; read in a stored copy. P = 1, tension +.
// Printed to three digits: 0.577, and -0.815, which is 0.577 / cos 45 cut short; exact 1/sqrt 3 and -sqrt 2/sqrt 3.
describe('P36 cube pulled along a body diagonal', () => {
  const C: Vector = [1, 1, 1];
  const edges = forcesAt([pull(C, [0, 1, 1]), pull(C, [1, 0, 1]), pull(C, [1, 1, 0])], scale([1, 1, 1], 1 / Math.sqrt(3)));
  it('edges at the loaded corner', () => {
    for (const force of edges) {
      expectWithin(force, 0.577, 0.0005, 'as printed');
      expectWithin(force, 0.577350269, 1e-9);
    }
  });
  it('the face diagonal that takes the edge over at B', () => {
    const B: Vector = [1, 0, 1];
    const [diagonal] = forcesAt([pull(B, [0, 1, 1]), pull(B, [0, 0, 1]), pull(B, [1, 0, 0])], [0, edges[1], 0]);
    expectWithin(diagonal, -0.815, 0.002, 'as printed, cut short');
    expectWithin(diagonal, -0.816496581, 1e-9);
  });
});

// P37. K. Gramoll, Statics eBook, 6.3 case study (University of Oklahoma ecourses), read in stored copies. m, kN; 0.05 kN.
describe('P37 ring-to-ring truss', () => {
  const B: Vector = [0, -1, 0];
  const angle = Math.PI / 8;
  const E: Vector = [0.75 * Math.sin(angle), -0.75 * Math.cos(angle), 1];
  const D: Vector = [-E[0], E[1], E[2]];
  it('the two mirrored members, and the ring that takes the radial part', () => {
    const along = unit(subtract(E, B));
    for (const [i, value] of [0.264588893, 0.283098035, 0.921872128].entries()) expectWithin(along[i], value, 1e-9);
    const [be, bd, radial] = forcesAt([pull(B, E), pull(B, D), pull(B, [0, 0, 0])], [0, 0, 300]);
    for (const force of [be, bd]) {
      expectWithin(force, -162.7, 0.05, 'as printed');
      expectWithin(force, -162.712371, 1e-6);
    }
    expectWithin(radial / (2 * Math.sin(angle)), 120.37, 0.0005, 'each member of the base ring');
  });
});

// P38. R. C. Hibbeler, Statics, 14th ed., R3-7, worked by stemjock.com; read in a stored copy. ft, lb; 0.5 lb. Exact 500 sqrt(5/2)/4.
describe('P38 three rods at a point', () => {
  const C: Vector = [0, 6, 0];
  it('CA, CB and CD', () => {
    const [ca, cb, cd] = forcesAt([pull(C, [2, 0, 0]), pull(C, [-2, 0, 0]), pull(C, [0, 12, 8])], [0, 0, -500]);
    for (const force of [ca, cb]) {
      expectWithin(force, 198, 0.5, 'as printed');
      expectWithin(force, 197.642353761, 1e-8);
    }
    expectWithin(cd, 625, 1e-9);
  });
});

// D36. Exact: 13-12-5 legs, and a body on six rods that can be done by hand. N, mm; 1e-9.
describe('D36 a tripod and a body on six rods', () => {
  const apex: Vector = [0, 0, 12];
  const legs = (
    [
      [5, 0, 0],
      [-3, 4, 0],
      [-3, -4, 0],
    ] as Vector[]
  ).map((foot) => pull(apex, foot));
  it.each([
    [
      [0, 0, -960],
      [-390, -325, -325],
    ],
    [
      [130, 0, 0],
      [-211.25, 105.625, 105.625],
    ],
    [
      [0, 104, 0],
      [0, -169, 169],
    ],
  ] as [Vector, Vector][])('tripod under %j', (force, expected) => {
    for (const [i, found] of forcesAt(legs, force).entries()) expectWithin(found, expected[i], 1e-9);
  });
  it('six rods', () => {
    const rods: [Vector, Vector][] = [
      [
        [0, 400, 0],
        [0, 0, 0],
      ],
      [
        [300, 400, 0],
        [300, 0, 0],
      ],
      [
        [0, 400, 200],
        [0, 0, 200],
      ],
      [
        [0, 400, 0],
        [-300, 400, 0],
      ],
      [
        [0, 400, 200],
        [0, 400, 500],
      ],
      [
        [300, 400, 0],
        [300, 400, 300],
      ],
    ];
    const origin: Vector = [0, 0, 0];
    const unknowns = rods.map(([body, ground]) => wrenchAt(unit(subtract(ground, body)), body, origin));
    const found = solveBalance(unknowns, wrenchAt([1000, -2000, 4000], [120, 450, -300], origin), 300)!;
    const expected = [-3033.3333333333, -966.6666666667, 2000, 1000, -1400, -2600];
    for (const [i, force] of found.entries()) expectWithin(force, expected[i], 1e-9);
  });
  it('rods that do not hold a body are no answer', () => {
    const parallel = [0, 100, 200].map((x): Wrench => wrenchAt([0, 0, 1], [x, 0, 0], [0, 0, 0]));
    if (solveBalance(parallel, load([0, 0, 1]), 100) !== null) throw new Error('three parallel rods in a plane hold nothing');
  });
});

// P39. Strength-of-materials question (tube 38 x 2.5 mm, 2.3 m, E = 205 GPa), worked at askanewquestion.com; read in a stored copy:
// I = 44 140 mm^4, P = 16.8 kN. The others by hand. mm, N; published 0.1 kN, exact 1e-9 relative. Wall 8 of 16 is solid.
describe('P39 buckling of a pinned tube', () => {
  it.each([
    [38, 2.5, 2300, 44140.113093715, 16882.290768],
    [16, 8, 300, 3216.990877276, 72320.417786],
    [19.05, 1.65, 350, 3444.129037331, 56884.891237],
    [20, 2, 400, 4636.990756699, 58636.744987],
    [25, 2, 450, 9628.196085089, 96199.652955],
  ])('%d × %d over %d', (diameter, wall, length, second, force) => {
    expectRelative(secondMoment(diameter, wall), second, 1e-9);
    expectRelative(eulerLoad(205000, secondMoment(diameter, wall), length), force, 1e-9);
    const { euler, yields, governs, times } = bucklingOf({ diameter, wall, modulus: 205000, yield: 350 }, 1, length, -1000);
    expectRelative(euler, force, 1e-9);
    // by hand: A = pi (D - t) t
    expectRelative(yields, Math.PI * (diameter - wall) * wall * 350, 1e-12);
    expectRelative(times, Math.min(euler!, yields!) / 1000, 1e-12);
    if ((governs === 'euler') !== euler! < yields!) throw new Error(`${governs} governs`);
  });
  it('as printed', () => {
    expectWithin(eulerLoad(205000, secondMoment(38, 2.5), 2300) / 1000, 16.8, 0.1);
    expectWithin(secondMoment(38, 2.5), 44140, 0.5);
  });
  it('a section in inches, and wall 0 for solid', () => {
    expectRelative(areaOf(25.4, 0), (Math.PI / 4) * 645.16, 1e-12);
    expectRelative(
      bucklingOf({ diameter: 1, modulus: 205000 }, 25.4, 500, -1).euler,
      eulerLoad(205000, secondMoment(25.4, 0), 500),
      1e-12,
    );
  });
});

// Closed forms of beams on two supports, by hand: P a b / L under one force; for two forces the larger of the moments under them.
describe('bending of a beam by hand', () => {
  const near: Vector = [0, 0, 0];
  const far: Vector = [0, 1000, 0];
  const at = (y: number, force: number, place: string) => ({
    at: [0, y, 0] as Vector,
    force: [0, 0, force] as Vector,
    moment: null,
    place,
  });
  it('one force', () => {
    const { moment, place } = greatestBending(near, far, [at(0, 700, 'a'), at(300, -1000, 'load'), at(1000, 300, 'b')]);
    expectWithin(moment, (1000 * 300 * 700) / 1000, 1e-6);
    if (place !== 'load') throw new Error(place);
  });
  it('two forces, and one that overhangs', () => {
    // reactions 0.6*1000 + 0.2*500 and 0.4*1000 + 0.8*500
    const two = greatestBending(near, far, [at(0, 700, 'a'), at(400, -1000, 'one'), at(800, -500, 'two'), at(1000, 800, 'b')]);
    expectWithin(two.moment, 700 * 400, 1e-6);
    const over = greatestBending(near, far, [at(0, -200, 'a'), at(1000, 1200, 'b'), at(1200, -1000, 'end')]);
    expectWithin(over.moment, 1000 * 200, 1e-6);
  });
  it('a force off the line bends by its couple too', () => {
    // a force along the line, 50 off it: couple 50 000 held by 50 N at the ends; 30 000 beside it on the longer side
    const force: Vector = [0, 1000, 0];
    const beam = [
      { at: near, force: [0, -1000, -50] as Vector, moment: null, place: 'a' },
      { at: [0, 400, 50] as Vector, force, moment: null, place: 'load' },
      { at: far, force: [0, 0, 50] as Vector, moment: null, place: 'b' },
    ];
    const couple = cross([0, 400, 50], force);
    expectWithin(couple[0] + cross(far, [0, 0, 50])[0], 0, 1e-9, 'the beam is in balance');
    expectWithin(greatestBending(near, far, beam).moment, 50 * 600, 1e-6);
    expectWithin(dot(couple, [0, 1, 0]), 0, 0);
  });
});
