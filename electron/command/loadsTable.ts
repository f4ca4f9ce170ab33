import type { CaseLoads, LinkLoad, LinkLoads, LoadCase } from '../../geometry/index';
import { LOAD_CAUTIONS } from './cautions';
import type { Options } from './options';
import { formatFixed, formatPlain, harmless, heading, NO_VALUE, tableLine, wrap, type Column, type TextStyle } from './textTable';

const number = (title: string): Column => ({ title, width: 7, align: 'right' });
const COLUMNS: readonly Column[] = [
  { title: '', width: 26, align: 'left' },
  number('axial L'),
  number('axial R'),
  number('body L'),
  number('body R'),
  number('bend L'),
  number('bend R'),
  number('times L'),
  number('times R'),
];

/** `loads` as a table for 100 columns: of every link its axial force, its push on the body, its bending and what it can take. */
export function loadsInWords(title: string, { cases, warnings }: LinkLoads, options: Options, style: TextStyle): string {
  const { travel = 0, rack = 0, roll = 0 } = options;
  const asked =
    typeof travel === 'number' ? formatPlain(travel) : `${formatPlain(travel.left)} left, ${formatPlain(travel.right)} right`;
  const lines = [
    ...wrap(title, '  ').map((line) => heading(line, style)),
    ...wrap(`  travel from standing ${asked} mm, rack ${formatPlain(rack)} mm, roll ${formatPlain(roll)}°`, '  '),
    ...wrap(
      '  L left, R right. axial: N, tension +; body: N, the largest force on the body, of a joint on the knuckle; bend: greatest bending, N·m; times: how many times the push it takes to buckle or yield. --json has every end as a vector.',
      '  ',
    ),
  ];
  for (const one of cases) lines.push('', ...caseInWords(one, style));
  const rules = [...new Set(cases.map((one) => one.case.rule).filter((rule) => rule !== null))];
  lines.push('', ...rules.flatMap((rule) => wrap(`Rule: ${rule}`, '  ')));
  lines.push(...warnings.flatMap(({ message }) => wrap(`warning: ${harmless(message)}`, '  ')));
  return [...lines, '', ...LOAD_CAUTIONS.flatMap((caution) => wrap(caution))].join('\n');
}

function caseInWords(one: CaseLoads, style: TextStyle): string[] {
  const { name, invented, g } = one.case;
  const by = g === null ? '' : `, ${gInWords(g)}`;
  const lines = wrap(`${name}${by}${invented ? ' (invented: put your own in)' : ''}`, '  ').map((line) => heading(line, style));
  for (const axle of ['front', 'rear'] as const) {
    const rows = one.rows.filter((row) => row.axle === axle);
    if (rows.length === 0) continue;
    lines.push(tableLine(COLUMNS, [` ${axle}`, ...COLUMNS.slice(1).map(({ title }) => title)]));
    lines.push(...givenInWords(one.case, axle));
    for (const left of rows.filter(({ side }) => side === 'left')) {
      const right = rows.find((row) => row.side === 'right' && row.link === left.link);
      lines.push(linkInWords(left, right));
    }
    lines.push(...carriedInWords(one, axle));
  }
  lines.push(`  in balance to ${one.residual.toExponential(0)} of the load`);
  return lines;
}

const gInWords = ([lateral, longitudinal]: readonly [number, number]): string => {
  if (lateral === 0 && longitudinal === 0) return 'at rest';
  const across = lateral === 0 ? [] : [`${formatPlain(Math.abs(lateral))} g to the ${lateral > 0 ? 'left' : 'right'}`];
  const along =
    longitudinal === 0 ? [] : [`${formatPlain(Math.abs(longitudinal))} g ${longitudinal > 0 ? 'forward' : 'of braking'}`];
  return [...across, ...along].join(' and ');
};

const newtons = (value: number): string => formatFixed(value, 0);

function givenInWords(one: LoadCase, axle: 'front' | 'rear'): string[] {
  const wheels = one[axle];
  if (wheels === null) return [];
  return (['left', 'right'] as const).map((side) => {
    const { Fx, Fy, Fz, Mz, driven } = wheels[side];
    const turned = Mz === 0 ? '' : `, Mz ${newtons(Mz / 1000)} N·m`;
    return `  given ${side}: Fx ${newtons(Fx)}, Fy ${newtons(Fy)}, Fz ${newtons(Fz)} N${turned}${driven ? ', Fx at the wheel centre' : ''}`;
  });
}

function linkInWords(left: LinkLoad, right: LinkLoad | undefined): string {
  const both = (of: (row: LinkLoad) => string): string[] => [of(left), right === undefined ? NO_VALUE : of(right)];
  const onBody = ({ ends, kind }: LinkLoad): string => {
    const forces = ends
      .filter(({ on }) => on === 'body' || kind === 'joint')
      .map(({ force: [x, y, z] }) => Math.sqrt(x * x + y * y + z * z));
    return forces.length === 0 ? NO_VALUE : newtons(Math.max(...forces));
  };
  return tableLine(COLUMNS, [
    `  ${left.link}${left.kind === 'joint' ? ', joint' : ''}`,
    ...both(({ axial }) => formatFixed(axial, 0)),
    ...both(onBody),
    ...both(({ bending }) => formatFixed(bending === null ? null : bending.moment / 1000, 0)),
    ...both(({ buckling }) =>
      buckling === null || buckling.times === null ? NO_VALUE : formatFixed(buckling.times, buckling.times < 10 ? 1 : 0),
    ),
  ]);
}

function carriedInWords({ carried }: CaseLoads, axle: 'front' | 'rear'): string[] {
  return carried
    .filter((one) => one.axle === axle)
    .flatMap(({ side, by, total, own, beyond }) => {
      const parts = own === null || beyond === null ? '' : `: ${newtons(own)} N of its own, ${newtons(beyond)} N beyond`;
      return wrap(
        `  ${side}: ${by === 'held' ? 'held at the wheel centre with' : `along the ${by}`} ${newtons(total)} N${parts}`,
        '    ',
      );
    });
}
