/**
 * The parts of a row that cost as much as all others together. Whoever wants a few readings of many positions, such as curves,
 * goes without those that none of them needs.
 */
export interface Scope {
  /** spring, damper and bar of each corner */
  readonly springs: boolean;
  /** caster by swing: poses of its own */
  readonly swing: boolean;
  /** load transfer: the other axle at the same position */
  readonly transfer: boolean;
  /** words: why readings are null, and warnings */
  readonly reasons: boolean;
  /** steering ratio with the rack centred: the rates of both sides by the rack */
  readonly ratio: boolean;
}

/** Whether what is left can be read off one side alone where the other is its mirror image. */
export const isReadOffOne = ({ springs, swing, transfer, reasons, ratio }: Scope): boolean =>
  !springs && !swing && !transfer && !reasons && !ratio;

export const WHOLE_ROW: Scope = { springs: true, swing: true, transfer: true, reasons: true, ratio: true };

const TRANSFER: ReadonlySet<string> = new Set(['loadTransferGeometric', 'loadTransferElastic', 'loadTransferUnsprung']);

const SPRINGS: ReadonlySet<string> = new Set([
  'springRatio',
  'springTravel',
  'springForce',
  'wheelRate',
  'damperRatio',
  'damperTravel',
  'bumpLeft',
  'solidLeft',
  'droopLeft',
  'barRatio',
  'barTwist',
  'springRollStiffness',
  'barRollStiffness',
  'rollStiffness',
  'rideFrequency',
]);

/** What these readings of a corner or an axle need, by their keys. @param reasons - words too */
export function scopeOf(keys: readonly string[], reasons = true): Scope {
  const transfer = keys.some((key) => TRANSFER.has(key));
  return {
    springs: transfer || keys.some((key) => SPRINGS.has(key)),
    swing: keys.includes('casterBySwing'),
    transfer,
    reasons,
    ratio: reasons || keys.includes('steeringRatio'),
  };
}
