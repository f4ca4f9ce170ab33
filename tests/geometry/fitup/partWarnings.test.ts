import { describe, expect, it } from 'vitest';
import {
  assembleCar,
  findSetup,
  kindWarnings,
  linkLoads,
  loadCases,
  paperPlane,
  parseCar,
  sweptSpace,
  templateGround,
  toMechanism,
  type CarDocument,
  type KeepOut,
} from '../../../geometry/index';
import { clearanceStudy } from '../../../geometry/fitup/clearance/clearance';
import { answerStudy } from '../../../geometry/studies/study';
import { sample } from './loadedCars';

const hatch = sample('saltmarsh-hatch');
const { archLiner: _, ...plain } = hatch.parts!;
const withParts = (parts: object, change: object = {}): CarDocument => {
  const { rimFront: __, ...others } = plain;
  const parsed = parseCar(JSON.stringify({ ...hatch, ...change, parts: { ...others, ...parts } }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  return parsed.value.document;
};
const setups = (document: CarDocument) => [['Baseline', findSetup(document, 'Baseline')]] as const;

function clearanceWarnings(document: CarDocument, axle: 'front' | 'rear') {
  const question = { axles: [axle], sides: ['left', 'right'], setups: setups(document) } as const;
  const answered = answerStudy(clearanceStudy(toMechanism(document), question));
  if (!answered.ok) throw new Error(answered.failure.message);
  return answered.value.warnings;
}

describe('what moves and has no shape in the file', () => {
  it('is named with the carrier that its part would be on, once for both wheels and all setups', () => {
    const [warning, ...others] = clearanceWarnings(withParts({}), 'front');
    expect(others).toEqual([]);
    expect(warning).toMatchObject({ code: 'no-shape', path: 'parts' });
    expect(warning!.message).toContain('front knuckle, spring, damper rod, anti-roll bar, rack:');
    expect(warning!.message).toContain('as parts on knuckle, spring, strutRod, bar, rack.');
  });

  it('is not named where a part is on it; a caliper is no knuckle, and one side alone is not both', () => {
    const at = [-30, 590, 750];
    const coil = { axle: 'front', on: 'spring', shape: { kind: 'sphere', at, radius: 60 } };
    const rod = { axle: 'front', on: 'strutRod', shape: { kind: 'sphere', at, radius: 11 } };
    expect(clearanceWarnings(withParts({ coil, rod }), 'front')[0]!.message).toContain('front knuckle, anti-roll bar, rack:');
    const one = { ...coil, side: 'right', only: true };
    expect(clearanceWarnings(withParts({ one, rod }), 'front')[0]!.message).toContain(
      'front knuckle, spring, anti-roll bar, rack:',
    );
    expect(clearanceWarnings(withParts({}), 'rear')[0]!.message).toContain('rear knuckle, spring, damper, anti-roll bar:');
  });
});

describe('a part that is metres away from its wheel', () => {
  it('is asked about, a mesh for its unit; one beside the wheel is not', () => {
    const far = { axle: 'front', on: 'body', shape: { kind: 'sphere', at: [9000, 600, 300], radius: 20 } };
    const codes = clearanceWarnings(withParts({ far }), 'front').map(({ code, path }) => `${code} ${path}`);
    expect(codes).toEqual(['part-far parts.far', 'no-shape parts']);
    const near = { ...far, shape: { ...far.shape, at: [1500, 600, 300] } };
    expect(clearanceWarnings(withParts({ near }), 'front').map(({ code }) => code)).toEqual(['no-shape']);
  });
});

describe('a kind that no margin is called', () => {
  const liner = (more: object) =>
    withParts({ liner: { on: 'body', shape: { kind: 'sphere', at: [0, 0, 900], radius: 9 }, ...more } });
  it('is told with what may be meant', () => {
    const [warning, ...others] = kindWarnings(liner({ kind: 'tyreTred' }));
    expect(others).toEqual([]);
    expect(warning).toMatchObject({ code: 'kind-without-margin', path: 'parts.liner.kind' });
    expect(warning!.message).toContain('did you mean `tyreTread`?');
  });
  it('is nothing where the part has a margin of its own, or the kind one', () => {
    expect(kindWarnings(liner({ kind: 'tyreTred', margin: 12 }))).toEqual([]);
    expect(kindWarnings(liner({ kind: 'tyreTread' }))).toEqual([]);
  });
});

describe('an envelope that cannot be reached all over', () => {
  // lock that folds the links before its end
  const steering = { ...hatch.front!.steering!, travel: [-70, 190] as const };
  const document = withParts(
    { ball: { axle: 'front', on: 'arm', shape: { kind: 'sphere', at: [8, 600, 200], radius: 20 } } },
    { front: { ...hatch.front!, steering } },
  );
  const made = sweptSpace(toMechanism(document), {
    axles: ['front'],
    sides: ['left'],
    setups: setups(document),
    of: ['ball'],
    grow: 0,
    bound: 4,
  });

  it('is a warning of the keep-out, and the template does not say "all travel and lock"', () => {
    if (!('mesh' in made)) throw new Error(JSON.stringify(made));
    expect(made.envelope[0]!.unreachable.length).toBeGreaterThan(0);
    expect(made.warnings.map(({ code }) => code)).toEqual(['positions-unreachable']);
    const facts = (keepOut: KeepOut) => {
      const plane = paperPlane([0, 0, 200, 0, 0, 1]);
      if ('fault' in plane) throw new Error(plane.message);
      return templateGround(document, keepOut, { axles: ['front'], side: 'left', setups: ['Baseline'], plane }).facts.join(' ');
    };
    expect(facts(made)).toContain('as much of travel and lock as can be reached');
    expect(facts(made)).toContain('of the envelope cannot be reached');
    expect(facts({ ...made, warnings: [] })).toContain('all travel and lock');
  });
});

describe('a bar that is not twisted', () => {
  const codesAt = (document: CarDocument, position: object, names: readonly string[]) => {
    const car = assembleCar(toMechanism(document), findSetup(document, 'Baseline'));
    if (!car.ok) throw new Error(car.failure.message);
    const answered = linkLoads(
      car.value,
      loadCases(car.value).filter(({ name }) => names.includes(name)),
      position,
      ['front'],
    );
    if (!answered.ok) throw new Error(answered.failure.message);
    const link = answered.value.cases[0]!.rows.find((row) => row.side === 'left' && row.link === 'barLink')!;
    return { codes: answered.value.warnings.map(({ code }) => code), push: link.axial };
  };

  it('is told where a case loads the wheels unlike and they stand alike', () => {
    const level = codesAt(hatch, {}, ['Cornering']);
    expect(level.codes).toContain('bar-untwisted');
    expect(Math.abs(level.push!)).toBeLessThan(1e-6);
    const rolled = codesAt(hatch, { roll: -0.03 }, ['Cornering']);
    expect(rolled.codes).not.toContain('bar-untwisted');
    expect(Math.abs(rolled.push!)).toBeGreaterThan(100);
  });

  it('is nothing to tell while braking straight, or of a bar that is unhooked', () => {
    expect(codesAt(hatch, {}, ['Braking']).codes).not.toContain('bar-untwisted');
    const unhooked = {
      ...hatch,
      setups: {
        ...hatch.setups,
        Baseline: { ...hatch.setups!['Baseline'], front: { ...hatch.setups!['Baseline']!.front, barRate: 0 } },
      },
    };
    expect(codesAt(unhooked as CarDocument, {}, ['Cornering']).codes).not.toContain('bar-untwisted');
  });
});
