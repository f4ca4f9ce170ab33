import { describe, expect, it } from 'vitest';
import { toDegrees, toRadians, type Vector } from '../../../geometry/index';
import { cross, dot, unit } from '../../../geometry/core/vector';
import { turnAbout } from '../../../geometry/core/rotation';
import { bestBolt, tiltBetween, type TiltKind } from '../../../geometry/fitup/joints/clocking';
import { drawFrom, type Draw } from '../../laws/draw';

const SEED = 3712;

describe('tilt', () => {
  // D37: exact
  it.each([
    [[1, 0, 0], [0, 1, 0], 0],
    [[0, 0, 1], [3, 0, 4], 53.130102354],
    [[1, 0, 0], [1, 1, 0], 45],
    [[1, 2, 2], [2, 1, -2], 0],
  ] as [Vector, Vector, number][])('of a rod: bolt %j, rod %j: %d°', (bolt, rod, tilt) => {
    expect(toDegrees(tiltBetween('rod', unit(bolt), unit(rod)))).toBeCloseTo(tilt, 9);
  });

  it('of a bore does not ask which way bolt and bore point', () => {
    const bolt = unit([1, 2, 2]);
    for (const angle of [0, 1e-9, 0.3, 1.2, Math.PI / 2]) {
      const bore = turnAbout(bolt, unit(cross(bolt, [0, 0, 1])), angle);
      for (const one of [bore, bore.map((value) => -value) as unknown as Vector])
        expect(tiltBetween('bore', bolt, one)).toBeCloseTo(angle, 12);
    }
  });
});

/** The greatest tilt with a bolt. */
const most = (kind: TiltKind, bolt: Vector, directions: readonly Vector[]): { tilt: number; direction: Vector } =>
  directions.reduce(
    (worst, direction) => {
      const tilt = tiltBetween(kind, bolt, direction);
      return tilt > worst.tilt ? { tilt, direction } : worst;
    },
    { tilt: -1, direction: directions[0] },
  );

function best(kind: TiltKind, present: Vector, directions: readonly Vector[]) {
  const worst = (bolt: Vector): Vector => most(kind, bolt, directions).direction;
  return bestBolt(kind, present, worst(present), worst);
}

/** Directions as a joint's are: some around one direction, a few turned right round. */
function patch(draw: Draw): Vector[] {
  const middle = unit([draw.between(-1, 1), draw.between(-1, 1), draw.between(0.2, 1)]);
  const spread = draw.pick([0.03, 0.2, 0.5]);
  return Array.from({ length: draw.whole(1, 40) }, () => {
    const d = unit([
      middle[0] + draw.between(-spread, spread),
      middle[1] + draw.between(-spread, spread),
      middle[2] + draw.between(-spread, spread),
    ]);
    return draw.chance(0.3) ? ([-d[0], -d[1], -d[2]] as Vector) : d;
  });
}

describe('the best bolt', () => {
  it.each(['bore', 'rod'] as const)(`of a %s: no direction of a fine net of the sphere does better (seed ${SEED})`, (kind) => {
    const draw = drawFrom(SEED);
    for (let i = 0; i < 60; i++) {
      const directions = patch(draw);
      const present = unit([draw.between(-1, 1), draw.between(-1, 1), draw.between(0.1, 1)]);
      const found = best(kind, present, directions);
      expect(most(kind, found.bolt, directions).tilt).toBeCloseTo(found.tilt, 10);
      expect(found.tilt).toBeLessThanOrEqual(most(kind, present, directions).tilt);
      expect(dot(found.bolt, present)).toBeGreaterThanOrEqual(0);
      // a net of about 1.5°, then finer nets around its best places
      let bolts = net();
      let least = Infinity;
      for (let size = 0.026; size > 2e-6; size *= 0.4) {
        const tried = bolts.map((bolt) => ({ bolt, tilt: most(kind, bolt, directions).tilt })).sort((a, b) => a.tilt - b.tilt);
        least = Math.min(least, tried[0].tilt);
        bolts = tried.slice(0, 8).flatMap(({ bolt }) => around(bolt, size));
      }
      expect(found.tilt).toBeLessThan(least + toRadians(0.001));
    }
  });

  // D37's note: exact
  it('of a rod that goes between two directions is square to both', () => {
    const [a, b] = [unit([0, 1, 0.2]), unit([0.3, 1, -0.1])];
    const { bolt, tilt } = best('rod', [1, 0, 0], [a, b]);
    expect(toDegrees(tilt)).toBeLessThan(1e-6);
    // the bolt that the case gives, of either sense
    expect(Math.abs(dot(bolt, unit([-0.700140042, 0.140028008, -0.700140042])))).toBeCloseTo(1, 8);
  });

  it('of a bore that swings in a cone is its axis, of one that swings in a fan its middle', () => {
    const axis = unit([1, 2, 3]);
    const side = unit(cross(axis, [0, 0, 1]));
    const rim = turnAbout(axis, side, 0.2);
    const cone = Array.from({ length: 9 }, (_, i) => turnAbout(rim, axis, i));
    const { bolt, tilt } = best('bore', rim, cone);
    expect(tilt).toBeCloseTo(0.2, 2);
    expect(tilt).toBeLessThanOrEqual(0.2 + 1e-12);
    expect(dot(bolt, axis)).toBeGreaterThan(Math.cos(0.02));
    const fan = [-0.1, 0, 0.05, 0.3].map((angle) => turnAbout(axis, side, angle));
    const middle = best('bore', axis, fan);
    expect(middle.tilt).toBeCloseTo(0.2, 9);
    expect(dot(middle.bolt, turnAbout(axis, side, 0.1))).toBeCloseTo(1, 9);
  });

  it('stays where it is where nothing does better', () => {
    const rods: Vector[] = [unit([0, 1, 0.2]), unit([0, 1, -0.1]), unit([0, 1, 0.02])];
    expect(best('rod', [1, 0, 0], rods)).toEqual({ bolt: [1, 0, 0], tilt: 0 });
    expect(best('bore', [0, 1, 0], [[0, 1, 0]]).bolt).toEqual([0, 1, 0]);
    const one = best('rod', unit([1, 1, 0]), [[0, 1, 0]]);
    expect(one.tilt).toBeLessThan(1e-12);
    expect(one.bolt[0]).toBeCloseTo(1, 9);
  });
});

function net(): Vector[] {
  const found: Vector[] = [];
  for (let i = 0; i <= 60; i++) {
    const latitude = (Math.PI / 2) * (i / 60);
    const count = Math.max(1, Math.round(240 * Math.cos(latitude)));
    for (let k = 0; k < count; k++) {
      const longitude = (2 * Math.PI * k) / count;
      found.push([Math.cos(latitude) * Math.cos(longitude), Math.cos(latitude) * Math.sin(longitude), Math.sin(latitude)]);
    }
  }
  return found;
}

function around(bolt: Vector, size: number): Vector[] {
  const first = unit(cross(bolt, Math.abs(bolt[2]) < 0.8 ? [0, 0, 1] : [1, 0, 0]));
  const second = cross(bolt, first);
  const found: Vector[] = [];
  for (let i = -2; i <= 2; i++)
    for (let k = -2; k <= 2; k++)
      found.push(
        unit([0, 1, 2].map((axis) => bolt[axis] + 0.5 * size * (i * first[axis] + k * second[axis])) as unknown as Vector),
      );
  return found;
}
