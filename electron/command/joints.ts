import {
  envelopeRows,
  envelopeWarnings,
  fitUpCorners,
  jointTilts,
  jointWarnings,
  toDegrees,
  type FitUpWarning,
  type JointRow,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { JOINT_CAUTIONS } from './cautions';
import { usageError } from './commandError';
import { jointsInWords } from './jointsTable';
import { axlesAsked, setupsAsked, titleOfSetups, type SetupsAsked } from './question';

export const FITUP_UNITS = { length: 'mm', angle: 'deg' } as const;

/** `joints`: how far every joint tilts over travel and lock. */
export async function answer({ car, options }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const axles = axlesAsked(car, options);
  const asked = setupsAsked(car, options);
  const corners = fitUpCorners(asked.setups, axles);
  const rows = jointTilts(corners);
  const warnings = [...setupsLeft(asked), ...envelopeWarnings(corners), ...jointWarnings(rows)];
  const rated = (point: string): number => car.document.joints![point].rated;
  const document = {
    car: car.document.name,
    setups: asked.setups.map(({ name }) => name),
    units: FITUP_UNITS,
    rows: rows.map((row) => rowInContract(row, rated(row.point))),
    envelope: envelopeRows(corners),
    notes: JOINT_CAUTIONS,
    warnings,
  };
  const title = `${titleOfSetups(car, asked.setups, options)}: tilt of joints`;
  return { document, words: (style) => jointsInWords(title, rows, envelopeRows(corners), warnings, style) };
}

export const setupsLeft = ({ left }: SetupsAsked): FitUpWarning[] =>
  left.map(({ name, message }) => ({ code: 'setup-unreachable', path: 'setups', message: `${name} is left out: ${message}` }));

const degreesOf = (angle: number | null): number | null => (angle === null ? null : toDegrees(angle));

/** @param rated - as the file gives it: to the last digit */
function rowInContract({ point, axle, side, kind, tilt, at, bestBolt, tiltThen, why }: JointRow, rated: number): object {
  const now = degreesOf(tilt);
  return {
    point,
    axle,
    side,
    by: kind,
    tilt: now,
    rated,
    spare: now === null ? null : rated - now,
    at,
    bestBolt,
    tiltThen: degreesOf(tiltThen),
    why,
  };
}
