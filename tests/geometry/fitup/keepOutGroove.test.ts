import { expect, it } from 'vitest';
import { findSetup, parseCar, sweptSpace, toMechanism } from '../../../geometry/index';
import { sample } from './loadedCars';

/** The two tubes of an arm that part at 12° from its ball joint: between what they sweep there is a groove that is ever narrower. */
const OF = ['armFront', 'armBend'];

it(
  'is refused where the groove is too narrow to come to an end, and says where and what to ask for',
  { timeout: 120_000 },
  () => {
    const { parts: _, ...plain } = sample('saltmarsh-hatch');
    const [x, y, z] = plain.front!.points.ballJoint as readonly [number, number, number];
    // 200 mm long, 8° apart, round with 4 mm
    const tube = (along: number) => ({ kind: 'capsule', from: [x, y, z], to: [x + along, y - 199.51, z], radius: 4 });
    const part = (along: number) => ({ axle: 'front', on: 'arm', shape: tube(along) });
    const parsed = parseCar(JSON.stringify({ ...plain, parts: { fore: part(13.95), aft: part(-13.95) } }));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
    const mechanism = toMechanism(parsed.value.document);
    const setups = [['Baseline', findSetup(mechanism.document, 'Baseline')]] as const;
    const question = { axles: ['front'], sides: ['left'], setups, of: ['fore', 'aft'], grow: 0, bound: 2 } as const;
    const refused = sweptSpace(mechanism, question);
    expect(refused).toMatchObject({ refused: 'not-proved' });
    const { message } = refused as { message: string };
    const place = /around x (-?\d+), y (\d+), z (\d+) mm; .*ask for those parts one by one/.exec(message);
    expect(place).not.toBeNull();
    const [px, py] = place!.slice(1).map(Number);
    // between the two tubes
    expect(Math.abs(px - x)).toBeLessThan(15);
    expect(y - py).toBeGreaterThan(0);
    expect(y - py).toBeLessThan(205);
    // either alone is no trouble
    expect(sweptSpace(mechanism, { ...question, of: ['fore'] })).toHaveProperty('mesh');
  },
);

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
