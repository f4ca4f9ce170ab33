import { describe, expect, test } from 'vitest';
import { assembleCar, parseCar, readingsOfAxle, serializeCar, sweepAxle, toMechanism } from '../../../geometry/index';
import { FIRST_CHOICE, newCarDocument } from '../../../renderer/points/newCar/newCarDocument';
import { TYPICAL_AXLES } from '../../../renderer/points/newCar/typicalAxles';
import type { LayoutName } from '../../../renderer/state/begunCar';

const LAYOUTS = Object.keys(TYPICAL_AXLES) as LayoutName[];

describe.each(LAYOUTS)('a new car on %s', (layout) => {
  test.each(['mm', 'in'] as const)('in %s, front and rear: sound, solved over its travel, and like a car', (unit) => {
    for (const axle of ['front', 'rear'] as const) {
      const document = newCarDocument({
        ...FIRST_CHOICE,
        unit,
        front: axle === 'front' ? layout : null,
        rear: axle === 'rear' ? layout : null,
        frontTrack: 1480,
        rearTrack: 1600,
        loadedRadius: 295,
      });
      const read = parseCar(serializeCar(document));
      expect(read.ok ? [] : read.failure.faults).toEqual([]);
      const car = assembleCar(toMechanism(document), document.setups?.['Baseline'] ?? {});
      if (!car.ok) throw new Error(car.failure.message);
      const rows = sweepAxle(
        car.value,
        axle,
        [-60, -30, 0, 30, 60].map((travel) => ({ travel })),
      );
      expect(rows.every(({ ok }) => ok)).toBe(true);
      const still = readingsOfAxle(car.value, axle, {});
      if (!still.ok) throw new Error(still.failure.message);
      const { both, left } = still.value;
      expect(both.track).toBeCloseTo(axle === 'front' ? 1480 : 1600, 0);
      expect(Math.abs((left.camberGain ?? 1) as number)).toBeLessThan(0.001);
      expect(both.rollCentreHeight).toBeGreaterThan(-40);
      expect(both.rollCentreHeight).toBeLessThan(200);
    }
  });
});
