import { describe, it } from 'vitest';
import {
  assembleCar,
  MOTION_WIDTH,
  placeAxle,
  solvePoses,
  toMechanism,
  toRadians,
  type AssembledCar,
  type SetupDocument,
} from '../../geometry/index';
import { dot, subtract, type Vector } from '../../geometry/core/vector';
import type { AxleName } from '../../geometry/car/document';
import { AXLES, carsOf, lockOf, SIDES } from './assembled';
import { Breaches } from './breaches';
import { oneDozenIn, SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { ON_GROUND_MM } from './tolerances';

/** y = 0 on the line joining the contact centres of an axle at travel 0, rack 0, judged level: from a car without ride heights. */
function groundPointOf(car: AssembledCar, axle: AxleName): Vector | null {
  const level = assembleCar(car.mechanism, levelled(car.setup, axle));
  if (!level.ok) return null;
  const placed = placeAxle(level.value, axle);
  if (!placed.ok) return null;
  const [a, b] = [placed.value.left.contactCentre, placed.value.right.contactCentre];
  const t = a[1] / (a[1] - b[1]);
  return [a[0] + t * (b[0] - a[0]), 0, a[2] + t * (b[2] - a[2])];
}

/** The setup without ride heights and toe reset, one axle only. */
function levelled(setup: SetupDocument, axle: AxleName): SetupDocument {
  const { rideHeight: _, setToe: __, ...rest } = setup[axle] ?? {};
  return { [axle]: rest };
}

/** Travels that are looked through for a place to stand [mm]. */
const SCANNED = Array.from({ length: 101 }, (_, i) => 4 * (i - 50));

/** Height of a wheel's contact centre over the rolled ground at the scanned travels [mm]; not a number where it is out of reach. */
function heightsOver(
  car: AssembledCar,
  axle: AxleName,
  side: 'left' | 'right',
  heave: number,
  rack: number,
  roll: number,
): number[] {
  const { corner } = car[axle]![side];
  const { motions, status } = solvePoses(corner, { travel: SCANNED, rack: SCANNED.map(() => rack) });
  const c = Math.cos(car.pitch);
  // a right-hand corner is solved as its mirror image
  const across = (side === 'left' ? 1 : -1) * c * Math.sin(roll);
  const n: Vector = [-Math.sin(car.pitch), across, c * Math.cos(roll)];
  const [x, , z] = car[axle]!.groundPoint;
  const ground: Vector = [x, 0, z + heave - (car[axle]!.rideHeight ?? 0)];
  return SCANNED.map((_, i) => {
    if (status[i] !== 0) return NaN;
    const m = motions.subarray(i * MOTION_WIDTH, (i + 1) * MOTION_WIDTH);
    const [a, b, d] = corner.spindle;
    const s: Vector = [m[0] * a + m[1] * b + m[2] * d, m[3] * a + m[4] * b + m[5] * d, m[6] * a + m[7] * b + m[8] * d];
    const lean = dot(s, n);
    return dot(subtract([m[9], m[10], m[11]], ground), n) - corner.loadedRadius * Math.sqrt(1 - lean * lean);
  });
}

describe('a car that stands', () => {
  it(`has its contact centres on the ground of its ride heights, nose down where the rear is higher, one dozen in two of ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, car: drawn, draw } of carsOf(oneDozenIn(2))) {
      const heights = { front: draw.between(-35, 25), rear: draw.chance(0.2) ? undefined : draw.between(-35, 25) };
      const of = (axle: AxleName): SetupDocument['front'] => {
        const { setToe: _, rideHeight: __, ...rest } = drawn.setup[axle] ?? {};
        return { ...rest, ...(heights[axle] === undefined ? {} : { rideHeight: heights[axle] }) };
      };
      const made = assembleCar(toMechanism(document), { front: of('front'), rear: of('rear') });
      if (!made.ok) continue;
      const car = made.value;
      const rise = (heights.rear ?? 0) - heights.front;
      const wheelbase = car.mechanism.wheelbase!;
      breaches.check(
        Math.sign(car.pitch) === Math.sign(rise),
        () => `seed ${seed}: pitch ${car.pitch} with the rear ${rise} mm higher`,
      );
      breaches.limit(Math.abs(Math.tan(car.pitch) - rise / wheelbase), 1e-14, () => `seed ${seed}: tan of the pitch`);
      const n: Vector = [-Math.sin(car.pitch), 0, Math.cos(car.pitch)];
      for (const axle of AXLES) {
        const point = groundPointOf(car, axle);
        const placed = placeAxle(car, axle);
        if (point === null || !placed.ok) continue;
        const ground: Vector = [point[0], 0, point[2] - (heights[axle] ?? 0)];
        for (const side of SIDES) {
          const { contactCentre } = placed.value[side];
          breaches.limit(Math.abs(dot(subtract(contactCentre, ground), n)), ON_GROUND_MM, () => `seed ${seed} ${axle} ${side}`);
        }
      }
    }
    breaches.expectNone(2000);
  });

  it(`and rolls has its contact centres on the rolled ground, at any rack and heave, one dozen in two of ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(oneDozenIn(2))) {
      for (const axle of AXLES) {
        const [low, high] = lockOf(document[axle]!);
        const [heave, roll] = [draw.between(-30, 30), toRadians(draw.between(-6, 6))];
        const rack = low === high || draw.chance(0.5) ? 0 : draw.between(low, high);
        const placed = placeAxle(car, axle, { travel: heave, rack, roll });
        if (!placed.ok) continue;
        const c = Math.cos(car.pitch);
        const n: Vector = [-Math.sin(car.pitch), c * Math.sin(roll), c * Math.cos(roll)];
        const [x, , z] = car[axle]!.groundPoint;
        const ground: Vector = [x, 0, z + heave - (car[axle]!.rideHeight ?? 0)];
        const where = `seed ${seed} ${setup} ${axle} heave ${heave} rack ${rack} roll ${roll}`;
        for (const side of SIDES)
          breaches.limit(
            Math.abs(dot(subtract(placed.value[side].contactCentre, ground), n)),
            ON_GROUND_MM,
            () => `${where} ${side}`,
          );
        // + roll lifts the left side of the body: its wheel hangs down
        const { left, right } = placed.value.travel;
        if (car[axle]!.setup?.rideHeight === undefined && Math.abs(roll) > 0.05)
          breaches.check(roll > 0 === left < right, () => `${where}: travels ${left}, ${right}`);
      }
    }
    breaches.expectNone(2000);
  });

  it(`and rolls far is called out of reach only where no travel puts its wheel on the ground, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS)) {
      const axle = draw.pick(AXLES);
      const [low, high] = lockOf(document[axle]!);
      const [heave, roll] = [draw.between(-60, 60), toRadians(draw.between(6, 14) * draw.pick([1, -1]))];
      const rack = low === high || draw.chance(0.5) ? 0 : draw.pick([low, high]);
      const placed = placeAxle(car, axle, { travel: heave, rack, roll });
      breaches.check(true, () => '');
      if (placed.ok) continue;
      const { side } = placed.failure;
      const heights = heightsOver(car, axle, side!, heave, rack, roll);
      const crossed = heights.findIndex((height, i) => i > 0 && height * heights[i - 1] < 0);
      const where = `seed ${seed} ${setup} ${axle} heave ${heave} rack ${rack} roll ${roll}`;
      breaches.check(
        crossed < 0,
        () => `${where}: the ${side} wheel stands near travel ${SCANNED[crossed]}, but: ${placed.failure.message}`,
      );
    }
    breaches.expectNone(1500);
  });
});
