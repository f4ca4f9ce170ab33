import type { AxleDocument, AxleName } from '../../geometry/index';

/** What a reading of a plausible car lies between, where it applies, and who says so. Millimetres, degrees, per cent. */
interface Bound {
  readonly owner: 'left' | 'both';
  readonly key: string;
  readonly min: number;
  readonly max: number;
  readonly applies: (axle: AxleDocument, name: AxleName, drivenAxle: string) => boolean;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';
/**
 * Camber against ride height of two production five-link rear axles, Mazda RX-8 (2008–2011) and MX-5 (ND, 2016),
 * manufacturer service data: −16.7 °/m in rebound to −28.3 °/m in bump, each ±2 °/m by rounding.
 */
export const SERVICE_GAIN = { rebound: -16.7, bump: -28.3, rounding: 2 } as const;
const SERVICE = 'service data of Mazda RX-8 and MX-5 ND rear axles, with its rounding';

const front = (_: AxleDocument, name: AxleName): boolean => name === 'front';
const rear = (_: AxleDocument, name: AxleName): boolean => name === 'rear';
const frontStrut = ({ layout }: AxleDocument, name: AxleName): boolean => layout === 'strut' && name === 'front';
const onStrut = ({ spring }: AxleDocument): boolean => spring?.seat === 'strut';
const onArm = ({ spring }: AxleDocument): boolean => spring?.lower !== undefined;
const both = (): boolean => true;

/** Standing in the first setup. */
export const BOUNDS: readonly Bound[] = [
  { owner: 'left', key: 'caster', min: 2, max: 10, applies: front, source: PRACTICE },
  { owner: 'left', key: 'kingpinInclination', min: 8, max: 16, applies: front, source: PRACTICE },
  { owner: 'left', key: 'mechanicalTrail', min: 5, max: 40, applies: front, source: PRACTICE },
  { owner: 'left', key: 'scrubRadius', min: -20, max: 30, applies: front, source: PRACTICE },
  { owner: 'left', key: 'camber', min: -3, max: 0.5, applies: both, source: PRACTICE },
  { owner: 'left', key: 'toe', min: -0.2, max: 0.35, applies: both, source: PRACTICE },
  { owner: 'left', key: 'camberGain', min: -0.03, max: -0.01, applies: frontStrut, source: PRACTICE },
  {
    owner: 'left',
    key: 'camberGain',
    min: (SERVICE_GAIN.bump - SERVICE_GAIN.rounding) / 1000,
    max: (SERVICE_GAIN.rebound + SERVICE_GAIN.rounding) / 1000,
    applies: ({ layout }, name) => layout === 'multi-link' && name === 'rear',
    source: SERVICE,
  },
  { owner: 'left', key: 'bumpSteer', min: -0.003, max: 0.003, applies: both, source: PRACTICE },
  { owner: 'both', key: 'rollCentreHeight', min: 20, max: 120, applies: front, source: PRACTICE },
  { owner: 'both', key: 'rollCentreHeight', min: 60, max: 180, applies: rear, source: PRACTICE },
  { owner: 'left', key: 'springRatio', min: 0.93, max: 1, applies: onStrut, source: PRACTICE },
  { owner: 'left', key: 'springRatio', min: 0.55, max: 0.85, applies: onArm, source: PRACTICE },
  { owner: 'left', key: 'damperRatio', min: 0.55, max: 1.05, applies: both, source: PRACTICE },
  { owner: 'left', key: 'barRatio', min: 0.5, max: 1.1, applies: both, source: PRACTICE },
  // 0 where the arm axes lie along the car
  { owner: 'both', key: 'antiDive', min: -1e-9, max: 30, applies: front, source: PRACTICE },
  // blade trailing arms, whose pivot is at about the height of the wheel centre, give most
  { owner: 'both', key: 'antiLiftBraking', min: -1e-9, max: 120, applies: rear, source: PRACTICE },
  { owner: 'both', key: 'antiSquat', min: -1e-9, max: 60, applies: (_, name, driven) => name === 'rear' && driven === 'rear', source: PRACTICE },
  { owner: 'both', key: 'rideFrequency', min: 1.5, max: 3, applies: both, source: PRACTICE },
  { owner: 'both', key: 'track', min: 1450, max: 1650, applies: both, source: PRACTICE },
  { owner: 'both', key: 'camberCompensation', min: 0.1, max: 0.6, applies: both, source: PRACTICE },
  { owner: 'both', key: 'rollSteer', min: -0.1, max: 0.1, applies: both, source: PRACTICE },
];

/** At full lock to the left: + steers to the left on both wheels. */
export const LOCK = {
  rackEach: { min: 60, max: 75 },
  inner: { min: 33, max: 42 },
  outer: { min: 28, max: 36 },
  ackermann: { min: 10, max: 80 },
  steeringRatio: { min: 12, max: 18 },
  turningCircle: { min: 10_000, max: 12_000 },
  source: PRACTICE,
} as const;

/** Wheel travel from damper open to solid, from design [mm]. */
export const WHEEL_TRAVEL = { droop: { min: 60, max: 100 }, bump: { min: 60, max: 100 }, source: PRACTICE } as const;

/** Toe over travel against standing, at ±40 mm [deg]. */
export const TOE_CURVE = { at: 40, front: 0.12, rear: 0.15, source: PRACTICE } as const;

/** Any setup may stand off the design; its bump steer stays drivable [deg/mm]. */
export const BUMP_STEER_OF_SETUPS = { most: 0.006, source: PRACTICE } as const;

/** Whole car: roll per g of cornering [deg/g]. */
export const ROLL_GRADIENT = { min: 0.8, max: 4, source: PRACTICE } as const;

/**
 * Diameter at which toe in mm is measured, over the rim's: Saab 9-5 (2004), manufacturer service data, 15- to 17-inch
 * wheels: 409.3 − 381, 436.5 − 406.4 and 463.8 − 431.8 mm, read with its rounding of about 5 %.
 */
export const TOE_DIAMETER_OVER_RIM = { min: 28.3 - 20, max: 32 + 20, source: 'service data of Saab 9-5 (2004)' } as const;
