import { expect, test } from 'vitest';
import type { CarDocument, LimitDocument } from '../../../geometry/index';
import { answerSetup } from '../../../renderer/compute/answerBench';
import { judgedLimits } from '../../../renderer/compute/limits';
import { carDocument } from '../carUnderTest';

const position = { travel: 0, rollDeg: 0, rack: 0 };

const judged = (limits: readonly LimitDocument[]) => {
  const document: CarDocument = { ...carDocument('car-23'), limits };
  const answer = answerSetup({ document, setup: 'Baseline', axle: 'front', position });
  if (!answer.ok) throw new Error('stands');
  return { limits: judgedLimits(document, answer.value.car, 'front'), row: answer.value };
};

test('within, close to an end, and out; both sides in one verdict', () => {
  const { limits, row } = judged([
    { reading: 'camber', axle: 'front', min: -4, max: 0, why: 'series rules', source: '5.2' },
    { reading: 'camber', axle: 'front', min: -2.1, max: 0 },
    { reading: 'camber', axle: 'front', max: -2.5 },
    { reading: 'camber', axle: 'rear', min: -9 },
  ]);
  expect(limits.map(({ verdict }) => verdict)).toEqual(['within', 'close', 'broken']);
  expect(limits[0]).toMatchObject({ of: 'camber', name: 'Camber', why: 'series rules 5.2', min: -4, max: 0 });
  expect(limits[0]?.values.left).toBeCloseTo(row.left['camber'] as number, 9);
  expect(limits[2]?.spare).toBeLessThan(0);
});
