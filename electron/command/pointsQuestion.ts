import {
  AXIS_WORDS,
  CAR_AXES,
  DEFAULT_BRING,
  designPoints,
  MM_PER_POINT_UNIT,
  pointNamesOf,
  readPoints,
  suggest,
  type AxleName,
  type AxisWord,
  type BringOptions,
  type FrameAxes,
  type PointList,
  type ReferencePoint,
} from '../../geometry/index';
import { countOf, LARGEST_FILE, readFileCapped, readStandardInput, type LoadedCar } from './carSource';
import type { CommandFaultCode } from './codes';
import { CommandError, usageError } from './commandError';
import type { Options } from './options';

const MOST_FAULTS = 20;

/** A list of points in a file, or on standard input when the path is `-`. @throws CommandError of kind file with every fault */
export async function readPointFile(place: string): Promise<PointList> {
  const bytes = place === '-' ? await readStandardInput() : await readFileCapped(place);
  const name = place === '-' ? 'standard input' : place;
  const refuse = (found: string, expected: string): CommandError =>
    new CommandError({
      kind: 'file',
      message: `${name} is no list of points`,
      faults: [{ code: 'bad-points' satisfies CommandFaultCode, path: null, line: 1, column: null, found, expected, hint: null }],
    });
  if (bytes.length > LARGEST_FILE) throw refuse('more than 16 MiB', 'a shorter list');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw refuse('bytes that are not UTF-8', 'UTF-8 text');
  }
  const list = readPoints(text);
  if (list.faults.length === 0) return list;
  const message = `${name} is no list of points: ${countOf(list.faults.length, 'fault')}; nothing was taken`;
  throw new CommandError({ kind: 'file', message, faults: list.faults.slice(0, MOST_FAULTS) });
}

/** How the call wants the list understood. */
export async function askedBring(options: Options, car: LoadedCar, list: PointList): Promise<BringOptions> {
  const axle = axleOf(options, car);
  const unit = options.units ?? list.headerUnit;
  if (unit === null) throw usageError('say the unit of the list: --units mm, in, cm or m');
  const side = options.side ?? 'left';
  if (options.mirror && options.average) throw usageError('--mirror and --average do not go together');
  if (options.mirror && side === 'both') throw usageError('--mirror needs one measured side: --side left or right');
  if (options.average && side !== 'both') throw usageError('--average needs --side both');
  const sides = options.average ? 'average' : options.mirror ? 'mirror' : 'each';
  const datum = options.datum === undefined ? null : await datumOf(options.datum, car, axle, side === 'right' ? 'right' : 'left');
  const axes = axesOf(options.axes) ?? list.headerAxes ?? CAR_AXES;
  return { ...DEFAULT_BRING, axle, unit, axes, side, sides, datum, names: namesOf(options, car, axle) };
}

function axleOf(options: Options, car: LoadedCar): AxleName {
  const { document } = car;
  if (options.axle !== undefined) {
    if (!document[options.axle]) throw usageError(`this car has no ${options.axle} axle`);
    return options.axle;
  }
  if (document.front && document.rear) throw usageError('say the axle of the list: --axle front or rear');
  return document.front ? 'front' : 'rear';
}

function axesOf(text: string | undefined): FrameAxes | null {
  if (text === undefined) return null;
  const words = text.split(',').map((word) => word.trim());
  for (const word of words) {
    if ((AXIS_WORDS as readonly string[]).includes(word)) continue;
    const hint = suggest(word, AXIS_WORDS);
    throw usageError(`--axes: "${word}" is not one of ${AXIS_WORDS.join(', ')}${hint ? `; ${hint}` : ''}`);
  }
  if (words.length !== 3) throw usageError(`--axes: three directions for x, y and z, as in ${CAR_AXES.join(',')}`);
  return words as unknown as readonly [AxisWord, AxisWord, AxisWord];
}

/** Names of the car's own points, or a file of points in the car's frame. */
async function datumOf(text: string, car: LoadedCar, axle: AxleName, side: 'left' | 'right'): Promise<readonly ReferencePoint[]> {
  if (text.includes(',')) {
    const own = designPoints(car.document, axle, side);
    const names = text.split(',').map((given) => given.trim());
    return names.map((name, index) => {
      if (name === '') throw usageError(`--datum: "${text}" has nothing between two commas, or at an end`);
      if (names.indexOf(name) !== index) throw usageError(`--datum: "${name}" is given twice`);
      const at = own[name];
      if (at) return { name, at };
      const hint = suggest(name, Object.keys(own));
      throw usageError(`--datum: the ${axle} axle has no point "${name}"${hint ? `; ${hint}` : ''}`);
    });
  }
  const { rows, headerUnit } = await readPointFile(text);
  const mm = MM_PER_POINT_UNIT[headerUnit ?? 'mm'];
  return rows.map(({ name, read: [x, y, z] }) => ({ name, at: [x * mm, y * mm, z * mm] }));
}

function namesOf({ map = [] }: Options, { document }: LoadedCar, axle: AxleName): Readonly<Record<string, string | null>> {
  const of = document[axle];
  const points = of ? pointNamesOf(of) : [];
  return Object.fromEntries(
    map.map(({ name, value }) => {
      if (value === 'none' || value === null) return [name, null];
      if (typeof value === 'string' && points.includes(value)) return [name, value];
      const hint = suggest(String(value), points);
      throw usageError(`--map ${name}: the ${axle} axle has no point "${value}"${hint ? `; ${hint}` : ''}`);
    }),
  );
}
