import { placedPoints, pointsCsv, type PlacedPoint } from '../../geometry/index';
import type { Answer, Call } from './answer';
import type { LoadedCar } from './carSource';
import { CommandError, errorOfFailure } from './commandError';
import { askedPosition, assembledSetup, axlesAsked } from './question';
import { refuseUnwritable, writeWholeFile } from './wholeFile';

/** The points of the car in a setup at a position, beside design; written as CSV where that is asked for. */
export async function pointsOut({ options, reads }: Call, car: LoadedCar): Promise<Answer> {
  const position = askedPosition(options);
  const { name: setup, assembled } = assembledSetup(car, options.setup, options.set);
  if (options.csv !== undefined) await refuseUnwritable(options.csv, options.force === true, reads);
  const rows = axlesAsked(car, options).flatMap((axle): readonly PlacedPoint[] => {
    const placed = placedPoints(assembled, axle, position);
    if (!placed.ok) throw new CommandError(errorOfFailure(placed.failure));
    return placed.value;
  });
  const text = pointsCsv(rows);
  if (options.csv !== undefined) await writeWholeFile(options.csv, text, options.force === true, reads);
  const document = { car: car.document.name, setup, units: { length: 'mm' }, rows, csv: options.csv ?? null };
  return {
    document,
    words: () => (options.csv === undefined ? text.trimEnd() : `${rows.length} points written to ${options.csv}`),
  };
}
