import { describe, it } from 'vitest';
import { MOTION_WIDTH, solvePoses, toMechanism, type CarDocument, type Corner, type PoseTable } from '../../geometry/index';
import { judgeMechanism } from '../../geometry/setup/judgeMechanism';
import { assembleSide } from '../../geometry/setup/assembleSide';
import { explainUnreachable } from '../../geometry/corner/failure';
import { Breaches } from './breaches';
import { drawFrom } from './draw';
import { atDesign, follow, poseGap, type Followed } from './followLinkage';
import { WILD_MM } from './randomCars';
import { LAYOUTS, randomLinkage, type LayoutName } from './randomLinkages';
import { FOLD_MM, SAME_POSE_MM } from './tolerances';

/** Wild corners per layout; each is followed over ±150 mm in steps of 1 mm. */
const COUNT = 500;
const TRAVEL = 150;
const FIRST_SEED = 20_001;

interface WildCorner {
  readonly seed: number;
  readonly corner: Corner;
  readonly rack: number;
}

/** A left-hand corner with every coordinate up to 30 mm off, and a rack position for it. */
function wildCorner(layout: LayoutName, seed: number): WildCorner {
  for (let attempt = 0; ; attempt++) {
    const draw = drawFrom(seed * 97 + attempt);
    const linkage = randomLinkage(draw, layout, WILD_MM, 0);
    const wheel = { camber: draw.between(-4, 1), toe: draw.between(-0.4, 0.4), loadedRadius: 310 };
    const document: CarDocument = { format: 'jounce-car', version: 1, name: `Wild ${seed}`, front: { ...linkage, wheel } };
    if (judgeMechanism(document).length > 0) continue;
    const { front } = toMechanism(document);
    const side = assembleSide(front!, front!.left, front!.left.wheel, {}, undefined);
    if (!side.ok) throw new Error(`seed ${seed}: a design that does not stand: ${side.failure.message}`);
    const rack = linkage.steering === undefined || draw.chance(0.4) ? 0 : draw.between(-80, 80);
    return { seed, corner: side.value.corner, rack };
  }
}

const travels = Float64Array.from({ length: 2 * TRAVEL + 1 }, (_, i) => i - TRAVEL);
const tableOf = ({ corner, rack }: WildCorner): PoseTable =>
  solvePoses(corner, { travel: travels, rack: new Float64Array(travels.length).fill(rack) });

/** Turn between two neighbouring records [rad], and what the larger of their own twists makes of 1 mm. */
function turnBetween({ motions }: PoseTable, i: number): readonly [turn: number, expected: number] {
  const [a, b] = [i * MOTION_WIDTH, (i + 1) * MOTION_WIDTH];
  let sum = 0;
  for (let j = 0; j < 9; j++) {
    const d = motions[b + j] - motions[a + j];
    sum += d * d;
  }
  const rate = (from: number): number => Math.sqrt(motions[from + 15] ** 2 + motions[from + 16] ** 2 + motions[from + 17] ** 2);
  return [Math.sqrt(sum / 2), Math.max(rate(a), rate(b))];
}

/** Every so many positions are followed in another way too. */
const EVERY = 5;

/** Independent continuations: rack first, then travel up and down; what they do not reach is tried travel first and together. */
function reachedBy({ corner, rack }: WildCorner): Map<number, Followed | null> {
  const { linkage } = corner;
  const found = new Map<number, Followed | null>();
  const start = follow(linkage, atDesign(linkage), 0, rack, 4);
  for (const direction of [1, -1]) {
    let at: Followed & { readonly arrived: boolean } = start;
    for (let i = 0; i <= TRAVEL; i += EVERY) {
      if (at.arrived) at = follow(linkage, at, direction * i, rack, EVERY);
      found.set(TRAVEL + direction * i, at.arrived ? at : null);
    }
  }
  if (rack === 0) return found;
  for (const [i, one] of found) {
    if (one !== null) continue;
    const raised = follow(linkage, atDesign(linkage), travels[i], 0, 8);
    const both = raised.arrived ? follow(linkage, raised, travels[i], rack, 4) : raised;
    const together = both.arrived ? both : follow(linkage, atDesign(linkage), travels[i], rack, 4);
    if (together.arrived) found.set(i, together);
  }
  return found;
}

describe.each(LAYOUTS)('a wild %s', (layout) => {
  const title = `${COUNT} corners with 30 mm scatter over ±${TRAVEL} mm, seeds ${FIRST_SEED}–${FIRST_SEED + COUNT - 1}`;

  it(`does not jump between positions 1 mm apart, and is on the branch that leads from design: ${title}`, () => {
    const jumps = new Breaches();
    const branch = new Breaches();
    for (let seed = FIRST_SEED; seed < FIRST_SEED + COUNT; seed++) {
      const wild = wildCorner(layout, seed);
      const table = tableOf(wild);
      const where = (i: number): string => `seed ${seed} rack ${wild.rack} travel ${travels[i]}`;
      for (let i = 0; i + 1 < travels.length; i++) {
        if (table.status[i] !== 0 || table.status[i + 1] !== 0) continue;
        const [turn, expected] = turnBetween(table, i);
        jumps.limit(turn, 1.5 * expected + 1e-3, () => `${where(i)} turns`);
      }
      for (const [i, other] of reachedBy(wild)) {
        const solved = table.status[i] === 0;
        if (other !== null && solved)
          branch.limit(
            poseGap(other.pose, table.motions, i * MOTION_WIDTH),
            poseTolerance(table, i),
            () => `${where(i)} another pose`,
          );
        else if (other !== null) {
          const { missingMm } = explainUnreachable(wild.corner, travels[i], wild.rack);
          branch.check(
            missingMm !== undefined && missingMm <= FOLD_MM,
            () => `${where(i)}: called unreachable, ${missingMm} mm missing, but a path leads there`,
          );
        } else branch.check(!solved, () => `${where(i)}: solved, but no path leads there`);
      }
    }
    jumps.expectNone(COUNT * 100);
    branch.expectNone(COUNT * 50);
  });
});

/** Near a fold the knuckle moves far for the same residual: the closure times the twist. */
function poseTolerance({ motions }: PoseTable, i: number): number {
  const at = i * MOTION_WIDTH;
  const fastest = Math.max(...Array.from(motions.subarray(at + 12, at + 24), Math.abs));
  return SAME_POSE_MM * Math.max(1, fastest);
}
