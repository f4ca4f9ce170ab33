import { pathCsv, pointPath, suggest, toDegrees, type AxleName, type PathPlace } from '../../geometry/index';
import type { Answer, Call } from './answer';
import type { LoadedCar } from './carSource';
import { errorOfFailure, CommandError, usageError } from './commandError';
import { assembledSetup, axlesAsked, titleOf } from './question';
import { sweepQuestion } from './sweepPositions';
import { formatFixed, heading, NO_VALUE, tableLine, wrap, type Column, type TextStyle } from './textTable';
import { refuseUnwritable, writeWholeFile } from './wholeFile';

/** In the place of a file's name. */
const STANDARD_OUTPUT = '-';
const SIDES = { left: ['left'], right: ['right'], both: ['left', 'right'] } as const;

const COLUMNS: readonly Column[] = [
  { title: 'side', width: 5, align: 'left' },
  ...['travel L', 'travel R', 'rack', 'roll'].map((title): Column => ({ title, width: 8, align: 'right' })),
  ...['x', 'y', 'z'].map((title): Column => ({ title, width: 9, align: 'right' })),
];

/** Where one point is all along a motion or a list of positions, on both sides; written as CSV where that is asked for. */
export async function pathOut({ options, reads }: Call, car: LoadedCar, point: string): Promise<Answer> {
  const toOutput = options.csv === STANDARD_OUTPUT;
  if (toOutput && options.json) throw usageError('--csv - and --json both print the answer: give one of them');
  if (toOutput && options.force) throw usageError('--force replaces a file; --csv - writes none');
  const axles = axlesOf(car, axlesAsked(car, options), point);
  const question = await sweepQuestion(options);
  const { name: setup, assembled } = assembledSetup(car, options.setup, options.set);
  if (options.csv !== undefined && !toOutput) await refuseUnwritable(options.csv, options.force === true, reads);
  const places = axles.flatMap((axle) => pointPath(assembled, axle, point, question.positions, SIDES[options.side ?? 'both']));
  // an answer of which nothing was reached is no answer: it is the failure of its first row
  const first = places[0]?.failure;
  if (first && places.every(({ at }) => at === null)) throw new CommandError(errorOfFailure(first));
  const text = pathCsv(places);
  if (options.csv !== undefined && !toOutput) await writeWholeFile(options.csv, text, options.force === true, reads);
  const rows = places.map(({ failure, roll, ...place }) => ({
    ...place,
    roll: toDegrees(roll),
    ...(failure ? { error: errorOfFailure(failure) } : {}),
  }));
  const units = { length: 'mm', angle: 'deg' };
  const document = { car: car.document.name, setup, units, motion: question.motion, point, rows, csv: options.csv ?? null };
  const title = `${titleOf(car, setup, options)}: the way of ${point}`;
  return {
    document,
    ...(toOutput ? { text } : {}),
    words: (style) =>
      options.csv === undefined ? pathInWords(title, places, style) : `${places.length} places written to ${options.csv}`,
  };
}

/** The axles that have the point. @throws CommandError of kind usage where none has */
function axlesOf({ document }: LoadedCar, asked: readonly AxleName[], point: string): readonly AxleName[] {
  const having = asked.filter((axle) => document[axle] && Object.hasOwn(document[axle].points, point));
  if (having.length > 0) return having;
  const known = asked.flatMap((axle) => Object.keys(document[axle]?.points ?? {}));
  const hint = suggest(point, known);
  const where = asked.length === 1 ? `the ${asked[0]} axle has` : 'no axle of the car has';
  throw usageError(`--path: ${where} ${asked.length === 1 ? 'no' : 'a'} point "${point}"${hint ? `; ${hint}` : ''}`);
}

function pathInWords(title: string, places: readonly PathPlace[], style: TextStyle): string {
  const lines = [heading(title, style), ...wrap("mm in the body's frame: x forward, y left, z up; roll in degrees")];
  let axle: AxleName | null = null;
  for (const place of places) {
    if (place.axle !== axle) {
      axle = place.axle;
      lines.push(
        '',
        heading(`${axle === 'front' ? 'Front' : 'Rear'} axle`, style),
        tableLine(
          COLUMNS,
          COLUMNS.map(({ title: head }) => head),
        ),
      );
    }
    const { side, travel, rack, roll, at, failure } = place;
    const where = [travel.left, travel.right, rack, toDegrees(roll)].map((value) => formatFixed(value, 1));
    lines.push(
      tableLine(COLUMNS, [side, ...where, ...(at ? at.map((mm) => formatFixed(mm, 2)) : [NO_VALUE, NO_VALUE, NO_VALUE])]),
    );
    if (failure) lines.push(...wrap(`  ${failure.message}`));
  }
  return lines.join('\n');
}
