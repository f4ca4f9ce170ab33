import { describe, it } from 'vitest';
import { MOTION_WIDTH, solvePoses, type Corner } from '../../geometry/index';
import { explainUnreachable } from '../../geometry/corner/failure';
import { AXLES, carsOf, FULL_TRAVEL, lockOf, SIDES } from './assembled';
import { Breaches } from './breaches';
import { follow, poseGap, settled, type Followed } from './followLinkage';
import { layoutsOf, SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { FOLD_MM, SAME_POSE_MM } from './tolerances';

const TRAVELS = [-FULL_TRAVEL, -45, -15, 0, 25, 55, FULL_TRAVEL];

/** A pose of the library at every travel of one rack position against Newton on the same constraints. */
function compareCorner(breaches: Breaches, corner: Corner, start: Followed, rack: number, where: string): void {
  const { linkage } = corner;
  const table = solvePoses(corner, { travel: TRAVELS, rack: TRAVELS.map(() => rack) });
  const steered = follow(linkage, start, 0, rack, 8);
  for (const [i, travel] of TRAVELS.entries()) {
    const here = (): string => `${where} travel ${travel} rack ${rack}`;
    const first = steered.arrived ? follow(linkage, steered, travel, rack, 8) : steered;
    const raised = first.arrived ? first : follow(linkage, start, travel, 0, 8);
    const other = first.arrived ? first : raised.arrived ? follow(linkage, raised, travel, rack, 8) : raised;
    const solved = table.status[i] === 0;
    if (solved && other.arrived) {
      const from = i * MOTION_WIDTH;
      const fastest = Math.max(1, ...Array.from(table.motions.subarray(from + 12, from + 24), Math.abs));
      breaches.limit(poseGap(other.pose, table.motions, from), SAME_POSE_MM * fastest, here);
    } else if (solved !== other.arrived) {
      const { missingMm } = explainUnreachable(corner, travel, rack);
      const together = solved ? follow(linkage, start, travel, rack, 4) : other;
      breaches.check(
        solved ? together.arrived : missingMm! <= FOLD_MM,
        () => `${here()}: reached ${solved}, by the other way ${other.arrived}, ${missingMm} mm missing`,
      );
    }
  }
}

describe('the closed form of a strut', () => {
  it(`is Newton's answer on its rods and its guide, adjusters moved, over full travel and lock, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    let unsettled = 0;
    for (const { seed, document, setup, car, draw } of carsOf(
      SEEDS.filter((s) => Object.values(layoutsOf(s)).includes('strut')),
    )) {
      for (const axle of AXLES) {
        if (document[axle]!.layout !== 'strut') continue;
        const side = draw.pick(SIDES);
        const { corner } = car[axle]![side];
        const start = settled(corner.linkage);
        if (start === null) unsettled++;
        const [low, high] = lockOf(document[axle]!);
        for (const rack of low === high ? [0] : [low, 0, high])
          if (start !== null) compareCorner(breaches, corner, start, rack, `seed ${seed} ${setup} ${axle} ${side}`);
      }
    }
    breaches.expectNone(8_000);
    // wild settings that plain Newton cannot put together in one go
    breaches.check(unsettled < 10, () => `${unsettled} corners were left out`);
    breaches.expectNone(0);
  });
});

describe('the pose of a multi-link corner', () => {
  it(`is that of another Newton on the same constraints, adjusters moved, over full travel and lock, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS)) {
      for (const axle of AXLES) {
        if (document[axle]!.layout === 'strut') continue;
        const side = draw.pick(SIDES);
        const { corner } = car[axle]![side];
        const start = settled(corner.linkage);
        const [low, high] = lockOf(document[axle]!);
        if (start !== null)
          compareCorner(breaches, corner, start, draw.pick([low, 0, high]), `seed ${seed} ${setup} ${axle} ${side}`);
      }
    }
    breaches.expectNone(12_000);
  });
});
