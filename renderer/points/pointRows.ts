import { designPoint, MM_PER_POINT_UNIT, type AxleDocument, type SideName, type Triple } from '../../geometry/index';
import type { ShownQuantity } from '../units/shownQuantity';

/** A point of one side of an axle as the table shows it. */
export interface PointLine {
  readonly name: string;
  /** what it joins */
  readonly role: string;
  /** in the file's unit, with the side's own sign of y; null on a side that has none */
  readonly at: Triple;
  /** the right side has its own, and is no mirror image */
  readonly own: boolean;
  /** own right-hand point less the mirror image of the left one, y outboard, in the file's unit */
  readonly apart: Triple | null;
  /** labels of the adjusters that move it */
  readonly adjusters: readonly string[];
  /** distance from where the saved car has it, in the file's unit; null where that has none */
  readonly moved: number | null;
}

const STRUT_ROLES: Readonly<Record<string, string>> = {
  armFront: 'lower arm to body, front',
  armRear: 'lower arm to body, rear',
  ballJoint: 'lower arm to knuckle',
  strutTop: 'strut top bearing',
  strutFoot: 'on the strut axis',
  clampUpper: 'strut bolt, upper',
  clampLower: 'strut bolt, lower',
  rackEnd: 'inner tie-rod ball',
  tieRodEnd: 'outer tie-rod ball',
  wheelCentre: 'spindle meets wheel plane',
};

/** "upper rod to body": what a point of the axle joins. */
export const roleOf = (axle: AxleDocument, name: string): string => {
  if (axle.layout === 'strut' && STRUT_ROLES[name]) return STRUT_ROLES[name];
  if (name === 'wheelCentre') return 'spindle meets wheel plane';
  const rods = Object.entries(axle.rods ?? {});
  const inner = rods.filter(([, ends]) => ends[0] === name).map(([rod]) => rod);
  const outer = rods.filter(([, ends]) => ends[1] === name).map(([rod]) => rod);
  if (inner.length > 0) return `${inner.join(', ')} to body`;
  if (outer.length > 0) return `${outer.join(', ')} to knuckle`;
  if (axle.trailingArm?.pivot === name) return 'trailing arm to body';
  const ends = (['spring', 'damper'] as const).flatMap((part) =>
    (['upper', 'lower'] as const).filter((end) => axle[part]?.[end] === name).map((end) => `${part}, ${end} end`),
  );
  return ends.length > 0 ? ends.join('; ') : 'not used';
};

/** The adjusters that move a point, or change a rod that ends at it. */
export const movers = (axle: AxleDocument, name: string): readonly string[] =>
  Object.entries(axle.adjusters ?? {}).flatMap(([key, adjuster]) => {
    const label = adjuster.label ?? key;
    switch (adjuster.kind) {
      case 'slide':
      case 'eccentric-bolt':
      case 'offset-bushing':
        return adjuster.moves === name ? [label] : [];
      case 'clamp-eccentric':
        return adjuster.bolt === name ? [label] : [];
      case 'turnbuckle':
      case 'perch':
        return [];
    }
  });

const distance = (a: Triple, b: Triple): number => {
  const [x, y, z] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  return Math.sqrt(x * x + y * y + z * z);
};

/**
 * The lines of the table, in the order of the file.
 * @param saved - the same axle of the car as saved
 * @param savedName - what a point is called there; null where it is not in it
 */
export const pointLines = (
  axle: AxleDocument,
  side: SideName,
  saved: AxleDocument | undefined,
  savedName: (point: string) => string | null = (point) => point,
): readonly PointLine[] =>
  Object.keys(axle.points).flatMap((name): readonly PointLine[] => {
    const at = designPoint(axle, side, name, 1);
    if (!at) return [];
    const right = axle.right?.points?.[name];
    const left = axle.points[name];
    const then = savedName(name);
    const before = saved && then !== null ? designPoint(saved, side, then, 1) : null;
    return [
      {
        name,
        role: roleOf(axle, name),
        at,
        own: right !== undefined,
        apart: right && left ? [right[0] - left[0], -right[1] - left[1], right[2] - left[2]] : null,
        adjusters: movers(axle, name),
        moved: before ? distance(at, before) : null,
      },
    ];
  });

/**
 * How far a right-hand point of its own is from the mirror image: only the axes in which it is.
 * @param apart - X, Y outboard, Z [mm]
 */
export const apartWords = (apart: Triple, length: ShownQuantity): string => {
  const none = length.formatChange(0);
  const parts = apart.flatMap((mm, axis) => {
    const words = length.formatChange(mm);
    return words === none ? [] : [`${'XYZ'.charAt(axis)}\u00a0${words}`];
  });
  return parts.length === 0 ? 'same' : parts.join(' · ');
};

/**
 * The table as tab-separated text, to be pasted into a spreadsheet; decimal points, and the unit in its head.
 * @param mm - of one unit of the file
 * @param unit - of the text
 */
export const pointsAsText = (lines: readonly PointLine[], mm: number, unit: 'mm' | 'in'): string => {
  const per = mm / MM_PER_POINT_UNIT[unit];
  const head = ['Point', ...['X', 'Y', 'Z'].map((axis) => `${axis} [${unit}]`)];
  return [head, ...lines.map(({ name, at }) => [name, ...at.map((v) => String(Number((v * per).toFixed(6))))])]
    .map((row) => row.join('\t'))
    .join('\n');
};
