import { toDegrees, type EnvelopeRow, type FitUpWarning, type JointRow } from '../../geometry/index';
import { JOINT_CAUTIONS } from './cautions';
import { formatFixed, harmless, heading, tableLine, wrap, type Column, type TextStyle } from './textTable';

const number = (title: string, width = 6): Column => ({ title, width, align: 'right' });
const COLUMNS: readonly Column[] = [
  { title: '', width: 46, align: 'left' },
  number('tilt'),
  number('rated'),
  number('spare'),
  number('travel', 7),
  number('rack'),
  number('then'),
];

const degrees = (angle: number | null): string => formatFixed(angle === null ? null : toDegrees(angle), 2);

/** `joints` as a table for 100 columns. */
export function jointsInWords(
  title: string,
  rows: readonly JointRow[],
  envelopes: readonly EnvelopeRow[],
  warnings: readonly FitUpWarning[],
  style: TextStyle,
): string {
  const lines = [
    ...wrap(title, '  ').map((line) => heading(line, style)),
    ...wrap(
      '  Greatest over travel and lock, degrees; travel from design and rack in mm, where it is greatest; then: the greatest with the best bolt, which is given as the file gives bolt.',
      '  ',
    ),
    '',
  ];
  if (rows.length > 0)
    lines.push(
      tableLine(
        COLUMNS,
        COLUMNS.map(({ title: head }) => head),
      ),
    );
  const manySetups = new Set(envelopes.map(({ setup }) => setup)).size > 1;
  for (const row of rows) {
    lines.push(rowInWords(row), ...boltInWords(row, manySetups));
    if (row.tilt === null) lines.push(...wrap(`      not known: ${row.why['tilt']}`, '      '));
  }
  return [
    ...lines,
    ...envelopesInWords(envelopes),
    ...warningsInWords(warnings),
    '',
    ...JOINT_CAUTIONS.flatMap((caution) => wrap(caution)),
  ].join('\n');
}

/** In which setup, where there are several, and the best bolt. */
function boltInWords({ at, bestBolt }: JointRow, manySetups: boolean): string[] {
  if (at === null || bestBolt === null) return [];
  const where = manySetups ? `in ${harmless(at.setup)}; ` : '';
  return wrap(`      ${where}best bolt [${bestBolt.map((value) => formatFixed(value, 3)).join(', ')}]`, '      ');
}

function rowInWords({ point, axle, side, tilt, rated, spare, at, tiltThen }: JointRow): string {
  return tableLine(COLUMNS, [
    `  ${axle} ${side} ${point}`,
    degrees(tilt),
    degrees(rated),
    degrees(spare),
    formatFixed(at?.travel ?? null, 1),
    formatFixed(at?.rack ?? null, 1),
    degrees(tiltThen),
  ]);
}

/** Ends of the travel and of the lock, one line each. */
export function envelopesInWords(envelopes: readonly EnvelopeRow[]): string[] {
  if (envelopes.length === 0) return [];
  const lines = envelopes.map(({ setup, axle, side, open, touch, solid, rackMin, rackMax, unreachable }) => {
    const rack = rackMin === rackMax ? '' : `, rack ${formatFixed(rackMin, 1)} to ${formatFixed(rackMax, 1)}`;
    const first = touch === null ? '' : `, first touch at ${formatFixed(touch, 1)}`;
    const not = unreachable.length === 0 ? '' : `; not reached: ${unreachable.length}`;
    return `  ${harmless(setup)}, ${axle} ${side}: travel ${formatFixed(open, 1)} to ${formatFixed(solid, 1)}${first}${rack} mm${not}`;
  });
  return ['', '  Looked at, travel from design:', ...lines.flatMap((line) => wrap(line, '    '))];
}

export const warningsInWords = (warnings: readonly FitUpWarning[]): string[] =>
  warnings.length === 0 ? [] : ['', ...warnings.flatMap(({ message }) => wrap(`warning: ${harmless(message)}`, '  '))];
