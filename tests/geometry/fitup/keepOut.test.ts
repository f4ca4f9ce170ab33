import { describe, expect, it } from 'vitest';
import { findSetup, parseCar, toMechanism } from '../../../geometry/index';
import { sweptSpace, volumeOfMesh, type KeepOut, type NoKeepOut } from '../../../geometry/fitup/keepOut/sweptSpace';
import { badEdges } from './badEdges';
import { sample } from './loadedCars';
import { squared } from '../../../geometry/fitup/keepOut/squared';

const PARTS = {
  knob: { axle: 'front', on: 'body', shape: { kind: 'sphere', at: [200, 400, 300], radius: 20 } },
  ball: { axle: 'front', on: 'knuckle', shape: { kind: 'sphere', at: [60, 690, 300], radius: 14 } },
};

function keepOutOf(of: readonly string[], grow: number, bound: number): KeepOut | NoKeepOut {
  const parsed = parseCar(JSON.stringify({ ...sample('saltmarsh-hatch'), parts: PARTS }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const { document } = parsed.value;
  const setups = [['Baseline', findSetup(document, 'Baseline')]] as const;
  const made = sweptSpace(toMechanism(document), { axles: ['front'], sides: ['left'], setups, of, grow, bound });
  if ('failure' in made) throw new Error(made.failure.message);
  return made;
}

function meshOf(of: readonly string[], grow: number, bound: number): KeepOut {
  const made = keepOutOf(of, grow, bound);
  if ('refused' in made) throw new Error(made.message);
  return made;
}

describe('the space that a part sweeps', () => {
  it.each([
    [0, 2],
    [10, 1],
  ])('of a ball that stands still, grown by %d mm, is that ball within %d mm, and never inside of it', (grow, bound) => {
    const made = meshOf(['knob'], grow, bound);
    const { positions, triangles } = made.mesh;
    const radius = 20 + grow;
    const off = (x: number, y: number, z: number): number =>
      Math.sqrt(squared(x - 200) + squared(y - 400) + squared(z - 300)) - radius;
    let [least, most] = [Infinity, -Infinity];
    const look = (x: number, y: number, z: number): void => {
      least = Math.min(least, off(x, y, z));
      most = Math.max(most, off(x, y, z));
    };
    for (let i = 0; i < positions.length; i += 3) look(positions[i], positions[i + 1], positions[i + 2]);
    for (let i = 0; i < triangles.length; i += 3) {
      const middle = [0, 1, 2].map((n) => [0, 1, 2].reduce((sum, k) => sum + positions[3 * triangles[i + k] + n] / 3, 0));
      look(middle[0], middle[1], middle[2]);
    }
    expect(least).toBeGreaterThanOrEqual(-0.01);
    expect(most).toBeLessThanOrEqual(bound + 1e-6);
    expect(badEdges(made)).toBe(0);
    const ball = (4 / 3) * Math.PI * radius * radius * radius;
    expect(volumeOfMesh(made.mesh)).toBeGreaterThan(ball);
    expect(volumeOfMesh(made.mesh)).toBeLessThan((4 / 3) * Math.PI * (radius + bound) * (radius + bound) * (radius + bound));
  });

  it('of a ball on the knuckle is closed', () => {
    const made = meshOf(['ball'], 0, 2);
    expect(made.mesh.triangles.length).toBeGreaterThan(300);
    expect(badEdges(made)).toBe(0);
  });

  it('is refused for a part that is not there, and says which are', () => {
    expect(keepOutOf(['bal'], 0, 2)).toMatchObject({
      refused: 'unknown-part',
      message: expect.stringContaining('ball') as string,
    });
  });
});
