import {
  assembleCar,
  findSetup,
  parseCar,
  toMechanism,
  type AxleName,
  type SideName,
  type Vector,
} from '../../../geometry/index';
import type { CarDocument } from '../../../geometry/car/document';
import type { AxleMechanism } from '../../../geometry/car/mechanism';
import { distance, mirror } from '../../../geometry/core/vector';
import { SOLVED } from '../../../geometry/corner/motion';
import { startTrack, trackCorner } from '../../../geometry/corner/solveCorner';
import type { Motion } from '../../../geometry/corner/motion';
import { envelopeOf, type Envelope } from '../../../geometry/fitup/envelope';
import type { AssembledCar } from '../../../geometry/setup/assembleCar';
import type { AssembledSide } from '../../../geometry/setup/assembleSide';
import { goldenDocument } from '../../golden/goldenCars';
import { sample } from './loadedCars';

export const AXLES: readonly AxleName[] = ['front', 'rear'];
export const SIDES: readonly SideName[] = ['left', 'right'];

/** A corner of a car in one of its setups. */
export interface StoodCorner {
  readonly title: string;
  readonly car: AssembledCar;
  readonly setup: string;
  readonly axle: AxleMechanism;
  readonly side: AssembledSide;
}

/** Every corner of a document in every setup. */
export function cornersOf(name: string, document: CarDocument): StoodCorner[] {
  const parsed = parseCar(JSON.stringify(document));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const mechanism = toMechanism(parsed.value.document);
  return Object.keys(document.setups ?? { Baseline: {} }).flatMap((setup) => {
    const made = assembleCar(mechanism, findSetup(document, setup));
    if (!made.ok) throw new Error(`${name} ${setup}: ${made.failure.message}`);
    const car = made.value;
    return AXLES.filter((axle) => car[axle] !== null).flatMap((axle) =>
      SIDES.map((side) => ({
        title: `${name} ${setup} ${axle} ${side}`,
        car,
        setup,
        axle: car[axle]!.mechanism,
        side: car[axle]![side],
      })),
    );
  });
}

/** A car of the reference answers with ends of travel and lock, where its file gives none. */
export function fitted(name: string): CarDocument {
  const document = goldenDocument(name);
  const axles = AXLES.flatMap((axle) => {
    const own = document[axle];
    if (own === undefined) return [];
    const { damper, steering } = own;
    const eyes = damper?.upper === undefined ? null : distance(own.points[damper.upper], own.points[damper.lower!]);
    const stops =
      eyes === null
        ? { stroke: 110, droopStopAt: 57, bumpStopAt: 31 }
        : { open: Math.round(eyes) + 40, closed: Math.round(eyes) - 35, bumpStopAt: 21 };
    return [
      [
        axle,
        {
          ...own,
          ...(damper === undefined ? { travel: [-61, 52] as const } : { damper: { ...damper, ...stops } }),
          ...(steering && { steering: { ...steering, travel: steering.travel ?? ([-48, 51] as const) } }),
        },
      ] as const,
    ];
  });
  return { ...document, ...Object.fromEntries(axles) };
}

/** The samples and the cars of the reference answers, among them cars with right-hand points of their own and in any layout. */
export const EVERY_CORNER: readonly StoodCorner[] = [
  ...['saltmarsh-hatch', 'marram-coupe', 'chalkboard'].flatMap((name) => cornersOf(name, sample(name))),
  ...['car-21', 'car-22', 'car-23', 'car-24'].flatMap((name) => cornersOf(name, fitted(name))),
];

export function reached(corner: StoodCorner): Envelope {
  const envelope = envelopeOf(corner.axle, corner.setup, corner.side);
  if ('missing' in envelope) throw new Error(`${corner.title}: ${envelope.missing}`);
  return envelope;
}

/** A pose found on its own, from design. */
export function poseAt({ side }: StoodCorner, travel: number, rack: number): Motion {
  const track = startTrack(side.corner);
  if (trackCorner(side.corner, track, travel, rack) !== SOLVED) throw new Error(`not reached: ${travel}, ${rack}`);
  return track.motion;
}

/** A place of a corner's left-hand frame in the car's, and back. */
export const inCarFrame = ({ side }: StoodCorner, v: Vector): Vector => (side.mechanism.side === 'left' ? v : mirror(v));
