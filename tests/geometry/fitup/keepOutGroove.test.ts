import { expect, it } from 'vitest';
import { findSetup, parseCar, sweptSpace, toMechanism, type CarDocument, type KeepOut } from '../../../geometry/index';
import { badEdges } from './badEdges';
import { sample } from './loadedCars';

function keepOutOf(document: CarDocument, of: readonly string[] | 'all-moving', bound: number): KeepOut {
  const parsed = parseCar(JSON.stringify(document));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const mechanism = toMechanism(parsed.value.document);
  const setups = [['Baseline', findSetup(mechanism.document, 'Baseline')]] as const;
  const made = sweptSpace(mechanism, { axles: ['front'], sides: ['left'], setups, of, grow: 0, bound });
  if (!('mesh' in made)) throw new Error(JSON.stringify(made));
  return made;
}

// the two tubes of an arm that part from its ball joint: between what they sweep there is a groove that is ever narrower
it('goes down into a narrow groove between what two parts sweep, and stays closed', { timeout: 120_000 }, () => {
  const made = keepOutOf(sample('saltmarsh-hatch'), ['armFront', 'armBend'], 2);
  expect(made.outward.least).toBeGreaterThanOrEqual(0);
  expect(made.outward.most).toBeLessThanOrEqual(2);
  expect(made.isFilled).toBe(false);
  // a mesh of either alone has five or six thousand
  expect(made.mesh.triangles.length / 3).toBeLessThan(30_000);
  expect(badEdges(made)).toBe(0);
});

it('fills a groove too narrow to come to its end, says so, and holds what is swept all the same', { timeout: 120_000 }, () => {
  const { parts: _, ...plain } = sample('saltmarsh-hatch');
  const [x, y, z] = plain.front!.points.ballJoint as readonly [number, number, number];
  // 200 mm long, 8° apart, round with 4 mm
  const tube = (along: number) => ({ kind: 'capsule', from: [x, y, z], to: [x + along, y - 199.51, z], radius: 4 });
  const part = (along: number) => ({ axle: 'front', on: 'arm', shape: tube(along) });
  const document = { ...plain, parts: { fore: part(13.95), aft: part(-13.95) } } as CarDocument;
  const made = keepOutOf(document, ['fore', 'aft'], 2);
  expect(made.isFilled).toBe(true);
  expect(made.outward.least).toBeGreaterThanOrEqual(-0.01);
  // the middle of narrow space that can be filled is no farther from its walls
  expect(made.outward.most).toBeGreaterThan(2);
  expect(made.outward.most).toBeLessThanOrEqual(made.gap / 2);
  expect(badEdges(made)).toBe(0);
  // no less than either holds alone, and that is within the bound
  const alone = keepOutOf(document, ['fore'], 2);
  expect(alone.isFilled).toBe(false);
  expect(alone.outward.most).toBeLessThanOrEqual(2);
  expect(made.volume).toBeGreaterThan(1.5 * alone.volume);
});

// a strut's tube, the rod of the bar and the tyre pass each other within millimetres there
it('comes to an end with all that moves at a steered wheel', { timeout: 240_000 }, () => {
  const made = keepOutOf(sample('saltmarsh-hatch'), 'all-moving', 2);
  expect(made.of).toContain('strutTube');
  expect(made.of).toContain('driveShaft');
  expect(made.outward.least).toBeGreaterThanOrEqual(-0.01);
  expect(made.outward.most).toBeLessThanOrEqual(made.isFilled ? made.gap / 2 : 2);
  expect(badEdges(made)).toBe(0);
});
