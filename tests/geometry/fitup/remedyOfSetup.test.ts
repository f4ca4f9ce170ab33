import { expect, it } from 'vitest';
import { findSetup, toMechanism, type CarDocument, type SideName } from '../../../geometry/index';
import { clearanceStudy } from '../../../geometry/fitup/clearance/clearance';
import type { ClearanceRow } from '../../../geometry/fitup/clearance/pairRow';
import { toDegrees } from '../../../geometry/core/angle';
import { readingsOfCar } from '../../../geometry/readings/readings';
import { assembleCar } from '../../../geometry/setup/assembleCar';
import { answerStudy } from '../../../geometry/studies/study';
import { sample } from './loadedCars';

it('a setting is of one setup: it is said in which, and which others stay short, as they do', () => {
  const hatch = sample('saltmarsh-hatch');
  const sprint = hatch.setups!['Sprint'];
  const at = (clampBolt: number) => ({ ...sprint, front: { ...sprint.front, both: { ...sprint.front?.both, clampBolt } } });
  const names = ['Steep', 'Twin'];
  const pairOf = (steep: number, twin: number): ClearanceRow => {
    const setups = { Steep: at(steep), Twin: at(twin) };
    const parts = { tyre: hatch.parts!['tyreFront'] };
    const car = { ...hatch, questions: undefined, onCar: undefined, parts, setups } as CarDocument;
    const asked = names.map((name) => [name, findSetup(car, name)] as const);
    const answered = answerStudy(clearanceStudy(toMechanism(car), { axles: ['front'], sides: ['right'], setups: asked }));
    if (!answered.ok) throw new Error(answered.failure.message);
    return answered.value.rows.find(({ pair }) => pair.join() === 'tyre,strutTube')!;
  };
  const row = pairOf(90, 90);
  const { setup, to, stillShort, clearance, bound } = row.wouldClear.find(({ adjuster }) => adjuster === 'clampBolt')!;
  const [other] = names.filter((name) => name !== setup);
  expect(stillShort.map((left) => left.setup)).toEqual([other]);
  expect(clearance).toBeGreaterThanOrEqual(row.needs);
  expect(bound).toBeGreaterThanOrEqual(0);
  // done so, the pair is as short as it was said to be, in the other setup
  const done = setup === 'Steep' ? pairOf(to, 90) : pairOf(90, to);
  expect(done).toMatchObject({ verdict: 'short', at: { setup: other } });
  expect(done.clearance).toBeCloseTo(stillShort[0].clearance, 1);
  // and in both of them it is not
  const both = pairOf(to, to);
  expect(both.clearance).toBeGreaterThanOrEqual(both.needs);
  for (const stop of row.wouldClear.filter(({ by }) => by !== 'adjuster'))
    expect([stop.setup, stop.stillShort]).toEqual([null, []]);
});

it.each(['left', 'right'] as const)(
  'a stop of the rack costs lock alone, a stop of the travel no reading: %s',
  (side: SideName) => {
    const hatch = sample('saltmarsh-hatch');
    // just outside of where the wheel comes at full lock to one side
    const post = { axle: 'front', on: 'body', margin: 12, shape: { kind: 'sphere', at: [200, 480, 310], radius: 30 } };
    const parts = { tyre: hatch.parts!['tyreFront'], post };
    const car = { ...hatch, questions: undefined, onCar: undefined, parts, setups: { Baseline: {} } } as unknown as CarDocument;
    const asked = [['Baseline', findSetup(car, 'Baseline')]] as const;
    const mechanism = toMechanism(car);
    const answered = answerStudy(clearanceStudy(mechanism, { axles: ['front'], sides: ['left', 'right'], setups: asked }));
    if (!answered.ok) throw new Error(answered.failure.message);
    const row = answered.value.rows.find((one) => one.side === side && one.pair.join() === 'tyre,post')!;
    expect(row.wouldClear.map(({ by }) => by)).toContain('rack');
    const assembled = assembleCar(mechanism, {});
    if (!assembled.ok) throw new Error(assembled.failure.message);
    const steered = (rack: number): number => {
      const { front } = readingsOfCar(assembled.value, { travel: 0, rack, roll: 0 });
      if (!front?.ok) throw new Error('not reached');
      return front.value[side].steerAngle;
    };
    for (const { by, from, to, changes } of row.wouldClear) {
      if (by === 'travel') expect(changes).toEqual({});
      if (by !== 'rack') continue;
      expect(Object.keys(changes)).toEqual(['front.left.steerAngle', 'front.right.steerAngle', 'front.both.turningCircle']);
      expect(changes[`front.${side}.steerAngle`]).toBeCloseTo(toDegrees(steered(to) - steered(from!)), 9);
      expect(Math.abs(steered(to))).toBeLessThan(Math.abs(steered(from!)));
      expect(changes['front.both.turningCircle']).toBeGreaterThan(0);
    }
  },
);
