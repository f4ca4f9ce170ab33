import { describe, it } from 'vitest';
import { placeAxle, type PlacedCorner } from '../../geometry/index';
import { cross, distance, dot, length, subtract, unit } from '../../geometry/core/vector';
import type { AssembledSide } from '../../geometry/setup/assembleSide';
import { AXLES, carsOf, randomPositions, SIDES } from './assembled';
import { Breaches } from './breaches';
import { SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { CLOSURE_MM } from './tolerances';

/** Largest error of a constraint of one corner as it is drawn [mm], with its name. */
function* errorsOf(placed: PlacedCorner, side: AssembledSide): Generator<readonly [string, number]> {
  const { linkage } = side.corner;
  for (const [i, rod] of placed.rods.entries()) yield [rod.name, distance(rod.inner, rod.outer) - linkage.rods[i].length];
  if (placed.trailingArm !== null && linkage.pivot !== null) {
    const [x, y, z] = linkage.pivot.onBody;
    const bolt = subtract(placed.trailingArm.pivot, [x, side.corner.side === 'left' ? y : -y, z]);
    yield ['pivot across its bolt', length(cross(bolt, unit(placed.trailingArm.axis)))];
  }
  if (placed.strut !== null && linkage.guide !== null) {
    const mirrorY = side.corner.side === 'left' ? 1 : -1;
    const r = placed.rotation;
    const [ax, ay, az] = [linkage.guide.axis[0], mirrorY * linkage.guide.axis[1], linkage.guide.axis[2]];
    const axis = [
      r[0] * ax + r[1] * ay + r[2] * az,
      r[3] * ax + r[4] * ay + r[5] * az,
      r[6] * ax + r[7] * ay + r[8] * az,
    ] as const;
    const slide = subtract(placed.strut.top, placed.strut.foot);
    yield ['strut through its top', length(cross(slide, axis))];
  }
  const r = placed.rotation;
  const columns = [0, 1, 2].map((i) => [r[i], r[3 + i], r[6 + i]] as const);
  // turned by 1e-12 a point 1000 mm away is 1e-9 mm off
  for (let i = 0; i < 3; i++)
    for (let j = i; j < 3; j++) yield ['knuckle stays rigid', 1000 * (dot(columns[i], columns[j]) - (i === j ? 1 : 0))];
}

describe('every solved pose', () => {
  it(`keeps the lengths of all rods, the pivot of a trailing arm on its bolt and the strut through its top, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS)) {
      for (const axle of AXLES) {
        for (const position of randomPositions(draw, document[axle]!, 4)) {
          const placed = placeAxle(car, axle, position);
          if (!placed.ok) continue;
          for (const side of SIDES) {
            for (const [name, error] of errorsOf(placed.value[side], car[axle]![side])) {
              breaches.limit(
                Math.abs(error),
                CLOSURE_MM,
                () => `seed ${seed} ${setup} ${axle} ${side} ${JSON.stringify(position)} ${name}`,
              );
            }
          }
        }
      }
    }
    breaches.expectNone(200_000);
  });
});
