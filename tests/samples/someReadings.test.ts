import { describe, expect, it } from 'vitest';
import { CATALOGUE, sweepAxle, sweepReadings, toRadians, type Position } from '../../geometry/index';
import { AXLES, SAMPLES, standing } from './samples';

const KEYS = CATALOGUE.filter(({ of }) => of !== 'car');
const cases = SAMPLES.flatMap((sample) =>
  AXLES.filter((axle) => sample.document[axle]).map((axle) => ({ name: sample.name, sample, axle })),
);

const POSITIONS: readonly Position[] = [
  {},
  { travel: { left: 30, right: -20 } },
  { travel: -40 },
  { travel: 5, roll: toRadians(2) },
];
const STEERED: readonly Position[] = [{ rack: 20 }, { travel: 25, rack: -35 }, { rack: 12, roll: toRadians(-1.5) }];

describe.each(cases)('a few readings of $name $axle', ({ sample, axle }) => {
  const car = standing(sample, Object.keys(sample.document.setups ?? {})[0] ?? {});
  const positions = car[axle]?.left.corner.isSteered ? [...POSITIONS, ...STEERED] : POSITIONS;
  const whole = sweepAxle(car, axle, positions);

  it.each(KEYS)('$key alone is what it is among all, reason included', ({ key, of }) => {
    const alone = sweepReadings(car, axle, positions, [key]);
    const owners = of === 'corner' ? (['left', 'right'] as const) : (['both'] as const);
    whole.forEach((row, index) => {
      const few = alone[index];
      if (!row.ok || !few?.ok) throw new Error('the sample reaches these positions');
      for (const owner of owners) {
        expect(few.value[owner][key as never]).toStrictEqual(row.value[owner][key as never]);
        expect(few.value.why[`${owner}.${key}`]).toBe(row.value.why[`${owner}.${key}`]);
      }
    });
  });

  it.each(KEYS)('$key where both wheels are alike is read off one of them, and is what it is among all', ({ key, of }) => {
    const owners = of === 'corner' ? (['left', 'right'] as const) : (['both'] as const);
    for (const position of [{}, { travel: -40 }, { travel: { left: 12, right: 12 } }]) {
      const [row] = sweepAxle(car, axle, [position]);
      const [numbers] = sweepReadings(car, axle, [position], [key], false);
      if (!row?.ok || !numbers?.ok) throw new Error('the sample reaches these positions');
      for (const owner of owners) expect(numbers.value[owner][key as never]).toStrictEqual(row.value[owner][key as never]);
    }
  });
});
