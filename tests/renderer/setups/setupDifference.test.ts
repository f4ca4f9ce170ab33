import { describe, expect, test } from 'vitest';
import type { CarDocument, SetupDocument } from '../../../geometry/index';
import { answerBench } from '../../../renderer/compute/answerBench';
import { setupEffects } from '../../../renderer/compute/setupEffects';
import { setupDifference } from '../../../renderer/setups/setupDifference';
import { STANDARD_UNITS, type UnitChoice } from '../../../renderer/units/unitChoice';
import { carDocument } from '../carUnderTest';

const document = carDocument('car-23');
const withSetups = (now: SetupDocument, then: SetupDocument = {}): CarDocument => ({ ...document, setups: { now, then } });
const differ = (now: SetupDocument, then: SetupDocument = {}) => {
  const car = withSetups(now, then);
  return setupDifference(car, 'now', car, 'then', STANDARD_UNITS);
};

describe('what differs, in words', () => {
  test('a slide says where it stands and where it stood, and not how far it was moved', () => {
    expect(differ({ front: { both: { plateAcross: -5 } } })).toEqual(['Front plate across: 5 mm inboard, was at zero']);
    expect(differ({ front: { both: { plateAcross: -8 } } }, { front: { both: { plateAcross: -3 } } })).toEqual([
      'Front plate across: 8 mm inboard, was 3 mm inboard',
    ]);
    expect(differ({ front: { both: { plateAcross: -3 } } }, { front: { both: { plateAcross: -8 } } })).toEqual([
      'Front plate across: 3 mm inboard, was 8 mm inboard',
    ]);
  });

  test('one that is at zero now is at zero, and none beyond it', () => {
    expect(differ({}, { front: { both: { plateAcross: -6 } } })).toEqual(['Front plate across: at zero, was 6 mm inboard']);
  });

  test('other parts say where they stand and where they stood', () => {
    expect(differ({ front: { both: { armBolt: 30 } } })).toEqual(['Front arm bolt: 2 marks outboard, was at zero']);
  });

  test('sides apart are said apart, and only the one that moved', () => {
    expect(
      differ({ front: { left: { plateAcross: -5 }, right: { plateAcross: 0 } } }, { front: { both: { plateAcross: 0 } } }),
    ).toEqual(['Front plate across: left 5 mm inboard, was at zero']);
  });

  test('toe, heights, rates and holes', () => {
    expect(differ({ front: { setToe: 0.05, rideHeight: -8 }, rear: { springRate: 80 } }, { front: { rideHeight: 2 } })).toEqual([
      'Front toe: set to 0.05°, was as the rods leave it',
      'Front ride height: 8 mm lower than drawn, was 2 mm higher than drawn',
      'Rear spring rate: 80 N/mm, was that of the axle',
    ]);
  });

  test('toe and rates are in the units that are shown', () => {
    const wheel = { ...document.front!.wheel, toeDiameter: 400 };
    const car = {
      ...withSetups({ front: { setToe: 0.05, springRate: 80 } }, { front: { setToe: 0, springRate: 70 } }),
      front: { ...document.front!, wheel },
    } as CarDocument;
    const differIn = (units: Partial<UnitChoice>) => setupDifference(car, 'now', car, 'then', { ...STANDARD_UNITS, ...units });
    expect(differIn({ angle: 'minutes' })[0]).toBe('Front toe: set to 0°03′, was set to 0°00′');
    // 400 mm × sin 0.05° = 0.349 mm
    expect(differIn({ toe: 'rim' })[0]).toMatch(/^Front toe: set to 0\.35 mm, was set to 0\.00 mm$/);
    // 80 N/mm × 25.4 ÷ 4.4482216 = 456.8 lbf/in; 70 is 399.7
    expect(differIn({ length: 'in', force: 'pound' })[1]).toMatch(/^Front spring rate: 456\.8 lbf?\/in, was 399\.7 lbf?\/in$/);
  });

  test('the same is nothing', () =>
    expect(
      differ({ front: { both: { plateAcross: 0 } } }, { front: { left: { plateAcross: 0 }, right: { plateAcross: 0 } } }),
    ).toEqual([]));
});

describe('what a difference does', () => {
  test('is what the bench shows between the two setups, ride heights included', () => {
    const car = withSetups(
      { front: { both: { plateAcross: -5 }, rideHeight: -20 }, rear: { rideHeight: -15 } },
      { front: { rideHeight: 0 }, rear: { rideHeight: 0 } },
    );
    for (const axle of ['front', 'rear'] as const) {
      const compared = { document: car, setup: 'then', name: 'then' };
      const position = { travel: 0, rollDeg: 0, rack: 0 };
      const bench = answerBench({ document: car, setup: 'now', compared, axle, position });
      const effects = setupEffects(car, 'now', car, 'then', axle);
      if (!bench.ok || !effects) throw new Error('both setups stand');
      const { left, both } = bench.value.difference;
      const shown = effects.map(({ key, owner }) => (owner === 'corner' ? left : both)[key]);
      expect(effects.map(({ change }) => change)).toEqual(shown);
      expect(effects.map(({ key }) => key)).toContain('camber');
      expect(effects.map(({ key }) => key)).toContain('rollCentreHeight');
    }
  });
});
