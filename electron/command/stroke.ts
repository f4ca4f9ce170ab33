import {
  envelopeRows,
  envelopeWarnings,
  fitUpCorners,
  strokeRows,
  strokeWarnings,
  toDegrees,
  type BarTwist,
  type ShaftRow,
  type StrokeRow,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { STROKE_CAUTIONS } from './cautions';
import { usageError } from './commandError';
import { FITUP_UNITS, setupsLeft } from './joints';
import { axlesAsked, setupsAsked, titleOfSetups } from './question';
import { strokeInWords } from './strokeTable';

/** `stroke`: what is left of everything that has an end. */
export async function answer({ car, options }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const axles = axlesAsked(car, options);
  const asked = setupsAsked(car, options);
  const corners = fitUpCorners(asked.setups, axles);
  const rows = strokeRows(corners);
  const warnings = [...setupsLeft(asked), ...envelopeWarnings(corners), ...strokeWarnings(rows)];
  const document = {
    car: car.document.name,
    setups: asked.setups.map(({ name }) => name),
    units: FITUP_UNITS,
    rows: rows.map(rowInContract),
    envelope: envelopeRows(corners),
    notes: STROKE_CAUTIONS,
    warnings,
  };
  const title = `${titleOfSetups(car, asked.setups, options)}: stroke, shafts, hoses and threads`;
  return { document, words: (style) => strokeInWords(title, rows, envelopeRows(corners), warnings, style) };
}

function rowInContract({ barTwist, shaft, threads, isByWeight: _, ...row }: StrokeRow): object {
  return {
    ...row,
    barTwist: barTwist === null ? null : twistInContract(barTwist),
    shaft: shaft === null ? null : shaftInContract(shaft),
    threads,
  };
}

const twistInContract = ({ least, greatest, at }: BarTwist): object => ({
  least: toDegrees(least),
  greatest: toDegrees(greatest),
  at,
});

const degreesOf = (angle: number | null): number | null => (angle === null ? null : toDegrees(angle));

const shaftInContract = ({ angleInner, angleOuter, allowed, ...shaft }: ShaftRow): object => ({
  ...shaft,
  angleInner: degreesOf(angleInner),
  angleOuter: degreesOf(angleOuter),
  allowed: { ...allowed, angleInner: degreesOf(allowed.angleInner), angleOuter: degreesOf(allowed.angleOuter) },
});
