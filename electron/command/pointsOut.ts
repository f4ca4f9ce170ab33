import { placedPoints, pointsCsv, positionOfAxle, type PlacedPoint } from '../../geometry/index';
import type { Answer, Call } from './answer';
import type { LoadedCar } from './carSource';
import { CommandError, errorOfFailure, usageError } from './commandError';
import { askedPosition, assembledSetup, axlesAsked } from './question';
import { refuseUnwritable, writeWholeFile } from './wholeFile';

/** In the place of a file's name. */
const STANDARD_OUTPUT = '-';

/** The points of the car in a setup at a position, beside design; written as CSV where that is asked for. */
export async function pointsOut({ options, reads }: Call, car: LoadedCar): Promise<Answer> {
  const toOutput = options.csv === STANDARD_OUTPUT;
  if (toOutput && options.json) throw usageError('--csv - and --json both print the answer: give one of them');
  if (toOutput && options.force) throw usageError('--force replaces a file; --csv - writes none');
  const position = askedPosition(options);
  const { name: setup, assembled } = assembledSetup(car, options.setup, options.set);
  if (options.csv !== undefined && !toOutput) await refuseUnwritable(options.csv, options.force === true, reads);
  const rows = axlesAsked(car, options).flatMap((axle): readonly PlacedPoint[] => {
    const placed = placedPoints(assembled, axle, positionOfAxle(assembled, axle, position));
    if (!placed.ok) throw new CommandError(errorOfFailure(placed.failure));
    return placed.value;
  });
  const text = pointsCsv(rows);
  if (options.csv !== undefined && !toOutput) await writeWholeFile(options.csv, text, options.force === true, reads);
  const document = { car: car.document.name, setup, units: { length: 'mm' }, rows, csv: options.csv ?? null };
  return {
    document,
    ...(toOutput ? { text } : {}),
    words: () => (options.csv === undefined ? text.trimEnd() : `${rows.length} points written to ${options.csv}`),
  };
}
