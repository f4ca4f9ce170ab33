import { describe, it } from 'vitest';
import { placeAxle, readingsOfAxle, toDegrees } from '../../geometry/index';
import type { Triple } from '../../geometry/car/document';
import { assembled, AXLES, SIDES } from './assembled';
import { Breaches } from './breaches';
import { randomCar, SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { CLOSURE_MM } from './tolerances';

/** asin and atan2 of a unit vector that rounding touched [deg]. */
const ANGLE_DEG = 1e-11;

describe('a car without adjusters moved, at travel 0 and rack 0', () => {
  it(`has every point where the file puts it, and the file's camber and toe, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const seed of SEEDS) {
      const document = randomCar(seed);
      const car = assembled(document, 'Design');
      breaches.check(car !== null, () => `seed ${seed}: cannot be put together as designed`);
      if (car === null) continue;
      for (const name of AXLES) {
        const axle = document[name]!;
        const placed = placeAxle(car, name);
        const row = readingsOfAxle(car, name);
        breaches.check(placed.ok && row.ok, () => `seed ${seed} ${name}: out of reach as designed`);
        if (!placed.ok || !row.ok) continue;
        for (const side of SIDES) {
          const own = side === 'right' ? axle.right : undefined;
          for (const [point, [x, y, z]] of Object.entries(axle.points)) {
            const [px, py, pz]: Triple = own?.points?.[point] ?? [x, side === 'left' ? y : -y, z];
            const [ax, ay, az] = placed.value[side].points[point];
            const gap = Math.max(Math.abs(ax - px), Math.abs(ay - py), Math.abs(az - pz));
            breaches.limit(gap, CLOSURE_MM, () => `seed ${seed} ${name} ${side} ${point}`);
          }
          const wheel = { ...axle.wheel, ...own?.wheel };
          breaches.limit(
            Math.abs(toDegrees(row.value[side].camber) - wheel.camber),
            ANGLE_DEG,
            () => `seed ${seed} ${name} ${side} camber`,
          );
          breaches.limit(
            Math.abs(toDegrees(row.value[side].toe) - wheel.toe),
            ANGLE_DEG,
            () => `seed ${seed} ${name} ${side} toe`,
          );
          for (const travel of ['springTravel', 'damperTravel'] as const) {
            const value = row.value[side][travel];
            if (value !== null) breaches.limit(Math.abs(value), CLOSURE_MM, () => `seed ${seed} ${name} ${side} ${travel}`);
          }
          const twist = row.value[side].barTwist;
          if (twist !== null) breaches.limit(Math.abs(twist), 1e-10, () => `seed ${seed} ${name} ${side} barTwist`);
        }
      }
    }
    breaches.expectNone(70_000);
  });
});
