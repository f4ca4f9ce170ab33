import {
  bringFailureWords,
  bringPoints,
  parseCar,
  serializeCar,
  takePoints,
  type BringFailure,
  type BringOptions,
  type Brought,
  type Fault,
  type PointList,
  type Warning,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { countOf, withoutPlace, type LoadedCar } from './carSource';
import type { CommandFaultCode } from './codes';
import { CommandError, usageError } from './commandError';
import { askedBring, readPointFile } from './pointsQuestion';
import { pointsInWords } from './pointsTable';
import { refuseUnwritable, writeWholeFile } from './wholeFile';

/** Faults past this many say nothing that the first ones do not. */
const MOST_FAULTS = 20;

/** A list of points brought to the car: shown, and taken into a new file where that is asked for. */
export async function pointsIn({ options, reads }: Call, car: LoadedCar, place: string): Promise<Answer> {
  if (options.out === '-') throw usageError('--out writes a file: give it a name, - is none');
  const force = options.force === true;
  if (options.out !== undefined) await refuseUnwritable(options.out, force, reads);
  const list = await readPointFile(place);
  const asked = await askedBring(options, car, list);
  const brought = bringPoints(car.document, list.rows, asked);
  if (!brought.ok) throw refusal(brought.failure, place);
  const warnings = [...unitWarnings(list, asked), ...axesWarnings(list, asked), ...brought.value.warnings];
  if (options.out !== undefined) await writeWholeFile(options.out, carWith(car, asked, brought.value, place), force, reads);
  const out = options.out ?? null;
  return {
    document: documentOf(car, list, asked, brought.value, warnings, out),
    words: (style) => pointsInWords({ car: car.document.name, place, list, asked, brought: brought.value, warnings, out }, style),
  };
}

function documentOf(
  car: LoadedCar,
  list: PointList,
  asked: BringOptions,
  brought: Brought,
  warnings: readonly Warning[],
  out: string | null,
): object {
  const { separator, decimal, header } = list;
  const [x, y, z] = asked.axes;
  const { datum } = brought;
  return {
    car: car.document.name,
    axle: asked.axle,
    units: { length: 'mm' },
    list: { count: list.rows.length, separator, decimal, header, unit: asked.unit },
    axes: { x, y, z, handed: brought.frame.handed },
    side: asked.side,
    sides: asked.sides,
    datum: datum && {
      rms: datum.rms,
      size: datum.size,
      planar: datum.planar,
      rotation: datum.rotation,
      translation: datum.translation,
      points: datum.points,
    },
    rows: brought.rows.map(({ line, name, read, at, onSide, state, point, suggestion }) => ({
      line,
      name,
      read,
      at,
      side: onSide,
      state,
      point,
      suggestion,
    })),
    points: brought.points,
    warnings,
    out,
  };
}

/** The text of the car with the points taken; a row without a point and a linkage that is none are faults. */
function carWith(car: LoadedCar, asked: BringOptions, brought: Brought, place: string): string {
  const unnamed = brought.rows.filter(({ state }) => state === 'unknown');
  if (unnamed.length > 0)
    throw refused(
      `${countOf(unnamed.length, 'row')} of ${place} ${unnamed.length === 1 ? 'is' : 'are'} no point of the ${asked.axle} axle; nothing was written`,
      unnamed.slice(0, MOST_FAULTS).map(({ line, name, suggestion }) => ({
        code: 'unnamed-point' satisfies CommandFaultCode,
        path: null,
        line,
        column: null,
        found: JSON.stringify(name),
        expected: 'a point of the axle; --map says which, or none to leave the row out',
        hint: suggestion === null ? null : `did you mean \`${suggestion}\`?`,
      })),
    );
  const text = serializeCar(takePoints(car.document, asked, brought.points), car.text);
  const judged = parseCar(text);
  if (judged.ok) return text;
  const { faults } = judged.failure;
  throw refused(
    `the car with these points has ${countOf(faults.length, 'fault')}; nothing was written`,
    faults.map(withoutPlace),
  );
}

const refused = (message: string, faults: readonly Fault[]): CommandError => new CommandError({ kind: 'file', message, faults });

const unitWarnings = ({ headerUnit }: PointList, { unit }: BringOptions): Warning[] =>
  headerUnit === null || headerUnit === unit
    ? []
    : [{ code: 'unit-differs', path: null, message: `The header of the list says ${headerUnit}; it was read as ${unit}.` }];

const axesWarnings = ({ headerAxes }: PointList, { axes }: BringOptions): Warning[] => {
  if (headerAxes === null || headerAxes.every((word, k) => word === axes[k])) return [];
  const message = `The header of the list says ${headerAxes.join(', ')}; it was read as ${axes.join(', ')}.`;
  return [{ code: 'axes-differ', path: null, message }];
};

const CODES: Readonly<Record<Exclude<BringFailure['kind'], 'same-line'>, CommandFaultCode>> = {
  'too-few': 'datum-too-few',
  collinear: 'datum-collinear',
  mirrored: 'datum-mirrored',
  'no-reference': 'datum-unknown',
  twice: 'point-twice',
};

/** Axes are the command's; all else is the list's, or the reference points'. */
function refusal(failure: BringFailure, place: string): CommandError {
  const words = bringFailureWords(failure);
  if (failure.kind === 'same-line') return usageError(`--axes: ${words}`);
  const line = failure.kind === 'twice' ? (failure.lines[1] ?? null) : null;
  const fault: Fault = { code: CODES[failure.kind], path: null, line, column: null, found: words, expected: null, hint: null };
  return refused(`${place} cannot be brought to the car`, [fault]);
}
