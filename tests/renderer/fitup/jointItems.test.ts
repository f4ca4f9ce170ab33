import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { parseCar } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import { placeSetup } from '../../../renderer/compute/placeSetup';
import { askedSetups, jointsOrder, meshesOfCar } from '../../../renderer/fitup/fitUpQuestion';
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
