import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { parseCar } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import { placeSetup } from '../../../renderer/compute/placeSetup';
import { askedSetups, jointsOrder, meshesOfCar } from '../../../renderer/fitup/fitUpQuestion';
import { jointFan } from '../../../renderer/fitup/joints/jointFan';
import { jointShown } from '../../../renderer/fitup/joints/jointItems';
import type { FitUpOrder } from '../../../renderer/compute/fitup/fitUpOrder';

const WORDS = { rated: 'rated', tilt: 'tilt' };

test.each([
  ['saltmarsh-hatch', 'front', ['tieRodEnd', 'ballJoint', 'strutTop']],
  ['saltmarsh-hatch', 'rear', ['toeKnuckle', 'upperBody']],
  ['marram-coupe', 'front', ['tensionKnuckle', 'tieRodEnd']],
  ['chalkboard', 'front', ['lowerBall', 'tieRodEnd']],
  ['chalkboard', 'rear', ['ballJoint']],
] as const)('what is drawn of the joints of %s, %s, tilts as the table says, on both sides', (name, axle, points) => {
  const read = parseCar(readFileSync(path.join(ROOT, `samples/${name}.jounce.json`), 'utf8'));
  if (!read.ok) throw new Error('the sample has faults');
  const { document } = read.value;
  const setups = askedSetups(document, []);
  const answer = answerFitUp(jointsOrder(document, axle, setups), searchMesh);
  if (!answer.ok) throw new Error(answer.failure.message);
  const { rows } = answer.value;
  expect(rows.map(({ point }) => point)).toEqual(expect.arrayContaining([...points]));
  const notDrawn: string[] = [];
  for (const row of rows) {
    const at = row.at!;
    const setup = setups.find(([called]) => called === at.setup)!;
    const order = {
      job: 'drawn',
      document,
      setup,
      axle,
      side: row.side,
      at: { travel: at.travel, from: 'design', rack: at.rack },
      meshes: meshesOfCar(document).meshes,
    } satisfies FitUpOrder;
    const drawn = answerFitUp(order, searchMesh);
    if (!drawn.ok) throw new Error(drawn.failure.message);
    const travel = at.travel - drawn.value.standing;
    const placed = placeSetup(document, at.setup, axle, { travel, rollDeg: 0, rack: at.rack })!;
    const { items } = jointShown(document, row, WORDS, placed[row.side]);
    const way = (className: string): readonly number[] | null => {
      const line = items.find((item) => item.kind === 'line' && item.className === className);
      if (line?.kind !== 'line') return null;
      const [from, to] = [line.points[0]!, line.points.at(-1)!];
      const along = to.map((value, i) => value - from[i]!);
      return along.map((value) => value / Math.hypot(...along));
    };
    const [bolt, line] = [way('boltline'), way('tiltline')];
    if (!bolt || !line || !way('tiltarc')) {
      notDrawn.push(`${row.point} ${row.side}`);
      continue;
    }
    const cosine = Math.abs(bolt.reduce((sum, value, i) => sum + value * line[i]!, 0));
    const seen = row.kind === 'bore' ? Math.acos(Math.min(1, cosine)) : Math.asin(cosine);
    expect(Math.abs(seen - row.tilt!)).toBeLessThan(0.003);
  }
  expect(notDrawn).toEqual([]);
});

test.each(['Baseline', 'Trial 3', 'Sprint'])(
  'the bearing at the top of a strut tilts by as much as the strut itself, with the clamp bolt turned too: %s',
  (setup) => {
    const read = parseCar(readFileSync(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'), 'utf8'));
    if (!read.ok) throw new Error('the sample has faults');
    const { document } = read.value;
    // bolt and bore of the file lie along the strut as it is drawn
    const drawn = document.joints!['strutTop']!.bolt;
    for (const travel of [-50, 0, 40])
      for (const rack of [-40, 0, 40])
        for (const side of ['left', 'right'] as const) {
          const corner = placeSetup(document, setup, 'front', { travel, rollDeg: 0, rack })![side];
          const { top, foot } = corner.strut!;
          const now = top.map((value, i) => value - foot[i]!);
          const then = side === 'left' ? drawn : [drawn[0], -drawn[1], drawn[2]];
          const cosine = now.reduce((sum, value, i) => sum + value * then[i]!, 0) / (Math.hypot(...now) * Math.hypot(...then));
          const fan = jointFan(document, { point: 'strutTop', axle: 'front', side }, corner)!;
          // the drawn axis and the file's direction are the same to the last digit that the file gives
          expect(Math.abs(fan.tilt - Math.acos(Math.min(1, cosine)))).toBeLessThan(1e-3);
          expect(fan.rated).toBeCloseTo((12 * Math.PI) / 180, 12);
        }
  },
);
