import { Buffer } from 'node:buffer';
import { describe, expect, it } from 'vitest';
import { findSetup, readStl, setupNames, toMechanism, type Triangles } from '../../geometry/index';
import { clearanceStudy } from '../../geometry/fitup/clearance/clearance';
import { openEdges, volumeOf } from '../../geometry/fitup/meshes/closedMesh';
import { searchMesh } from '../../geometry/meshes/meshSearch';
import { answerStudy } from '../../geometry/studies/study';
import { AXLES, sampleNamed } from './samples';

/** Pairs that are meant not to keep their margin; everything else does, in every setup. */
const SHORT: Readonly<Record<string, readonly string[]>> = {
  'saltmarsh-hatch': ['tyreFront – strutTube'],
  'marram-coupe': [],
  chalkboard: [],
};
const MOST_TRIANGLES = 400;

describe.each(Object.keys(SHORT))('parts of %s', (name) => {
  const { document } = sampleNamed(name);
  const meshes: Record<string, Triangles> = {};
  for (const [part, { shape }] of Object.entries(document.parts ?? {})) {
    if (shape.kind !== 'mesh') continue;
    const read = readStl(Buffer.from(shape.data!, 'base64'));
    if (!read.ok) throw new Error(`${part}: ${read.failure.found}`);
    meshes[part] = read.value;
  }

  it('have a mesh that is closed, seen from outside and small', () => {
    expect(Object.keys(meshes)).toEqual(['archLiner']);
    for (const triangles of Object.values(meshes)) {
      expect(openEdges(triangles)).toBe(0);
      expect(volumeOf(triangles)).toBeGreaterThan(0);
      expect(triangles.length / 9).toBeLessThan(MOST_TRIANGLES);
    }
  });

  it('keep their margins over the whole envelope, but for what is meant', () => {
    const setups = setupNames(document).map((setup) => [setup, findSetup(document, setup)] as const);
    const asked = { axles: AXLES, sides: ['left'] as const, setups, meshes };
    const answered = answerStudy(clearanceStudy(toMechanism(document), asked, searchMesh));
    if (!answered.ok) throw new Error(answered.failure.message);
    const { rows, missing } = answered.value;
    expect(missing).toEqual([]);
    expect(rows.length).toBeGreaterThan(20);
    const open = rows.filter(({ verdict }) => verdict !== 'clear' && verdict !== 'close');
    expect(open.map(({ pair }) => pair.join(' – '))).toEqual(SHORT[name]);
    // what does not keep it can be mended by a part that the file has
    for (const { wouldClear } of open) expect(wouldClear.map(({ by }) => by)).toContain('adjuster');
  }, 120_000);
});
