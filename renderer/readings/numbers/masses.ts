import type { AxleName } from '../../../geometry/index';
import type { BenchRow } from '../../compute/answerBench';
import type { UnitWriter } from './unitWriter';
import { num, type Step } from './writing';

type Mechanism = BenchRow['car']['mechanism'];

/** Masses at one axle [kg]. */
export interface WrittenMasses {
  /** what both springs carry */
  readonly sprung: number;
  /** both wheels with what is theirs */
  readonly unsprung: number;
  /** of the car at this axle */
  readonly total: number;
  readonly steps: readonly Step[];
}

const meanX = (axle: NonNullable<Mechanism['front']>): number =>
  ((axle.left.points['wheelCentre']?.[0] ?? 0) + (axle.right.points['wheelCentre']?.[0] ?? 0)) / 2;

/** The point masses that the file adds to the body's: mass [kg], and how far ahead of the rear wheels they sit, as a part of the wheelbase. */
const added = (car: Mechanism): readonly { readonly mass: number; readonly toFront: number; readonly z: number }[] => {
  if (!car.rear || car.wheelbase === null) return [];
  const rear = meanX(car.rear);
  const { wheelbase, mmPerUnit } = car;
  return (car.document.masses ?? [])
    .filter(({ included }) => included !== true)
    .map(({ mass, at }) => ({ mass, toFront: (at[0] * mmPerUnit - rear) / wheelbase, z: at[2] * mmPerUnit }));
};

/** Sprung mass of an axle: its share of the car with the masses that are added, less its wheels. Null where the file says too little. */
export const axleMasses = (car: Mechanism, axle: AxleName, writer: UnitWriter): WrittenMasses | null => {
  const { mass, frontShare, unsprungFront, unsprungRear } = car.body;
  if (mass === null || frontShare === null || unsprungFront === null || unsprungRear === null || !car.front || !car.rear)
    return null;
  const isFront = axle === 'front';
  const unsprung = isFront ? unsprungFront : unsprungRear;
  const own = mass * (isFront ? frontShare : 1 - frontShare);
  const extras = added(car).map((one) => ({ mass: one.mass, share: isFront ? one.toFront : 1 - one.toFront }));
  const total = extras.reduce((all, one) => all + one.mass * one.share, own);
  const share = isFront ? num(frontShare, 5) : `(1 − ${num(frontShare, 5)})`;
  const more = extras.map((one) => ` + ${num(one.mass, 3)} · ${num(one.share, 6)}`).join('');
  const sprung = total - 2 * unsprung;
  return {
    sprung,
    unsprung: 2 * unsprung,
    total,
    steps: [writer.step('sprung mass', `${num(mass, 3)} · ${share}${more} − 2 · ${num(unsprung, 3)}`, sprung, 'mass', 3)],
  };
};

/** Height of the ground at design in car coordinates [mm]. */
const groundHeight = (car: Mechanism): number => {
  const sides = [car.front, car.rear].flatMap((axle) => (axle ? [axle.left, axle.right] : []));
  const heights = sides.map(
    ({ points, wheel }) => (points['wheelCentre']?.[2] ?? 0) - wheel.loadedRadius * Math.cos(wheel.camber),
  );
  return heights.reduce((all, one) => all + one, 0) / heights.length;
};

/** The whole car: mass, height and place of its centre of gravity [kg, mm over the ground, mm behind the front axle]. */
export const carMass = (car: Mechanism, writer: UnitWriter) => {
  const [front, rear] = [axleMasses(car, 'front', writer), axleMasses(car, 'rear', writer)];
  const { mass, centreOfGravityHeight } = car.body;
  const { wheelbase } = car;
  if (!front || !rear || mass === null || centreOfGravityHeight === null || wheelbase === null) return null;
  const total = front.total + rear.total;
  const ground = groundHeight(car);
  const moment = added(car).reduce((all, one) => all + one.mass * (one.z - ground), mass * centreOfGravityHeight);
  return { front, rear, total, height: moment / total, behindFront: (rear.total / total) * wheelbase, wheelbase };
};
