import {
  lockLostWords,
  type CarDocument,
  type ClearanceAnswer,
  type ClearanceRemedy,
  type ClearanceRow,
} from '../../geometry/index';
import { CLEARANCE_CAUTIONS } from './cautions';
import { groundInWords } from './groundTable';
import { changesInWords } from './influence';
import { warningsInWords } from './jointsTable';
import { formatFixed, formatPlain, harmless, heading, tableLine, wrap, type Column, type TextStyle } from './textTable';

const number = (title: string, width = 7): Column => ({ title, width, align: 'right' });
const COLUMNS: readonly Column[] = [
  { title: 'pair', width: 24, align: 'left' },
  { title: '', width: 1, align: 'left' },
  number('gap'),
  number('less', 6),
  number('needs', 5),
  number('spare'),
  { title: 'verdict', width: 10, align: 'left' },
  { title: 'setup', width: 9, align: 'left' },
  number('travel', 6),
  number('rack', 6),
];
const VERDICTS: Readonly<Record<ClearanceRow['verdict'], string>> = {
  clear: 'clear',
  close: 'close',
  short: 'SHORT',
  cuts: 'CUTS',
  'not-proved': 'not proved',
};

/** `clearance` as a table for 100 columns, the least to spare first. */
export function clearanceInWords(
  document: CarDocument,
  setups: readonly string[],
  { rows, envelope, missing, warnings, ground }: ClearanceAnswer,
  style: TextStyle,
): string {
  const lines = [
    ...wrap(`${document.name}: clearance over ${setups.join(', ')}`, '  ').map((line) => heading(line, style)),
    ...wrap(
      '  mm. gap: the least over all travel, lock and setups, negative where they cut; less: by how much it could be less between the positions looked at; needs: the margin asked for; travel from design, rack: where it is least.',
      '  ',
    ),
  ];
  const lacking = warnings.filter(({ code }) => code === 'no-envelope');
  lines.push(...warningsInWords(lacking));
  for (const axle of ['front', 'rear'] as const) {
    const of = rows.filter((row) => row.axle === axle);
    if (of.length === 0) continue;
    lines.push('', tableLine(COLUMNS, [axle, ...COLUMNS.slice(1).map(({ title }) => title)]));
    for (const row of of) lines.push(...rowInWords(document, row));
  }
  if (rows.length === 0 && envelope.length > 0)
    lines.push('', ...wrap(`  ${nothingMeets(envelope)}: give it parts, or rods a section.`, '  '));
  if (ground !== undefined) lines.push('', ...groundInWords(ground));
  lines.push('', ...unreachableInWords(envelope));
  // what is said at the head is not said again
  const left = missing.filter((one) => !lacking.some(({ message }) => message === one));
  lines.push(...left.flatMap((one) => wrap(`left out: ${harmless(one)}`, '  ')));
  lines.push(...warningsInWords(warnings.filter((one) => !lacking.includes(one))));
  return [...lines, '', ...CLEARANCE_CAUTIONS.flatMap((caution) => wrap(caution))].join('\n');
}

/** Said only of axles that were looked at. */
function nothingMeets(envelope: ClearanceAnswer['envelope']): string {
  const axles = [...new Set(envelope.map(({ axle }) => axle))];
  return `No two parts of the ${axles.join(' or the ')} axle move against each other`;
}

function rowInWords(document: CarDocument, row: ClearanceRow): string[] {
  const { pair, side, clearance, bound, needs, spare, verdict, surfaceOnly, at, cuts, wouldClear } = row;
  // of what cuts and has no depth only that is known
  const gap = cuts && clearance === 0 ? 'cuts' : formatFixed(clearance, 2);
  const line = tableLine(COLUMNS, [
    `  ${harmless(pair.join(' – '))}`,
    side === 'left' ? 'L' : 'R',
    gap,
    formatFixed(bound, 2),
    formatPlain(needs),
    cuts && clearance === 0 ? '' : formatFixed(spare, 2),
    VERDICTS[verdict],
    harmless(at.setup),
    formatFixed(at.travel, 1),
    formatFixed(at.rack, 1),
  ]);
  return [
    line,
    ...surfaceOnly.flatMap((name) =>
      wrap(`    surface only: ${harmless(name)} is not closed, and what stands within it is not told`, '      '),
    ),
    ...wouldClear.flatMap((remedy) =>
      wrap(
        `    would clear${remedy.stillShort.length > 0 ? ` in ${harmless(remedy.setup ?? '')} alone` : ''}: ${harmless(remedyInWords(document, row, remedy))}`,
        '      ',
      ),
    ),
  ];
}

function remedyInWords(document: CarDocument, row: ClearanceRow, remedy: ClearanceRemedy): string {
  const { at, needs, surfaceOnly } = row;
  const { by, adjuster, setup, from, to, clearance, bound, stillShort, changes } = remedy;
  const value = (number_: number | null): string => (number_ === null ? 'none' : formatPlain(number_));
  const isProved = clearance - bound >= needs && surfaceOnly.length === 0;
  const doubt = isProved ? '' : `, not proved (${formatFixed(bound, 2)} less is possible)`;
  const others = stillShort.map((other) => `; ${other.setup} is short too, ${formatFixed(other.clearance, 2)}, and stays so`);
  const then = `then ${formatFixed(clearance, 2)}${doubt}${others.join('')}`;
  if (by === 'rack') {
    const lost = lockLostWords(
      changes,
      row,
      (degrees) => `${formatFixed(degrees, 1)}°`,
      (mm) => `${formatFixed(mm, 0)} mm`,
    );
    return `a rack stop at ${value(to)} instead of ${value(from)} mm, ${then}; ${lost}`;
  }
  if (by === 'travel') {
    const which = at.travel > 0 ? 'bump' : 'droop';
    return `a ${which} stop at ${value(to)} instead of ${formatFixed(from, 1)} mm of travel from design, ${then}`;
  }
  return `${adjuster ?? ''} at ${value(to)} instead of ${value(from)} on both wheels in ${setup ?? at.setup}, ${then}; ${pricesInWords(document, changes)}`;
}

const MOST_PRICES = 5;

/** What changes most; the rest is in --json. */
function pricesInWords(document: CarDocument, changes: ClearanceRemedy['changes']): string {
  const all = changesInWords(document, changes).split(', ');
  const more = all.length > MOST_PRICES ? `, and ${all.length - MOST_PRICES} more` : '';
  return `${all.slice(0, MOST_PRICES).join(', ')}${more}`;
}

function unreachableInWords(envelope: ClearanceAnswer['envelope']): string[] {
  return envelope.flatMap(({ setup, axle, side, unreachable }) => {
    const [first] = unreachable;
    if (first === undefined) return [];
    return wrap(
      `not reached: ${axle} ${side}, setup ${harmless(setup)}, ${unreachable.length} positions, the first at travel ${formatFixed(first.travel, 1)}, rack ${formatFixed(first.rack, 1)}: ${harmless(first.message)}. Nothing there is clear.`,
      '  ',
    );
  });
}
