import { describe, expect, it } from 'vitest';
import { findSetup, toMechanism, type CarDocument } from '../../../geometry/index';
import { clearanceStudy, type ClearanceAnswer } from '../../../geometry/fitup/clearance/clearance';
import { gapMeshes, leastGap } from '../../../geometry/fitup/clearance/leastGap';
import { sweptSpace } from '../../../geometry/fitup/keepOut/sweptSpace';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerStudy } from '../../../geometry/studies/study';
import { sample } from './loadedCars';
import { boxTriangles } from './stlFiles';

/** A box of 1.4 × 1 × 1.4 m around the front wheel: the tyre is wholly within it. */
const BOX = boxTriangles([700, 500, 700]);
/** One of its twelve triangles left away. */
const OPEN = BOX.slice(9);

const hatch = sample('saltmarsh-hatch');
const car: CarDocument = {
  ...hatch,
  parts: {
    tyre: { axle: 'front', on: 'wheel', shape: { kind: 'tyre' } },
    shell: {
      axle: 'front',
      on: 'body',
      shape: {
        kind: 'mesh',
        file: 'shell.stl',
        place: {
          at: hatch.front!.points['wheelCentre']!,
          axes: [
            [1, 0, 0],
            [0, 1, 0],
          ],
        },
      },
    },
  },
};
const mechanism = toMechanism(car);
const setups = [['Baseline', findSetup(car, 'Baseline')]] as const;

const answerWith = (shell: Float64Array): ClearanceAnswer => {
  const question = { axles: ['front'], sides: ['left'], setups, meshes: { shell } } as const;
  const answered = answerStudy(clearanceStudy(mechanism, question, searchMesh));
  if (!answered.ok) throw new Error(answered.failure.message);
  return answered.value;
};
const rowOf = ({ rows }: ClearanceAnswer) => rows.find(({ pair }) => pair.includes('tyre') && pair.includes('shell'))!;

describe('a part that lies wholly within a mesh', () => {
  it('cuts it where the mesh is closed', () => {
    const answer = answerWith(BOX);
    expect(rowOf(answer)).toMatchObject({ verdict: 'cuts', surfaceOnly: [] });
    expect(answer.warnings.filter(({ code }) => code !== 'no-shape')).toEqual([]);
  });

  it('is not said to be clear of one that is not closed, and the answer says of which part and why', () => {
    const answer = answerWith(OPEN);
    const row = rowOf(answer);
    expect(row.clearance - row.bound).toBeGreaterThan(row.needs);
    expect(row).toMatchObject({ verdict: 'not-proved', surfaceOnly: ['shell'] });
    // no other part that is looked at beside it either
    for (const one of answer.rows.filter(({ pair }) => pair.includes('shell')))
      expect(['clear', 'close']).not.toContain(one.verdict);
    expect(answer.rows.filter(({ pair }) => !pair.includes('shell')).every(({ surfaceOnly }) => surfaceOnly.length === 0)).toBe(
      true,
    );
    expect(answer.warnings.map(({ code }) => code)).toEqual(['mesh-open', 'no-shape']);
    expect(answer.warnings[0]).toMatchObject({ code: 'mesh-open', path: 'parts.shell' });
    // the three edges of the triangle that lacks
    expect(answer.warnings[0].message).toMatch(/"shell" is not closed, 3 edges .* what stands within it is not told/);
  });

  it('leaves the least gap of a setup unknown, with the reason', () => {
    const gap = (shell: Float64Array) =>
      leastGap(mechanism, findSetup(car, 'Baseline'), ['front'], gapMeshes(mechanism, { shell }, searchMesh));
    expect(gap(OPEN)).toMatchObject({
      mm: null,
      why: expect.stringContaining('the mesh of the part "shell" is not closed') as string,
    });
    expect(gap(BOX).mm).toBeLessThanOrEqual(0);
  });
});

it('a keep-out of a mesh that is not closed says that what is within is not in it', () => {
  const cube = boxTriangles([100, 100, 100]);
  const of = (shell: Float64Array) => {
    const question = { axles: ['front'], sides: ['left'], setups, of: ['shell'], grow: 0, bound: 20, meshes: { shell } } as const;
    const made = sweptSpace(mechanism, question, searchMesh);
    if (!('mesh' in made)) throw new Error('message' in made ? made.message : made.failure.message);
    return made;
  };
  const [closed, open] = [of(cube), of(cube.slice(9))];
  // 8 litres is the cube's own volume
  expect(closed.volume).toBeGreaterThan(8e6);
  expect(closed.warnings).toEqual([]);
  expect(open.volume).toBeLessThan(closed.volume);
  expect(open.warnings.map(({ code, path }) => [code, path])).toEqual([['mesh-open', 'parts.shell']]);
}, 60_000);
