import {
  findReading,
  mattersOf,
  type CarDocument,
  type Influence,
  type InfluenceQuestion,
  type InfluenceRow,
  type Numbers,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { CAUTIONS } from './cautions';
import { usageError } from './commandError';
import { askedPosition, axlesAsked, changedSetup, titleOf } from './question';
import { UNITS } from './readings';
import { formatDifference, formatFixed, formatPlain, heading, wrap, type TextStyle } from './textTable';

/** `influence`: what one step of every adjuster does to every reading. */
export async function answer({ car, options, study }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const at = askedPosition(options);
  const { name, setup } = changedSetup(car, options.setup, options.set);
  const question: InfluenceQuestion = {
    setup,
    axles: axlesAsked(car, options),
    side: options.side ?? 'both',
    toeReset: options['toe-reset'],
    at,
    withLocked: options.locked === true,
  };
  const answered = await study({ study: 'influence', document: car.document, question });
  const head = { car: car.document.name, setup: name, units: UNITS };
  const { travel = 0, rack = 0, roll = 0 } = options;
  const title = titleOf(car, name, options);
  return {
    document: { ...head, at: { travel, rack, roll }, ...answered },
    words: (style) => influenceInWords(car.document, title, answered, style),
  };
}

/** A change below this part of what matters is not worth its line. */
const WORTH_SAYING = 0.1;

function influenceInWords(
  document: CarDocument,
  title: string,
  { rows, alike, independent }: Influence,
  style: TextStyle,
): string {
  const lines = wrap(title, '  ').map((line) => heading(line, style));
  for (const row of rows) lines.push('', ...rowInWords(document, row, style));
  if (rows.length === 0)
    lines.push('', 'No adjuster to turn: the axle has none, or the rules lock them (--locked turns these too).');
  lines.push('');
  for (const { axle, adjusters, angle } of alike)
    lines.push(...wrap(`Alike on the ${axle} axle: ${adjusters.join(' and ')} do the same, ${formatPlain(angle)}° apart.`, '  '));
  if (rows.length > 0)
    lines.push(
      ...wrap(`These steps set ${independent} ${independent === 1 ? 'reading' : 'readings'} independently of each other.`, '  '),
    );
  return [...lines, '', ...wrap(CAUTIONS)].join('\n');
}

const stepWords = ({ step, unit }: InfluenceRow): string =>
  `${formatPlain(step)} ${unit}${unit === 'turn' && step > 1 ? 's' : ''}`;

function rowInWords(document: CarDocument, row: InfluenceRow, style: TextStyle): string[] {
  const sides = row.side === 'both' ? 'both sides' : `${row.side} side`;
  const head = heading(`${row.axle} ${row.adjuster}, ${sides}, by ${stepWords(row)}${row.curved ? ', curved' : ''}`, style);
  if (row.fit !== undefined) {
    const fits = row.fit.flatMap(({ clock, changes }) => {
      const words = changes === null ? (row.why[`fit.${clock}`] ?? '') : changesInWords(document, changes);
      return wrap(`  fitted at ${formatPlain(clock)}°: ${words}`, '    ');
    });
    return [head, ...fits];
  }
  return [head, ...stepInWords(document, row, 'more', '+'), ...stepInWords(document, row, 'less', '−')];
}

function stepInWords(document: CarDocument, row: InfluenceRow, key: 'more' | 'less', sign: string): string[] {
  const changes = row[key];
  return wrap(`  ${sign} ${changes === null ? row.why[key] : changesInWords(document, changes)}`, '    ');
}

/** What changes enough to count, the heaviest first: left and right as one where they are alike. */
export function changesInWords(document: CarDocument, changes: Numbers): string {
  const told = Object.entries(changes).flatMap(([name, change]) => {
    const key = name.split('.').at(-1) ?? '';
    const entry = findReading(key);
    const matters = mattersOf(document, key);
    if (!entry || matters === undefined || change === null) return [];
    const weight = Math.abs(change) / matters;
    return weight < WORTH_SAYING ? [] : [{ name, entry, change, weight }];
  });
  const words = new Map<string, { readonly text: string; readonly weight: number }>();
  for (const { name, entry, change, weight } of told) {
    const other = name.replace('.left.', '.right.');
    const twin = other === name ? undefined : changes[other];
    const isPair =
      twin !== null && twin !== undefined && formatFixed(twin, entry.decimals) === formatFixed(change, entry.decimals);
    if (name.includes('.right.') && words.has(name.replace('.right.', '.both '))) continue;
    const said = isPair ? name.replace('.left.', '.both ') : name.replaceAll('.', ' ');
    words.set(said, {
      text: `${said.replace('.both ', ' ').replaceAll('.', ' ')} ${formatDifference(change, entry.decimals)}`,
      weight,
    });
  }
  const sorted = [...words.values()].sort((a, b) => b.weight - a.weight).map(({ text }) => text);
  return sorted.length === 0 ? 'nothing that matters' : sorted.join(', ');
}
