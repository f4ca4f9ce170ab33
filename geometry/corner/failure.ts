import type { AxleName, SideName } from '../car/document';
import { singularValues } from '../core/linear';
import { add, cross, scale, subtract, unit, type Vector } from '../core/vector';
import type { Corner, Linkage } from './corner';
import { knucklePoint, wheelCentre } from './knucklePoint';
import { FOLD, PAST_ARC_END, SOLVED, STRUT_TOO_SHORT, TIE_ROD_SHORT, type Motion } from './motion';
import { largestStepOf, pathsTo, walkMultiLink } from './multiLink';
import { searchStrut } from './strut';
import { strutZeroHeight } from './strutKernel';

/**
 * Why there is no answer. `unreachable`: the links cannot be there; `singular`: they do not hold the wheel; `setup`: the setup
 * names what the car has not, or gives it no finite number.
 */
export interface Failure {
  readonly kind: 'unreachable' | 'singular' | 'setup';
  readonly message: string;
  readonly axle?: AxleName;
  readonly side?: SideName;
  /** what is lacking [mm]: of travel, of rod, of strut */
  readonly missingMm?: number;
  /** condition number of the scaled Jacobian where it stopped */
  readonly condition?: number;
  /** the link that stops it */
  readonly limitedBy?: string;
}

/** Rows of the constraints at a pose, rotations scaled to mm by the loaded radius: [u, (q − W) × u / r]. */
export function constraintRows(
  linkage: Linkage,
  corner: Corner,
  motion: Motion,
  rack: number,
): { readonly names: string[]; readonly rows: number[][] } {
  const names: string[] = [];
  const rows: number[][] = [];
  const push = (name: string, point: Vector, u: Vector): void => {
    const moment = scale(cross(subtract(point, wheelCentre(motion)), u), 1 / corner.loadedRadius);
    names.push(name);
    rows.push([...u, ...moment]);
  };
  for (const rod of linkage.rods) {
    const outer = knucklePoint(corner, motion, rod.outer);
    push(rod.name, outer, unit(subtract(outer, add(rod.inner, scale(rod.rack, rack)))));
  }
  if (linkage.pivot !== null) {
    const arm = knucklePoint(corner, motion, linkage.pivot.onArm);
    for (const across of linkage.pivot.across) push('trailingArm', arm, across);
  }
  return { names, rows };
}

/**
 * The words and numbers of a position that cannot be reached. Asked for only when somebody wants to know: the solvers
 * return a bare code.
 */
export function explainUnreachable(corner: Corner, travel: number, rack: number): Failure {
  return corner.linkage.layout === 'strut' ? explainStrut(corner, travel, rack) : explainMultiLink(corner, travel, rack);
}

function explainStrut(corner: Corner, travel: number, rack: number): Failure {
  const found = searchStrut(corner.kernel, strutZeroHeight(corner.kernel) + travel, rack, corner.home.slice());
  const missing = found.missingMm;
  const nearest = found.nearestTravel;
  const where =
    nearest === null ? '' : ` The nearest travel that can be reached is ${tenths(nearest)} mm, ${missing.toFixed(2)} mm away.`;
  const common = { kind: 'unreachable' as const, side: corner.side, missingMm: missing };
  switch (found.status) {
    case SOLVED:
    case FOLD:
    case PAST_ARC_END:
      return {
        ...common,
        message: `${place(corner, travel, rack)}: past the end of the lower arm's arc.${where}`,
        limitedBy: 'armFront',
      };
    case STRUT_TOO_SHORT:
      return {
        ...common,
        message: `${place(corner, travel, rack)}: the ball joint would come nearer to the strut's top than the strut allows.${where || ` ${missing.toFixed(2)} mm are missing.`}`,
        limitedBy: 'strut',
      };
    case TIE_ROD_SHORT:
      return {
        ...common,
        message: `${place(corner, travel, rack)}: the tie rod does not reach.${where || ` ${missing.toFixed(2)} mm are missing.`}`,
        limitedBy: 'tieRod',
      };
  }
}

function explainMultiLink(corner: Corner, travel: number, rack: number): Failure {
  let best = { travel: 0, rack: 0 };
  let bestMotion: Motion = corner.home;
  let least = Infinity;
  for (const path of pathsTo(travel, rack)) {
    const walker = corner.home.slice();
    let from = { travel: 0, rack: 0 };
    for (const [toTravel, toRack] of path) {
      const walk = walkMultiLink(corner.kernel, walker, from.travel, from.rack, toTravel, toRack, largestStepOf(corner));
      from = walk;
      if (!walk.arrived) break;
    }
    const missing = Math.max(Math.abs(travel - from.travel), Math.abs(rack - from.rack));
    if (missing < least) {
      least = missing;
      best = from;
      bestMotion = walker;
    }
  }
  const { names, rows } = constraintRows(corner.linkage, corner, bestMotion, best.rack);
  const driven = [...rows, [0, 0, 1, 0, 0, 0]];
  const { values, weakestRows } = singularValues(driven);
  const weakest = names.reduce((worst, _, i) => (Math.abs(weakestRows[i]) > Math.abs(weakestRows[worst]) ? i : worst), 0);
  const condition = values[0] / values[values.length - 1];
  const rackWords = rack === 0 ? '' : ` at rack ${tenths(best.rack)} mm`;
  return {
    kind: 'unreachable',
    side: corner.side,
    message: `${place(corner, travel, rack)}: the links fold before it. Followed from design, the last travel that closes is ${tenths(best.travel)} mm${rackWords}, ${least.toFixed(2)} mm short; ${names[weakest]} stops it.`,
    missingMm: least,
    condition,
    limitedBy: names[weakest],
  };
}

const place = (corner: Corner, travel: number, rack: number): string =>
  `${corner.side === 'left' ? 'Left' : 'Right'} wheel at travel ${tenths(travel)} mm${rack === 0 ? '' : `, rack ${tenths(rack)} mm`} from design`;

/** With one decimal and a true minus. */
const tenths = (mm: number): string => mm.toFixed(1).replace('-', '−');
