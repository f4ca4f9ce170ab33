import { suggest, withToeReset, type CarDocument, type MapAnswer, type MapAxis, type MapQuestion } from '../../geometry/index';
import type { Answer, Call } from './answer';
import { CAUTIONS } from './cautions';
import { CommandError, usageError } from './commandError';
import type { Options } from './options';
import { askedPosition, changedSetup, titleOf } from './question';
import { readingNamed } from './readingNames';
import { UNITS } from './readings';
import { formatFixed, formatPlain, heading, wrap, type TextStyle } from './textTable';

const COUNT = 25;
const MOTIONS = ['travel', 'rack', 'roll'] as const;

/** `map`: one reading over two adjusters, or over an adjuster and a motion. */
export async function answer({ car, options, study }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const { x: xName, y: yName, reading: readingName } = options;
  if (xName === undefined || yName === undefined || readingName === undefined)
    throw usageError('map needs --x, --y and --reading');
  if (xName === yName) throw usageError(`--x and --y are both ${xName}: a map is over two things`);
  const { document } = car;
  const [x, y] = [axisOf(xName, options, document), axisOf(yName, options, document)];
  if (x.kind !== 'adjuster' && y.kind !== 'adjuster')
    throw usageError('one of --x and --y has to be an adjuster; readings over motions alone are a sweep');
  const reading = readingNamed(readingName, document);
  const { travel } = askedPosition(options);
  if (typeof travel === 'object') throw usageError('--travel of a map is one number');
  const { name, setup } = changedSetup(car, options.setup, options.set);
  const axles = reading.axle === 'wholeCar' ? (['front', 'rear'] as const) : [reading.axle];
  const question: MapQuestion = {
    setup: withToeReset(document, setup, axles, options['toe-reset']),
    x,
    y,
    nx: options.nx ?? COUNT,
    ny: options.ny ?? COUNT,
    ...reading,
    at: { travel: travel ?? 0, rack: options.rack ?? 0, roll: options.roll ?? 0 },
  };
  if (question.nx * question.ny > 1_000_000)
    throw usageError('a map of more than a million values: take fewer along --nx or --ny');
  const made = await study({ study: 'map', document, question });
  if (made.z.every((row) => row.every((value) => value === null)))
    throw new CommandError({ kind: 'unreachable', message: `no value anywhere on the map: ${Object.values(made.why)[0] ?? ''}` });
  const title = `${titleOf(car, name, options)}: ${readingName} over ${xName} and ${yName}`;
  const { entry } = reading;
  return {
    document: {
      car: document.name,
      setup: name,
      units: UNITS,
      reading: readingName,
      ...made,
      x: { name: xName, values: made.x },
      y: { name: yName, values: made.y },
    },
    words: (style) => mapInWords(title, xName, yName, made, entry.decimals, style),
  };
}

function axisOf(name: string, options: Options, document: CarDocument): MapAxis {
  const motion = MOTIONS.find((known) => known === name);
  if (motion !== undefined) return { kind: motion, ...spanOf(motion, options, document) };
  const [axle = '', side = '', adjuster = '', ...more] = name.split('.');
  const wrong = (why: string): never => {
    throw usageError(`"${name}": ${why}; an axis of a map is an adjuster, as in front.both.plateAcross, or travel, rack or roll`);
  };
  if (axle !== 'front' && axle !== 'rear') return wrong(`"${axle}" is neither an axle nor a motion`);
  if (document[axle] === undefined) throw usageError(`this car has no ${axle} axle`);
  if (side !== 'both' && side !== 'left' && side !== 'right') return wrong(`"${side}" is not a side`);
  const known = Object.keys(document[axle].adjusters ?? {});
  if (more.length > 0 || !known.includes(adjuster))
    return wrong(suggest(adjuster, known) ?? `the ${axle} axle has ${known.join(', ') || 'no adjusters'}`);
  return { kind: 'adjuster', axle, side, name: adjuster };
}

/** The ends of a motion: those given, else those that the file gives. */
function spanOf(
  motion: (typeof MOTIONS)[number],
  { from, to }: Options,
  document: CarDocument,
): { readonly from: number; readonly to: number } {
  if (from !== undefined && to !== undefined) return { from, to };
  if (from !== undefined || to !== undefined) throw usageError('--from and --to go together');
  if (motion === 'roll') return { from: -3, to: 3 };
  const mm = document.units?.length === 'in' ? 25.4 : 1;
  if (motion === 'travel') {
    const [low, high] = document.front?.travel ?? document.rear?.travel ?? [-60 / mm, 60 / mm];
    return { from: low * mm, to: high * mm };
  }
  const travel = document.front?.steering?.travel ?? document.rear?.steering?.travel ?? 60 / mm;
  const [low, high] = typeof travel === 'number' ? [-travel, travel] : travel;
  return { from: low * mm, to: high * mm };
}

/** Columns that fit into a line of words. */
const MOST_COLUMNS = 8;

function mapInWords(
  title: string,
  xName: string,
  yName: string,
  { x, y, z, now }: MapAnswer,
  decimals: number,
  style: TextStyle,
): string {
  const every = Math.ceil(x.length / MOST_COLUMNS);
  const shown = x.map((_, index) => index).filter((index) => index % every === 0 || index === x.length - 1);
  const cell = (text: string): string => text.padStart(10);
  const rows = y.map(
    (value, row) =>
      cell(formatPlain(value)) + shown.map((index) => cell(formatFixed(z[row]?.[index] ?? null, decimals))).join(''),
  );
  const lines = [
    ...wrap(title, '  ').map((line) => heading(line, style)),
    ...wrap(`  across: ${xName}; down: ${yName}${every > 1 ? `; every ${every}th column, --json has them all` : ''}`, '    '),
    cell('') + shown.map((index) => cell(formatPlain(x[index] ?? 0))).join(''),
    ...rows,
  ];
  if (now.z !== null) lines.push(`  now ${formatFixed(now.z, decimals)}`);
  return [...lines, '', ...wrap(CAUTIONS)].join('\n');
}
