import { inContractUnits, placeAxle, readingsOfCar, toRadians, type AxleName, type Position } from '../../../geometry/index';
import { wheelHeight } from './axleNumbers';
import { factsOf, type Shown } from './cornerFacts';
import { carMass } from './masses';
import { direction, formula, num, point, POINT, step, type WrittenFormula } from './writing';

type Numbers = (shown: Shown) => WrittenFormula | null;

/** Both axles at the position shown: where they are, and what is read off them. */
const bothAxles = ({ row, position }: Shown) => {
  const { travel, rollDeg, rack } = position;
  const at = (axle: AxleName): Position => {
    const steered = row.car[axle]?.left.corner.isSteered ? rack : 0;
    return rollDeg === 0 ? { travel, rack: steered } : { travel, rack: steered, roll: toRadians(rollDeg) };
  };
  const readings = readingsOfCar(row.car, { ...at('front'), rack: row.rack });
  const axle = (name: AxleName) => {
    const read = readings[name];
    const placed = row.car[name] && placeAxle(row.car, name, at(name));
    if (!read?.ok || !placed?.ok) return null;
    const { both } = inContractUnits(read.value);
    const number = (key: 'rollCentreHeight' | 'rollStiffness'): number | null => {
      const value = both[key];
      return typeof value === 'number' ? value : null;
    };
    return { placed: placed.value, rollCentreHeight: number('rollCentreHeight'), rollStiffness: number('rollStiffness') };
  };
  const [front, rear] = [axle('front'), axle('rear')];
  return front && rear && { front, rear };
};

const wheelbaseOf =
  (side: 'left' | 'right'): Numbers =>
  (shown) => {
    const [axles, facts] = [bothAxles(shown), factsOf(shown, 'left')];
    if (!axles || !facts) return null;
    const [front, rear] = [axles.front.placed[side].contactCentre, axles.rear.placed[side].contactCentre];
    return formula(`(${point(front)} − ${point(rear)}) · ${direction(facts.ahead)}`);
  };

const heights = (shown: Shown): { readonly front: number; readonly rear: number; readonly wheelbase: number } | null => {
  const axles = bothAxles(shown);
  const { wheelbase } = shown.row.car.mechanism;
  const [front, rear] = [axles?.front.rollCentreHeight ?? null, axles?.rear.rollCentreHeight ?? null];
  return front === null || rear === null || wheelbase === null ? null : { front, rear, wheelbase };
};

/** Distance over the roll axis of a point in the middle plane, written out. */
const overAxis = (
  { front, rear, wheelbase }: { readonly front: number; readonly rear: number; readonly wheelbase: number },
  height: number,
  behindFront: number,
): { readonly value: number; readonly written: string } => {
  const below = front + ((rear - front) * behindFront) / wheelbase;
  const rise = rear - front;
  return {
    value: ((height - below) * wheelbase) / Math.sqrt(wheelbase * wheelbase + rise * rise),
    written:
      `(${num(height, 4)} − (${num(front, 4)} + (${num(rear, 4)} − ${num(front, 4)}) · ${num(behindFront, 4)} / ${num(wheelbase, POINT)})) · ` +
      `${num(wheelbase, POINT)} / √(${num(wheelbase, POINT)}² + (${num(rear, 4)} − ${num(front, 4)})²)`,
  };
};

const rollGradient: Numbers = (shown) => {
  const [axles, centres, car] = [bothAxles(shown), heights(shown), carMass(shown.row.car.mechanism)];
  if (!axles || !centres || !car) return null;
  const { front, rear } = axles;
  if (front.rollStiffness === null || rear.rollStiffness === null) return null;
  const rowOf = (placed: typeof front.placed) => ({ row: { ...shown.row, placed } });
  const [frontHeight, rearHeight] = [wheelHeight(rowOf(front.placed)).number, wheelHeight(rowOf(rear.placed)).number];
  const mass = car.total - car.front.unsprung - car.rear.unsprung;
  const height = (car.total * car.height - car.front.unsprung * frontHeight - car.rear.unsprung * rearHeight) / mass;
  const behind = (car.total * car.behindFront - car.rear.unsprung * car.wheelbase) / mass;
  const over = overAxis(centres, height, behind);
  const wheels = `${num(car.front.unsprung, 3)} · ${num(frontHeight, 4)} − ${num(car.rear.unsprung, 3)} · ${num(rearHeight, 4)}`;
  const tilt = `${num(mass, 4)} · 9.80665 · ${num(over.value, 4)} / 1000`;
  const stiffness = `(${num(front.rollStiffness, 4)} + ${num(rear.rollStiffness, 4)}) · 180 / π`;
  return formula(`${tilt} / (${stiffness} − ${tilt}) · 180 / π`, {
    steps: [
      step('m', `${num(car.total, 4)} − ${num(car.front.unsprung, 4)} − ${num(car.rear.unsprung, 4)}`, mass, 4, 'kg'),
      step(
        'its centre of gravity, over the ground',
        `(${num(car.total, 4)} · ${num(car.height, 4)} − ${wheels}) / ${num(mass, 4)}`,
        height,
        4,
        'mm',
      ),
      step(
        'its centre of gravity, behind the front axle',
        `(${num(car.total, 4)} · ${num(car.behindFront, 4)} − ${num(car.rear.unsprung, 4)} · ${num(car.wheelbase, POINT)}) / ${num(mass, 4)}`,
        behind,
        4,
        'mm',
      ),
      step('d', over.written, over.value, 4, 'mm'),
    ],
  });
};

/** Of the whole car. */
export const CAR_NUMBERS: Readonly<Record<string, Numbers>> = {
  wheelbaseLeft: wheelbaseOf('left'),
  wheelbaseRight: wheelbaseOf('right'),
  rake: ({ row }) => {
    const { front, rear, mechanism } = row.car;
    if (mechanism.wheelbase === null || !front || !rear) return null;
    if (front.rideHeight === null || rear.rideHeight === null) return formula('0', { from: 'no ride height is set: as drawn' });
    return formula(`atan2(${num(rear.rideHeight, POINT)} − ${num(front.rideHeight, POINT)}, ${num(mechanism.wheelbase, POINT)})`);
  },
  rollGradient,
  rollAxisInclination: (shown) => {
    const centres = heights(shown);
    return centres && formula(`atan2(${num(centres.rear, 4)} − ${num(centres.front, 4)}, ${num(centres.wheelbase, POINT)})`);
  },
  rollAxisToCentreOfGravity: (shown) => {
    const [centres, car] = [heights(shown), carMass(shown.row.car.mechanism)];
    return centres && car && formula(overAxis(centres, car.height, car.behindFront).written);
  },
};
