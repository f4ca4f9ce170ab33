import { expect, test } from 'vitest';
import type { KeptQuestionDocument, QuestionDocument } from '../../../geometry/index';
import { carDifferences } from '../../../renderer/files/carDifferences';
import { sampleCar } from '../studies/sampleCar';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';

test('a question that differs is told as a sentence, not as the text of the file', () => {
  const saved = sampleCar();
  const kept = Object.entries(saved.questions ?? {});
  const told = carDifferences({ ...saved, questions: {} }, saved, { against: 'Baseline' }, STANDARD_UNITS);
  expect(told).toHaveLength(kept.length);
  expect(told.map(({ part, where, before }) => [part, where, before])).toEqual(
    kept.map(([name]) => [name, 'Questions', 'nothing']),
  );
  for (const { after } of told) expect(after).not.toMatch(/[{}"]|undefined|NaN/);
  expect(
    carDifferences(saved, { ...saved, questions: {} }, { against: 'Baseline' }, STANDARD_UNITS).map(({ after }) => after),
  ).toEqual(kept.map(() => 'deleted'));
  const asked = (question: KeptQuestionDocument) => ({ ...saved, questions: { Asked: question } });
  const said = (question: KeptQuestionDocument) =>
    carDifferences({ ...saved, questions: {} }, asked(question), { against: 'Baseline' }, STANDARD_UNITS)[0]?.after;
  const wanted: QuestionDocument = {
    setup: 'Wet',
    setToe: true,
    wanted: [
      { reading: 'camber', axle: 'front', side: 'left', value: -3.2, tolerance: 0.05 },
      {
        reading: 'toe',
        axle: 'front',
        over: { motion: 'bump', from: -30, to: 30, steps: 7 },
        change: true,
        range: [-0.03, 0.03],
        tolerance: 0.01,
      },
      { reading: 'rollCentreHeight', axle: 'front', at: { travel: 10 }, range: [40, null], tolerance: 1 },
    ],
    may: [
      { axle: 'front', adjuster: 'plateAcross' },
      { axle: 'front', point: 'tieRodEnd', along: [0, 0, 1], range: [-5, 5], step: 1, sides: 'apart' },
    ],
  };
  expect(said(wanted)).toBe(
    'Front left camber −3.20° ± 0.05; front toe change within ±0.030° over bump −30…+30 mm in 7 positions; front roll centre height above 40.0 mm at bump +10 mm; by front top plate, across and front tie rod end, each side, from Wet, toe set after',
  );
  expect(said({ ask: 'ways', axle: 'rear', side: 'both', reading: 'toe', value: 0.1 })).toBe('Rear toe to 0.100°');
  expect(
    said({
      ask: 'map',
      axle: 'front',
      x: { adjuster: 'plateAcross' },
      y: { motion: 'bump' },
      reading: 'camber',
      wheel: 'left',
      value: -3,
    }),
  ).toBe('Front left camber over top plate, across and bump, marked at −3.00°');
  expect(said({ ask: 'gauges', axle: 'front', gauge: 'bumpSteer' })).toBe('Front bump-steer gauge');
  // another number of starts is in no sentence: told as it stands
  expect(carDifferences(asked(wanted), asked({ ...wanted, seed: 7 }), { against: 'Baseline' }, STANDARD_UNITS)).toMatchObject([
    { part: 'Seed', where: 'Questions, Asked', before: 'nothing', after: '7' },
  ]);
});
