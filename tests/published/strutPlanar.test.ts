import { describe, expect, it } from 'vitest';
import { toRadians } from '../../geometry/index';
import { rowAt, stand } from './ask';
import { expectWithin } from './near';
import { AT_ROW_0, planarStrutAxle } from './planarStrut';
import { MP_A, MP_B, MP_C } from './storedStrutRuns';
import { CLOSED_SLOPE } from './tolerances';

const car = stand({ front: planarStrutAxle(AT_ROW_0) });
const [, DESIGN_Y, , DESIGN_PHI] = MP_C[0];
const at = (y: number) => rowAt(car, 'front', { travel: 1000 * (y - DESIGN_Y) });

// P01. P. E. Nikravesh, Planar Multibody Dynamics, 2nd ed. 2018: stored runs of the textbook's program (see storedStrutRuns.ts).
// Tolerance of the case: x 3e-6 m, phi 3e-6 rad, the constraint drift of the stored time integration.
describe.each([
  ['MP_A, three bodies', MP_A],
  ['MP_B, two bodies', MP_B],
  ['MP_C, one body', MP_C],
])('P01 planar strut, stored run %s', (_name, rows) => {
  it.each(rows)('row %i at y = %f m: x %f m, phi %f rad', (_row, y, x, phi) => {
    const { wheelCentre, camber } = at(y).left;
    expectWithin(wheelCentre[1], 1000 * x, 1000 * 3e-6, 'lateral place of the wheel centre');
    expectWithin(toRadians(camber), -(phi - DESIGN_PHI), 3e-6, 'camber');
  });
});

// P02. The same source, MP_C: instant centre as the crossing of the arm's line and the line through the strut's top square to
// its axis, and dphi/dy, dx/dy as the ratios of stored velocity columns, an independent witness. Metres and radians.
// Tolerances of the case: centre 1e-6 m; slopes 1e-7 in rows 5 and 20, 2e-6 in row 60.
describe('P02 instant centre of the planar strut', () => {
  it.each([
    [5, 0.356922672374289, [-1.389908071, 0.295554177], 0.506600275, -0.031089301, 1e-7],
    [20, 0.338617591337365, [-1.262034054, 0.350937743], 0.541625948, 0.006672912, 1e-7],
    [60, 0.280225029311198, [-0.98124597, 0.482960974], 0.640390715, 0.129829939, 2e-6],
  ] as const)('row %i', (_row, y, [centreX, centreY], phiPerY, xPerY, slopeTolerance) => {
    const { frontViewInstantCentre, wheelCentre, camberGain } = at(y).left;
    const [ic, wheel] = [frontViewInstantCentre!, wheelCentre];
    expectWithin(ic[0], 1000 * centreX, 1000 * 1e-6, 'instant centre y');
    expectWithin(ic[1], 1000 * centreY, 1000 * 1e-6, 'instant centre z');
    expectWithin(-1000 * toRadians(camberGain), phiPerY, slopeTolerance, 'dphi/dy');
    // the same slopes as the instant centre gives them
    expectWithin(1000 / (wheel[1] - ic[0]), phiPerY, slopeTolerance, 'dphi/dy from the centre');
    expectWithin(-(wheel[2] - ic[1]) / (wheel[1] - ic[0]), xPerY, slopeTolerance, 'dx/dy from the centre');
  });
});

// P03. The same source, MP_C, drawn out to three dimensions for the catalogue of check values: y [m], camber [deg].
// Tolerances of the case: y 3e-6 m, camber 1.5e-4 deg, toe 1e-9 deg, dx 1e-12 m.
describe('P03 planar strut as an axle in three dimensions', () => {
  it.each([
    [0.358510141852537, 0.583982837365, 0],
    [0.356922672374289, 0.584034783255, 0.0459340270046],
    [0.352656016049211, 0.584148694496, 0.170809086877],
    [0.346369601468156, 0.58424819144, 0.358497278275],
    [0.338617591337365, 0.584258579523, 0.595858438759],
    [0.329859572367872, 0.584120671241, 0.871653121362],
    [0.320471960809781, 0.583795840289, 1.17598887072],
    [0.31075912044096, 0.583265943568, 1.5000792519],
    [0.300963709254922, 0.582530579534, 1.83615618778],
    [0.292264903263484, 0.581707060151, 2.14220356837],
    [0.286106938092457, 0.581026403831, 2.36310220037],
    [0.280225029311198, 0.5803001163, 2.57734374624],
    [0.285856864210249, 0.580997885241, 2.37211010415],
  ])('z = %f m', (z, y, camber) => {
    const { left, right } = at(z);
    for (const [corner, outboard] of [
      [left, 1],
      [right, -1],
    ] as const) {
      expectWithin(outboard * corner.wheelCentre[1], 1000 * y, 1000 * 3e-6, 'wheel centre y');
      expectWithin(corner.wheelCentre[0], 0, 1000 * 1e-12, 'wheel centre x');
      expectWithin(corner.camber, camber, 1.5e-4, 'camber');
      expectWithin(corner.toe, 0, 1e-9, 'toe');
    }
  });

  it('leaves bump steer and the lengthwise slope at nothing, and has no side-view instant centre', () => {
    const { left, why } = at(0.31);
    expectWithin(left.bumpSteer, 0, CLOSED_SLOPE);
    expectWithin(left.longitudinalSlopeContact, 0, CLOSED_SLOPE);
    expect(left.sideViewInstantCentre).toBeNull();
    expect(why['left.sideViewInstantCentre']).toEqual(expect.any(String));
  });
});
