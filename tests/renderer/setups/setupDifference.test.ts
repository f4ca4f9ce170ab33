import { describe, expect, test } from 'vitest';
import type { CarDocument, SetupDocument } from '../../../geometry/index';
import { setupEffects } from '../../../renderer/compute/setupEffects';
import { setupDifference } from '../../../renderer/setups/setupDifference';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { carDocument } from '../carUnderTest';

const document = carDocument('car-23');
const withSetups = (now: SetupDocument, then: SetupDocument = {}): CarDocument => ({ ...document, setups: { now, then } });
const differ = (now: SetupDocument, then: SetupDocument = {}) => {
  const car = withSetups(now, then);
  return setupDifference(car, 'now', car, 'then', STANDARD_UNITS);
};

describe('what differs, in words', () => {
  test('a slide is moved on from where it was', () => {
    expect(differ({ front: { both: { plateAcross: -5 } } })).toEqual(['Front plate across: 5 mm inboard, was at zero']);
    expect(differ({ front: { both: { plateAcross: -8 } } }, { front: { both: { plateAcross: -3 } } })).toEqual([
      'Front plate across: 5 mm further inboard, was 3 mm inboard',
    ]);
    expect(differ({ front: { both: { plateAcross: -3 } } }, { front: { both: { plateAcross: -8 } } })).toEqual([
      'Front plate across: 5 mm outboard, was 8 mm inboard',
    ]);
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

  test('the same is nothing', () =>
    expect(
      differ({ front: { both: { plateAcross: 0 } } }, { front: { left: { plateAcross: 0 }, right: { plateAcross: 0 } } }),
    ).toEqual([]));
});

describe('what a difference does', () => {
  test('is judged at the same wheel-centre height: a ride height alone does nothing', () => {
    const car = withSetups({ front: { rideHeight: -20 }, rear: { rideHeight: -20 } });
    expect(setupEffects(car, 'now', car, 'then', 'front')).toEqual([]);
    const moved = withSetups({ front: { both: { plateAcross: -5 }, rideHeight: -20 } });
    const camber = setupEffects(moved, 'now', moved, 'then', 'front')?.find(({ key }) => key === 'camber');
    expect(camber?.change).toBeLessThan(-0.2);
    const flat = withSetups({ front: { both: { plateAcross: -5 } } });
    expect(setupEffects(flat, 'now', flat, 'then', 'front')?.find(({ key }) => key === 'camber')?.change).toBe(camber?.change);
  });
});
