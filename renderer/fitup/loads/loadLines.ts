import type { CaseLoads, LinkLoads, SideName } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import { inSentence } from '../../readings/inSentence';
import type { PlainTable } from '../../lengths/lengthTables';

type Link = CaseLoads['rows'][number];

/** One number of one link in every case. Forces in N, moments in N·m. */
export interface LoadLine {
  readonly key: string;
  readonly link: string;
  readonly kind: Link['kind'];
  readonly name: string;
  /** what of the link it is, in words */
  readonly note: string;
  readonly what: 'axial' | 'resultant' | 'bending';
  /** of each case in their order; null: it has none */
  readonly values: readonly (number | null)[];
  /** the case in which it is most */
  readonly worst: number | null;
  readonly why: string | null;
}

/** How a straight rod stands to giving way, in the case that pushes it most. */
export interface RodUnderPush {
  readonly link: string;
  readonly name: string;
  /** [N], the most of all cases; 0: never pushed */
  readonly push: number;
  readonly case: string;
  /** the load at which it gives way [N], and by what */
  readonly gives: number | null;
  readonly by: 'euler' | 'yield' | null;
  readonly times: number | null;
  readonly why: string | null;
}

const sizeOf = ([x, y, z]: readonly [number, number, number]): number => Math.sqrt(x * x + y * y + z * z);

/** The largest force that a link puts on the body; of a joint, on the knuckle. [N] */
export const resultantOf = ({ ends, kind }: Link): number | null => {
  const sizes = ends.filter(({ on }) => on === 'body' || kind === 'joint').map(({ force }) => sizeOf(force));
  return sizes.length === 0 ? null : Math.max(...sizes);
};

/** What reads 0 is no worst [N, N·m]. */
const SAID = 0.5;

const worstOf = (values: readonly (number | null)[]): number | null => {
  const most = Math.max(...values.map((value) => Math.abs(value ?? 0)));
  const index = values.findIndex((value) => value !== null && Math.abs(value) === most);
  return index < 0 || most < SAID ? null : index;
};

/** Where it bends, if that is the same in every case. */
const bendingNote = (rows: readonly (Link | null)[]): string => {
  const places = new Set(rows.flatMap((row) => (row?.bending ? [row.bending.place] : [])));
  const [place] = places;
  return places.size === 1 && place ? `bending, most at ${inSentence(nameOfKey(place))}` : 'bending';
};

/** Rows that can give way under push, or that one would ask it of. */
const PUSHED: readonly Link['kind'][] = ['rod', 'leg', 'beam', 'barLink'];

/** Two rods that are one arm go by both names. */
const linkName = (link: string): string => link.split('+').map(nameOfKey).join(' + ');

const KINDS: Readonly<Record<string, string>> = { beam: ', beam', arm: ', arm' };

/** What the links of one wheel carry, a number a line, in the order of the links. */
export const loadLines = (cases: readonly CaseLoads[], side: SideName): readonly LoadLine[] => {
  const own = cases.map(({ rows }) => rows.filter((row) => row.side === side));
  const links = own[0] ?? [];
  return links.flatMap((first) => {
    const rows = own.map((all) => all.find(({ link, kind }) => link === first.link && kind === first.kind) ?? null);
    const name = `${linkName(first.link)}${KINDS[first.kind] ?? ''}`;
    const line = (
      what: LoadLine['what'],
      of: (row: Link) => number | null,
      note: string,
      why: string | null = null,
    ): readonly LoadLine[] => {
      const values = rows.map((row) => (row ? of(row) : null));
      if (values.every((value) => value === null)) return [];
      return [
        {
          key: `${first.link}|${first.kind}|${what}`,
          link: first.link,
          kind: first.kind,
          name,
          note,
          what,
          values,
          worst: worstOf(values),
          why,
        },
      ];
    };
    // of a straight rod the force on the body is its axial force once more
    const isRod = first.kind === 'rod' || first.kind === 'leg';
    return [
      ...line('axial', ({ axial }) => axial, 'pull +, push −'),
      ...(isRod ? [] : line('resultant', resultantOf, first.kind === 'joint' ? 'on the knuckle' : 'most on the body')),
      ...line(
        'bending',
        ({ bending }) => (bending === null ? null : bending.moment / 1000),
        bendingNote(rows),
        first.why['bending'] ?? null,
      ),
    ];
  });
};

/** Straight rods under the most that pushes them: what is nearest to giving way first, what is not known last. */
export const rodsUnderPush = (cases: readonly CaseLoads[], side: SideName): readonly RodUnderPush[] => {
  const links = (cases[0]?.rows ?? []).filter((row) => row.side === side && PUSHED.includes(row.kind));
  const rods = links.map(({ link, why }): RodUnderPush => {
    let [push, name] = [0, ''];
    let found: Link['buckling'] = null;
    for (const one of cases) {
      const row = one.rows.find((other) => other.side === side && other.link === link);
      found ??= row?.buckling ?? null;
      if (!row || row.axial === null || -row.axial <= push) continue;
      [push, name, found] = [-row.axial, one.case.name, row.buckling];
    }
    const gives = found?.governs === 'euler' ? found.euler : (found?.yields ?? null);
    return {
      link,
      name: linkName(link),
      push,
      case: name,
      gives,
      by: found?.governs ?? null,
      times: found?.times ?? null,
      why: found === null ? (why['buckling'] ?? null) : null,
    };
  });
  const order = ({ times, why }: RodUnderPush): number => times ?? (why === null ? 1e12 : 1e13);
  return rods.sort((a, b) => order(a) - order(b));
};

/** Everything as it is copied and saved, in the file's units of force: N and N·m. */
export const loadsPlain = ({ cases }: LinkLoads): PlainTable => ({
  heads: [
    'case', 'invented', 'axle', 'side', 'link', 'kind', 'axial [N], tension +', 'largest on the body [N]', 'bending [N·m]',
    'times to giving way', 'end', 'on', 'x [mm]', 'y [mm]', 'z [mm]', 'Fx [N]', 'Fy [N]', 'Fz [N]',
  ], // prettier-ignore
  rows: cases.flatMap((one) =>
    one.rows.flatMap((row) =>
      row.ends.map(({ point, on, at, force }) => [
        one.case.name,
        one.case.invented ? 'invented' : '',
        row.axle,
        row.side,
        row.link,
        row.kind,
        row.axial,
        resultantOf(row),
        row.bending === null ? null : row.bending.moment / 1000,
        row.buckling?.times ?? null,
        point,
        on,
        ...at,
        ...force,
      ]),
    ),
  ),
});
