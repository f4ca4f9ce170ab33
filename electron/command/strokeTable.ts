import { toDegrees, type EnvelopeRow, type FitUpWarning, type StrokeRow } from '../../geometry/index';
import { STROKE_CAUTIONS } from './cautions';
import { envelopesInWords, warningsInWords } from './jointsTable';
import { formatFixed, harmless, heading, tableLine, wrap, type Column, type TextStyle } from './textTable';

const number = (title: string): Column => ({ title, width: 10, align: 'right' });
const COLUMNS: readonly Column[] = [
  { title: '', width: 44, align: 'left' },
  number('left'),
  number('right'),
  { title: 'unit', width: 26, align: 'left' },
];

/** `stroke` as a table for 100 columns: an axle of a setup after the other, left beside right. */
export function strokeInWords(
  title: string,
  rows: readonly StrokeRow[],
  envelopes: readonly EnvelopeRow[],
  warnings: readonly FitUpWarning[],
  style: TextStyle,
): string {
  const lines = wrap(title, '  ').map((line) => heading(line, style));
  for (const left of rows.filter(({ side }) => side === 'left')) {
    const right = rows.find(({ setup, axle, side }) => side === 'right' && setup === left.setup && axle === left.axle)!;
    lines.push('', ...wrap(`${left.setup}, ${left.axle} axle`, '  ').map((line) => heading(line, style)));
    lines.push(
      tableLine(
        COLUMNS,
        COLUMNS.map(({ title: head }) => head),
      ),
    );
    lines.push(...axleInWords(left, right));
    lines.push(...reasonsInWords(left, right));
  }
  return [
    ...lines,
    ...envelopesInWords(envelopes),
    ...warningsInWords(warnings),
    '',
    ...STROKE_CAUTIONS.flatMap((caution) => wrap(caution)),
  ].join('\n');
}

type Of = (row: StrokeRow) => number | null;

const inDegrees = (angle: number | null | undefined): number | null =>
  angle === null || angle === undefined ? null : toDegrees(angle);

function axleInWords(left: StrokeRow, right: StrokeRow): string[] {
  const line = (words: string, unit: string, of: Of, decimals = 1): string =>
    tableLine(COLUMNS, [`  ${words}`, formatFixed(of(left), decimals), formatFixed(of(right), decimals), unit]);
  const lines = [
    line('stands at travel', 'mm from design', ({ standing }) => standing),
    line('damper, to first touch', 'mm of damper', ({ bumpLeft }) => bumpLeft),
    line('damper, to solid', 'mm of damper', ({ solidLeft }) => solidLeft),
    line('damper, to fully open', 'mm of damper', ({ droopLeft }) => droopLeft),
    line('spring loose below travel', 'mm from design', ({ looseAt }) => looseAt),
    line('spring binds from travel', 'mm from design', ({ bindAt }) => bindAt),
  ];
  if (left.barTwist !== null || right.barTwist !== null)
    lines.push(
      line('bar twisted at most, this wheel up', '°', ({ barTwist }) => inDegrees(barTwist?.greatest)),
      line('bar twisted at most, other wheel up', '°', ({ barTwist }) => inDegrees(barTwist?.least)),
    );
  if (left.shaft !== null || right.shaft !== null) {
    const allowed = left.shaft?.allowed ?? right.shaft?.allowed;
    const of = (value: number | null | undefined, decimals: number, unit: string): string =>
      value === null || value === undefined ? unit : `${unit}, ${formatFixed(value, decimals)} allowed`;
    lines.push(
      line('shaft pushed in by', of(allowed?.plungeIn, 1, 'mm'), ({ shaft }) => shaft?.plungeIn ?? null),
      line('shaft pulled out by', of(allowed?.plungeOut, 1, 'mm'), ({ shaft }) => shaft?.plungeOut ?? null),
      line('shaft’s inner joint bent by', of(inDegrees(allowed?.angleInner), 1, '°'), ({ shaft }) =>
        inDegrees(shaft?.angleInner),
      ),
      line('shaft’s outer joint bent by', of(inDegrees(allowed?.angleOuter), 1, '°'), ({ shaft }) =>
        inDegrees(shaft?.angleOuter),
      ),
    );
  }
  for (const name of Object.keys(left.spans)) {
    const length = left.spans[name]?.length ?? right.spans[name]?.length;
    const has = length === undefined ? 'mm' : `mm, ${formatFixed(length, 1)} long`;
    lines.push(
      line(`${name}: least`, 'mm', ({ spans }) => spans[name]?.least ?? null),
      line(`${name}: greatest`, has, ({ spans }) => spans[name]?.greatest ?? null),
    );
  }
  for (const { name, kind, material, diameter } of left.threads) {
    const of = (row: StrokeRow) => row.threads.find((thread) => thread.name === name && thread.kind === kind)!;
    const verdicts = [...new Set([left, right].map((row) => of(row).verdict ?? 'material?'))].join(', ');
    const title = kind === 'studs' ? 'studs hold by' : `${name}, each end holds by`;
    lines.push(
      line(
        title,
        `× ${formatFixed(diameter, 1)} mm${material === null ? '' : ` ${material}`}: ${verdicts}`,
        (row) => of(row).times,
        2,
      ),
    );
  }
  return lines;
}

/** Why something is empty, once where both sides have the same reason. */
function reasonsInWords(left: StrokeRow, right: StrokeRow): string[] {
  const keys = [...new Set([...Object.keys(left.why), ...Object.keys(right.why)])];
  return keys.flatMap((key) => {
    const words = WORDS[key] ?? key;
    const [a, b] = [left.why[key], right.why[key]];
    const say = (side: string, reason: string): string[] => wrap(`  ${words}${side}: ${harmless(reason)}`, '    ');
    if (a === b) return say('', a);
    return [...(a === undefined ? [] : say(' left', a)), ...(b === undefined ? [] : say(' right', b))];
  });
}

const WORDS: Readonly<Record<string, string>> = {
  bumpLeft: 'to first touch',
  solidLeft: 'to solid',
  droopLeft: 'to fully open',
  looseAt: 'spring loose',
  bindAt: 'spring binds',
  barTwist: 'bar',
  shaft: 'drive shaft',
  'shaft.angleInner': 'shaft’s inner joint',
};
