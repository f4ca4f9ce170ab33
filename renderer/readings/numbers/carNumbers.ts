import {
  inContractUnits,
  placeAxle,
  readingsOfCar,
  toRadians,
  type AxleName,
  type Position,
  type SideName,
} from '../../../geometry/index';
import { wheelHeight } from './axleNumbers';
import { factsOf, type Shown } from './cornerFacts';
import { carMass } from './masses';
import type { UnitWriter } from './unitWriter';
import { formula, num, POINT, type WrittenFormula } from './writing';

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
  (side: SideName): Numbers =>
  (shown) => {
    const [axles, facts] = [bothAxles(shown), factsOf(shown, 'left')];
    if (!axles || !facts) return null;
    const [front, rear] = [axles.front.placed[side].contactCentre, axles.rear.placed[side].contactCentre];
    const { point, direction } = shown.writer;
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
  { write }: UnitWriter,
): { readonly value: number; readonly written: string } => {
  const below = front + ((rear - front) * behindFront) / wheelbase;
  const rise = rear - front;
  const length = (value: number, decimals = 4): string => write(value, 'length', decimals);
  const climb = `(${length(rear)} − ${length(front)})`;
  const long = length(wheelbase, POINT);
  return {
    value: ((height - below) * wheelbase) / Math.sqrt(wheelbase * wheelbase + rise * rise),
    written: `(${length(height)} − (${length(front)} + ${climb} · ${length(behindFront)} / ${long})) · ${long} / √(${long}² + ${climb}²)`,
  };
};

const rollGradient: Numbers = (shown) => {
  const [axles, centres, car] = [bothAxles(shown), heights(shown), carMass(shown.row.car.mechanism, shown.writer)];
  if (!axles || !centres || !car) return null;
  const { front, rear } = axles;
  if (front.rollStiffness === null || rear.rollStiffness === null) return null;
  const rowOf = (placed: typeof front.placed) => ({ row: { ...shown.row, placed }, writer: shown.writer });
  const [frontHeight, rearHeight] = [wheelHeight(rowOf(front.placed)).number, wheelHeight(rowOf(rear.placed)).number];
  const mass = car.total - car.front.unsprung - car.rear.unsprung;
  const height = (car.total * car.height - car.front.unsprung * frontHeight - car.rear.unsprung * rearHeight) / mass;
  const behind = (car.total * car.behindFront - car.rear.unsprung * car.wheelbase) / mass;
  const over = overAxis(centres, height, behind, shown.writer);
  const { write, step, weight, forceByLength } = shown.writer;
  const length = (value: number): string => write(value, 'length', 4);
  const wheels = `${num(car.front.unsprung, 3)} · ${length(frontHeight)} − ${num(car.rear.unsprung, 3)} · ${length(rearHeight)}`;
  const tilt = `${num(mass, 4)}${weight} · ${length(over.value)}${forceByLength}`;
  const stiffness = `(${write(front.rollStiffness, 'moment', 4)} + ${write(rear.rollStiffness, 'moment', 4)}) · 180 / π`;
  return formula(`${tilt} / (${stiffness} − ${tilt}) · 180 / π`, {
    steps: [
      step('m', `${num(car.total, 4)} − ${num(car.front.unsprung, 4)} − ${num(car.rear.unsprung, 4)}`, mass, 'mass', 4),
      step(
        'its centre of gravity, over the ground',
        `(${num(car.total, 4)} · ${length(car.height)} − ${wheels}) / ${num(mass, 4)}`,
        height,
        'length',
        4,
      ),
      step(
        'its centre of gravity, behind the front axle',
        `(${num(car.total, 4)} · ${length(car.behindFront)} − ${num(car.rear.unsprung, 4)} · ${write(car.wheelbase, 'length', POINT)}) / ${num(mass, 4)}`,
        behind,
        'length',
        4,
      ),
      step('d', over.written, over.value, 'length', 4),
    ],
  });
};

/** Of the whole car. */
export const CAR_NUMBERS: Readonly<Record<string, Numbers>> = {
  wheelbaseLeft: wheelbaseOf('left'),
  wheelbaseRight: wheelbaseOf('right'),
  rake: ({ row, writer: { write } }) => {
    const { front, rear, mechanism } = row.car;
    if (mechanism.wheelbase === null || !front || !rear) return null;
    const length = (value: number): string => write(value, 'length', POINT);
    if (front.rideHeight === null || rear.rideHeight === null) return formula('0', { from: 'no ride height is set: as drawn' });
    return formula(`atan2(${length(rear.rideHeight)} − ${length(front.rideHeight)}, ${length(mechanism.wheelbase)})`);
  },
  rollGradient,
  rollAxisInclination: (shown) => {
    const centres = heights(shown);
    if (!centres) return null;
    const length = (value: number): string => shown.writer.write(value, 'length', 4);
    return formula(`atan2(${length(centres.rear)} − ${length(centres.front)}, ${length(centres.wheelbase)})`);
  },
  rollAxisToCentreOfGravity: (shown) => {
    const [centres, car] = [heights(shown), carMass(shown.row.car.mechanism, shown.writer)];
    return centres && car && formula(overAxis(centres, car.height, car.behindFront, shown.writer).written);
  },
};
