import { expect, it } from 'vitest';
import { findSetup, parseCar, sweptSpace, toMechanism } from '../../../geometry/index';
import { sample } from './loadedCars';

/** The two tubes of an arm that part at 12° from its ball joint: between what they sweep there is a groove that is ever narrower. */
const OF = ['armFront', 'armBend'];

it('goes down into a narrow groove between what two parts sweep, and stays closed', { timeout: 120_000 }, () => {
  const parsed = parseCar(JSON.stringify(sample('saltmarsh-hatch')));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const mechanism = toMechanism(parsed.value.document);
  const setups = [['Baseline', findSetup(mechanism.document, 'Baseline')]] as const;
  const made = sweptSpace(mechanism, { axles: ['front'], sides: ['left'], setups, of: OF, grow: 0, bound: 2 });
  if (!('mesh' in made)) throw new Error(JSON.stringify(made));
  expect(made.outward.least).toBeGreaterThanOrEqual(0);
  expect(made.outward.most).toBeLessThanOrEqual(2);
  const { triangles } = made.mesh;
  // a mesh of either alone has five or six thousand
  expect(triangles.length / 3).toBeLessThan(30_000);
  const ways = new Set<string>();
  for (let i = 0; i < triangles.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const way = `${triangles[i + k]} ${triangles[i + ((k + 1) % 3)]}`;
      expect(ways.has(way)).toBe(false);
      ways.add(way);
    }
  for (const way of ways) expect(ways.has(way.split(' ').reverse().join(' '))).toBe(true);
});
