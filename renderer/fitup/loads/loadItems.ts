import { loadArrows, type ArrowView, type CaseLoads, type SideName } from '../../../geometry/index';
import type { DrawnForce } from '../view/fitUpContent';

/** What is less than this is in the table only [N]. */
const LEAST_LABEL = 200;
/** The longest arrow [mm], and steps in which the scale is chosen [mm per kN]. */
const LONGEST = 330;
const SCALES = [100, 50, 30, 20, 10, 5, 3, 2, 1, 0.5] as const;

const sizeOf = ([x, y, z]: readonly [number, number, number]): number => Math.sqrt(x * x + y * y + z * z);

/** The forces of one wheel in a case as arrows, and how long a kN is drawn [mm]. */
export const drawnLoads = (
  one: CaseLoads,
  view: ArrowView,
  side: SideName,
  words: (newtons: number) => string,
): { readonly forces: readonly DrawnForce[]; readonly perKilonewton: number } => {
  const arrows = loadArrows(one, view).filter((arrow) => arrow.side === side);
  const most = Math.max(1, ...arrows.map(({ force }) => sizeOf(force)));
  const perKilonewton = SCALES.find((scale) => (scale * most) / 1000 <= LONGEST) ?? 0.5;
  const forces = arrows.map(({ at, force: [x, y, z], link, sense }): DrawnForce => {
    const size = sizeOf([x, y, z]);
    const factor = perKilonewton / 1000;
    const word = link === null ? 'given' : sense === 'push' ? 'push' : sense === 'pull' ? 'pull' : '';
    const label =
      size < LEAST_LABEL ? '' : [words(sense === 'push' ? -size : size), word].filter((part) => part !== '').join(' ');
    return {
      at,
      arrow: [factor * x, factor * y, factor * z],
      kind: link === null ? 'given' : (sense ?? 'plain'),
      label,
    };
  });
  return { forces, perKilonewton };
};
