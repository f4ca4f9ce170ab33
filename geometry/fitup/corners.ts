import type { AxleName, SideName } from '../car/document';
import type { AxleMechanism } from '../car/mechanism';
import type { AssembledCar } from '../setup/assembleCar';
import type { AssembledSide } from '../setup/assembleSide';
import { envelopeOf, type Envelope } from './envelope';

/** A setup in use, put together. */
export interface StoodSetup {
  readonly name: string;
  readonly car: AssembledCar;
}

/** One wheel of a setup with everywhere that it can be. */
export interface FitUpCorner {
  readonly setup: string;
  readonly car: AssembledCar;
  readonly axle: AxleMechanism;
  readonly side: AssembledSide;
  /** null where the file does not say where it ends; then `missing` says what lacks */
  readonly envelope: Envelope | null;
  readonly missing: string | null;
}

/** The envelope of a corner as answers give it. Lengths in mm, travel from design. */
export type EnvelopeRow = Pick<
  Envelope,
  'setup' | 'axle' | 'side' | 'open' | 'touch' | 'solid' | 'rackMin' | 'rackMax' | 'unreachable'
>;

export const BOTH_SIDES: readonly SideName[] = ['left', 'right'];

/** Both wheels of the axles asked for, in every setup. */
export function fitUpCorners(setups: readonly StoodSetup[], axles: readonly AxleName[]): FitUpCorner[] {
  return setups.flatMap(({ name, car }) =>
    axles.flatMap((axle) => {
      const assembled = car[axle];
      if (assembled === null) return [];
      return BOTH_SIDES.map((side): FitUpCorner => {
        const envelope = envelopeOf(assembled.mechanism, name, assembled[side]);
        const common = { setup: name, car, axle: assembled.mechanism, side: assembled[side] };
        return 'missing' in envelope
          ? { ...common, envelope: null, missing: envelope.missing }
          : { ...common, envelope, missing: null };
      });
    }),
  );
}

/** Why nothing is known of a corner that has no envelope: what is missing, and what to give. */
export const noEnvelope = ({ axle, missing }: Pick<FitUpCorner, 'axle' | 'missing'>): string =>
  `the ${axle.axle} axle has no envelope without ${missing}`;

/** The same as a sentence. */
export const noEnvelopeSentence = (corner: Pick<FitUpCorner, 'axle' | 'missing'>): string => `T${noEnvelope(corner).slice(1)}.`;

export const envelopeRows = (corners: readonly FitUpCorner[]): EnvelopeRow[] =>
  corners.flatMap(({ envelope }) => {
    if (envelope === null) return [];
    const { setup, axle, side, open, touch, solid, rackMin, rackMax, unreachable } = envelope;
    return [{ setup, axle, side, open, touch, solid, rackMin, rackMax, unreachable }];
  });
