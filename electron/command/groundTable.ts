import type { ClearanceAnswer, GroundRow } from '../../geometry/index';
import { formatFixed, formatPlain, harmless, tableLine, wrap, type Column } from './textTable';

const COLUMNS: readonly Column[] = [
  { title: '', width: 34, align: 'left' },
  { title: '', width: 8, align: 'left' },
  { title: 'height', width: 8, align: 'right' },
  { title: 'needs', width: 6, align: 'right' },
  { title: 'spare', width: 8, align: 'right' },
  { title: 'verdict', width: 8, align: 'left' },
];

const ATTITUDES: Readonly<Record<GroundRow['attitude'], string>> = {
  standing: 'standing',
  'left-flat': 'both left tyres flat, on their rims',
  'right-flat': 'both right tyres flat, on their rims',
  solid: 'every damper solid',
};
const VERDICTS: Readonly<Record<GroundRow['verdict'], string>> = {
  clear: 'clear',
  close: 'close',
  short: 'SHORT',
  cuts: 'UNDER',
};

/** So many of the lowest parts of each setup and attitude; all are in --json. */
const LOWEST = 3;
/** A wheel that is less off the plane that the car stands on is not worth a word [mm]. */
const UNEVEN = 0.5;

/** The lowest points over the ground, by setup and attitude. */
export function groundInWords({ rows, stances }: NonNullable<ClearanceAnswer['ground']>): string[] {
  const lines = [
    'Over the ground, rack centred',
    ...wrap(
      `  mm. The ${LOWEST} lowest parts of each; roll + left side up, pitch + nose down. Travel does not change when tyres lose their air; tyres and rims are left out.`,
      '  ',
    ),
  ];
  for (const { setup, attitude, roll, pitch, unevenBy } of stances) {
    const lowest = rows.filter((row) => row.setup === setup && row.attitude === attitude).slice(0, LOWEST);
    const uneven = unevenBy >= UNEVEN ? `; the four wheels are ${formatFixed(unevenBy, 1)} mm off one plane` : '';
    const title = `${harmless(setup)}, ${ATTITUDES[attitude]}: roll ${formatFixed(roll, 2)}°, pitch ${formatFixed(pitch, 2)}°${uneven}`;
    lines.push('', ...wrap(title, '  '));
    if (lowest.length === 0) lines.push('  no part');
    else
      lines.push(
        tableLine(
          COLUMNS,
          COLUMNS.map(({ title: head }) => head),
        ),
      );
    for (const { part, axle, side, height, needs, spare, verdict } of lowest) {
      const where = axle === null ? side : `${axle} ${side === 'left' ? 'L' : 'R'}`;
      lines.push(
        tableLine(COLUMNS, [
          `  ${harmless(part)}`,
          where,
          formatFixed(height, 1),
          formatPlain(needs),
          formatFixed(spare, 1),
          VERDICTS[verdict],
        ]),
      );
    }
  }
  return lines;
}
