import {
  findReading,
  shortPairWords,
  suggest,
  type AxleName,
  type CarDocument,
  type Reached,
  type ReadingEntry,
  type SetupDocument,
  type Way,
  type Ways,
  type WaysQuestion,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { CAUTIONS } from './cautions';
import { usageError } from './commandError';
import { changesInWords } from './influence';
import { meshesForGaps } from './meshesForGaps';
import { parseNumber } from './options';
import { askedPosition, axlesAsked, changedSetup, titleOf } from './question';
import { numberReadings } from './readingNames';
import { UNITS } from './readings';
import { formatFixed, harmless, heading, wrap, type TextStyle } from './textTable';

/** `ways`: every adjuster that brings one reading to a value. */
export async function answer({ car, options, study }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const { entry, value } = wantedOf(options.wanted);
  const axles = axlesAsked(car, options);
  const [axle] = axles;
  if (axle === undefined || axles.length > 1)
    throw usageError('ways needs --axle front or --axle rear: the reading of which axle?');
  if (options.tolerance !== undefined && !(options.tolerance > 0))
    throw usageError(`--tolerance: ${options.tolerance} is not above 0`);
  const at = askedPosition(options);
  const side = options.side ?? 'both';
  const { name, setup } = changedSetup(car, options.setup, options.set);
  const question: WaysQuestion = {
    setup,
    entry,
    value,
    axle,
    side,
    ...(options.tolerance === undefined ? {} : { tolerance: options.tolerance }),
    toeReset: options['toe-reset'],
    at,
    pairs: options.pairs === true,
    withLocked: options.locked === true,
  };
  const answered = await study({
    study: 'ways',
    document: car.document,
    question: { ...question, meshes: await meshesForGaps(car) },
  });
  const wanted = { reading: entry.key, axle, side, value };
  const title = `${titleOf(car, name, options)}: ${axle} ${entry.name.toLowerCase()} ${formatFixed(value, entry.decimals)}`;
  return {
    document: { car: car.document.name, setup: name, units: UNITS, wanted, ...answered },
    words: (style) => waysInWords(car.document, title, entry, axle, value, answered, style),
  };
}

/** "camber=-3.0": a reading of a corner or an axle, and its value. */
function wantedOf(text: string | undefined): { readonly entry: ReadingEntry; readonly value: number } {
  const [key = '', number, ...more] = (text ?? '').split('=');
  const value = number === undefined || more.length > 0 ? null : parseNumber(number);
  if (value === null) throw usageError(`"${text ?? ''}" is not of the form READING=VALUE, as in camber=-3.0`);
  const entry = findReading(key.trim());
  const known = numberReadings().filter(({ of }) => of !== 'car');
  if (entry === undefined || !known.includes(entry)) {
    const hint = suggest(
      key,
      known.map((one) => one.key),
    );
    throw usageError(
      `"${key}" is not a reading of a corner or an axle that is one number${hint ? `; ${hint}` : ': jounce help readings-list'}`,
    );
  }
  return { entry, value };
}

const reachedInWords = (value: Reached, decimals: number): string =>
  typeof value === 'number'
    ? formatFixed(value, decimals)
    : value.left === value.right
      ? formatFixed(value.left, decimals)
      : `${formatFixed(value.left, decimals)} left, ${formatFixed(value.right, decimals)} right`;

/** "plateAcross −6, clampBolt 15": what of a setup is set on one axle. */
export function settingsInWords(settings: SetupDocument, axle: AxleName): string {
  const entries = (['both', 'left', 'right'] as const).flatMap((side) =>
    Object.entries(settings[axle]?.[side] ?? {}).map(
      ([name, value]) =>
        `${name}${side === 'both' ? '' : ` ${side}`} ${value === null ? 'concentric' : String(value).replace('-', '−')}`,
    ),
  );
  return entries.join(', ');
}

/** "tyreFront – strutTube short by 2.9"; null where no pair is short. @param withAxle - more than one is asked about */
export const shortInWords = ({ leastSpare }: Pick<Way, 'leastSpare'>, withAxle: boolean): string | null =>
  leastSpare && shortPairWords(leastSpare, { nameOf: harmless, length: (mm) => formatFixed(mm, 1), withAxle });

/** "least gap 10.7 mm", where it is known, and what is short of its margin. @param lead - before it */
export function gapInWords(
  { leastGap, leastSpare }: Pick<Way, 'leastGap' | 'leastSpare'>,
  lead: string,
  withAxle = false,
): string[] {
  if (leastGap === null) return [];
  const short = shortInWords({ leastSpare }, withAxle);
  // 0 is told where they cut and no depth is known
  const cut = leastGap <= 0 && leastSpare?.verdict !== 'cuts' ? ': parts cut into each other' : '';
  return wrap(`${lead}least gap ${formatFixed(leastGap, 1)} mm${cut}${short === null ? '' : `; ${short}`}`, `${lead}  `);
}

function waysInWords(
  document: CarDocument,
  title: string,
  entry: ReadingEntry,
  axle: AxleName,
  value: number,
  { from, ways: found }: Ways,
  style: TextStyle,
): string {
  const lines = wrap(title, '  ').map((line) => heading(line, style));
  lines.push(`  now ${reachedInWords(from, entry.decimals)}`);
  if (found.length === 0) lines.push('', ...wrap('  Nothing to do: it is there already, or no adjuster brings it nearer.', '  '));
  for (const way of found) lines.push('', ...wayInWords(document, entry, axle, way, sideOf(from, value), style));
  return [...lines, '', ...wrap(CAUTIONS)].join('\n');
}

/** Whether a way that misses falls short of the wanted value or goes past it: which of the two is by where one began. */
function sideOf(from: Reached, wanted: number): (reached: Reached) => 'short' | 'past' {
  const worst = (reached: Reached): number =>
    typeof reached === 'number'
      ? reached - wanted
      : [reached.left - wanted, reached.right - wanted].reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  return (reached) => (worst(from) > 0 === worst(reached) > 0 ? 'short' : 'past');
}

function wayInWords(
  document: CarDocument,
  entry: ReadingEntry,
  axle: AxleName,
  way: Way,
  missed: (reached: Reached) => string,
  style: TextStyle,
): string[] {
  const value = reachedInWords(way.value, entry.decimals);
  const short = way.reaches ? '' : `, ${formatFixed(way.missBy, entry.decimals)} ${missed(way.value)}`;
  const used = Object.entries(way.rangeUsed)
    .flatMap(([name, share]) =>
      share === null ? [] : [`${way.adjusters.length > 1 ? `${name} ` : ''}${Math.round(100 * share)} %`],
    )
    .join(', ');
  return [
    ...wrap(`  ${settingsInWords(way.settings, axle)}: ${value}${short}`, '    ').map((line) => heading(line, style)),
    ...(used === '' ? [] : [`    of its range ${used}`]),
    ...gapInWords(way, '    '),
    ...wrap(`    also ${changesInWords(document, way.changes)}`, '      '),
  ];
}
