import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { binaryStl, openEdges, parseCar, readStl, type CarDocument } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import { askedSetups, keepOutOrder, meshesOfCar, type KeepOutAsked } from '../../../renderer/fitup/fitUpQuestion';
import { keepOutWords, sweptPart } from '../../../renderer/fitup/keepOut/keepOutItems';
import type { ShownUnits } from '../../../renderer/units/unitChoice';

const MM: ShownUnits = { length: 'mm', angle: 'degrees', toe: 'angle', toeDiameter: null, force: 'newton' };
const INCHES: ShownUnits = { ...MM, length: 'in' };

let hatch: CarDocument;
beforeAll(() => {
  const read = parseCar(readFileSync(path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json'), 'utf8'));
  if (!read.ok) throw new Error('the sample has faults');
  hatch = read.value.document;
});

const answerOf = (asked: KeepOutAsked) => {
  const told: number[] = [];
  const setups = askedSetups(hatch, []).slice(0, 1);
  const order = keepOutOrder(hatch, 'front', 'left', setups, asked, meshesOfCar(hatch).meshes);
  const result = answerFitUp(order, searchMesh, ({ done }) => told.push(done));
  if (!result.ok) throw new Error(result.failure.message);
  return { answer: result.value, told };
};

test('the space of a caliper is a closed mesh around its place at design, the same in the picture and in the STL', () => {
  const { answer, told } = answerOf({ of: ['caliperFront'], grow: 0, bound: 6 });
  if (!('mesh' in answer)) throw new Error(answer.message);
  expect(told).toEqual([...told].sort((a, b) => a - b));
  expect(told.length).toBeGreaterThan(1);
  const [shape] = sweptPart(answer).shapes;
  if (shape?.kind !== 'mesh') throw new Error('no mesh');
  expect(shape.triangles.length).toBe(3 * answer.mesh.triangles.length);
  expect(openEdges(shape.triangles)).toBe(0);
  const stl = readStl(binaryStl(answer.mesh, 'tried'));
  if (!stl.ok) throw new Error(stl.failure.found);
  expect(stl.value.length).toBe(shape.triangles.length);
  expect(answer.outward.most).toBeLessThanOrEqual(6);
  expect(answer.outward.least).toBeGreaterThanOrEqual(-0.01);
  const words = new Map(keepOutWords(answer, MM));
  expect(words.get('Swept by')).toBe('Caliper front');
  expect(words.get('Mesh')).toMatch(/^[\d,]+ triangles, closed, \d+\.\d\d litres$/);
  expect(words.get('Outside of it')).toMatch(/; 6\.0 mm is the most$/);
  expect(new Map(keepOutWords(answer, INCHES)).get('Outside of it')).toMatch(/; 0\.236 in is the most$/);
}, 60_000);

test('what cannot be made says why', () => {
  const { answer } = answerOf({ of: ['noSuchPart'], grow: 0, bound: 6 });
  expect('refused' in answer && answer.message).toContain('no part "noSuchPart"');
});
