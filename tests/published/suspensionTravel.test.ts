import { describe, expect, it } from 'vitest';
import type { AxleDocument, SetupAxleDocument } from '../../geometry/index';
import { rowAt, stand } from './ask';
import { hingeAxle } from './hingeAxle';
import { expectRelative, expectWithin } from './near';
import { AT_ROW_0, planarStrutAxle } from './planarStrut';
import { MP_C } from './storedStrutRuns';
import { CLOSED_MM, CLOSED_N, CLOSED_RELATIVE } from './tolerances';

// P01's stored run again: the strut's length is the distance from a point of its line on the carrier to its top, |B − O|, with
// B = (x, y) + R(phi)·(−0.17, 0.25) m and O = (0.41, 0.83) m. Tolerance: the drift of the stored run, 3e-6 m and 3e-6 rad on the
// 0.3 m from wheel centre to B.
describe('travel of a spring and damper around the planar strut', () => {
  const lengthOf = (y: number, x: number, phi: number): number => {
    const [c, s] = [Math.cos(phi), Math.sin(phi)];
    const [dx, dy] = [0.41 - (x - 0.17 * c - 0.25 * s), 0.83 - (y - 0.17 * s + 0.25 * c)];
    return 1000 * Math.sqrt(dx * dx + dy * dy);
  };
  const car = stand({
    front: planarStrutAxle(AT_ROW_0, {
      spring: { seat: 'strut', rate: 25, freeLength: 260, installed: 240 },
      damper: { stroke: 170, bumpStopAt: 45, droopStopAt: 85 },
    }),
  });
  const [, y0, x0, phi0] = MP_C[0];

  it.each(MP_C)('row %i at y = %f m', (_row, y, x, phi) => {
    const { left } = rowAt(car, 'front', { travel: 1000 * (y - y0) });
    const shorter = lengthOf(y0, x0, phi0) - lengthOf(y, x, phi);
    const drift = 1000 * 5e-6;
    expectWithin(left.springTravel, shorter, drift, 'spring travel');
    expectWithin(left.damperTravel, shorter, drift, 'damper travel');
    expectWithin(left.springForce, Math.max(0, 25 * (260 - 240 + shorter)), 25 * drift, 'spring force');
    // touches at 45, is open at −85 and solid 170 further on
    expectWithin(left.bumpLeft, 45 - shorter, drift, 'left to the bump stop');
    expectWithin(left.solidLeft, 85 - shorter, drift, 'left to solid');
    expectWithin(left.droopLeft, 85 + shorter, drift, 'left to full droop');
  });
});

describe('spring and damper on a swinging arm, lengths from the circle', () => {
  const [PIVOT_Y, HEIGHT, ARM] = [340, 310, 410];
  const [OPEN, CLOSED] = [405, 290];
  const [UPPER, ON_ARM] = [[560, 640], 250] as const;
  const axle: AxleDocument = hingeAxle(
    {
      line: { point: [0, PIVOT_Y, HEIGHT], direction: [1, 0, 0] },
      wheelCentre: [0, PIVOT_Y + ARM, HEIGHT],
      points: { seatUpper: [0, UPPER[0], UPPER[1]], seatLower: [0, PIVOT_Y + ON_ARM, HEIGHT] },
    },
    {
      spring: {
        upper: 'seatUpper',
        lower: 'seatLower',
        lowerOn: 'knuckle',
        rate: 60,
        installed: 220,
        freeLength: 270,
        helper: { rate: 10, freeLength: 50, solidLength: 20 },
      },
      damper: { upper: 'seatUpper', lower: 'seatLower', lowerOn: 'knuckle', open: OPEN, closed: CLOSED, bumpStopAt: 20 },
      adjusters: { perch: { kind: 'perch', perTurn: 1.5, range: [-10, 10], step: 0.25 } },
    },
  );
  const rowWith = (rear: SetupAxleDocument, travel: number) =>
    rowAt(stand({ rear: axle, setups: { One: { rear } } }), 'rear', { travel }).left;
  const lengthAt = (travel: number): number => {
    const theta = Math.asin(travel / ARM);
    const [dy, dz] = [UPPER[0] - PIVOT_Y - ON_ARM * Math.cos(theta), UPPER[1] - HEIGHT - ON_ARM * Math.sin(theta)];
    return Math.sqrt(dy * dy + dz * dz);
  };

  it.each([-70, -30, 0, 25, 60])('at %i mm of travel', (travel) => {
    const left = rowWith({}, travel);
    const shorter = lengthAt(0) - lengthAt(travel);
    expectWithin(left.springTravel, shorter, CLOSED_MM, 'spring travel');
    expectWithin(left.damperTravel, shorter, CLOSED_MM, 'damper travel');
    expectWithin(left.droopLeft, OPEN - lengthAt(travel), CLOSED_MM, 'left to full droop');
    expectWithin(left.solidLeft, lengthAt(travel) - CLOSED, CLOSED_MM, 'left to solid');
    expectWithin(left.bumpLeft, 20 - shorter, CLOSED_MM, 'left to the bump stop');
  });

  // 60 and 10 N/mm in series until the helper has gone its 30 mm, at 300 N; then the main spring alone.
  it.each([-90, -60, 0, 40])('main spring and helper in series, at %i mm of travel', (travel) => {
    const left = rowWith({}, travel);
    const length = 220 - (lengthAt(0) - lengthAt(travel));
    const series = ((60 * 10) / 70) * (270 + 50 - length);
    const force = series <= 0 ? 0 : series < 300 ? series : 60 * (270 + 20 - length);
    expectWithin(left.springForce, force, CLOSED_N);
  });

  it('a perch turned up moves the seat along the spring: more force, same travel', () => {
    const [plain, raised] = [rowWith({}, 0), rowWith({ both: { perch: 4 } }, 0)];
    expectRelative(raised.springForce, plain.springForce! + 60 * 1.5 * 4, CLOSED_RELATIVE, 'force');
    expect(raised.springTravel).toBe(plain.springTravel);
    expect(raised.damperTravel).toBe(plain.damperTravel);
  });

  // The sign: turned by + the damper stands shorter at the same wheel height, as after bump, so its travel grows.
  it('a threaded foot adds its movement to the travel of the damper and leaves the spring alone', () => {
    const damper = { stroke: 160, bumpStopAt: 50, droopStopAt: 80 };
    const spring = { seat: 'strut', rate: 60, installed: 220, freeLength: 270 } as const;
    const foot = { kind: 'perch', perTurn: 2, range: [-10, 10], step: 0.5, moves: 'body' } as const;
    const front = planarStrutAxle(AT_ROW_0, { damper, spring, adjusters: { foot } });
    const left = (turns: number) => rowAt(stand({ front, setups: { One: { front: { both: { foot: turns } } } } }), 'front').left;
    expectWithin(left(3).damperTravel! - left(0).damperTravel!, 6, CLOSED_MM, 'damper travel');
    expectWithin(left(-3).damperTravel! - left(0).damperTravel!, -6, CLOSED_MM, 'damper travel, turned back');
    expectWithin(left(3).bumpLeft! + left(3).damperTravel!, 50, CLOSED_MM, 'stop');
    expect([left(3).springTravel, left(3).springForce, left(3).camber]).toEqual([
      left(0).springTravel,
      left(0).springForce,
      left(0).camber,
    ]);
  });
});
