import { describe, expect, test } from 'vitest';
import { parseCar, serializeCar, type AskedStudy, type CarDocument, type KeptQuestionDocument } from '../../../geometry/index';
import { motionRanges } from '../../../renderer/compute/motionRanges';
import { standingRow } from '../../../renderer/compute/standing';
import { adjusterRenamed } from '../../../renderer/points/renaming/adjusterRenamed';
import { faultOfDeleting, withSetupRenamed } from '../../../renderer/state/setupEdits';
import { compareForms } from '../../../renderer/studies/compare/compareForm';
import { gaugesForms } from '../../../renderer/studies/gauges/gaugeForm';
import { influenceForms } from '../../../renderer/studies/influence/influenceForm';
import type { Keepable } from '../../../renderer/studies/kept/keptParts';
import { keptFor, type QuestionForms } from '../../../renderer/studies/kept/useQuestionPage';
import { mapForms } from '../../../renderer/studies/map/mapForm';
import { fieldOf } from '../../../renderer/studies/question/fieldValue';
import { sweepForms } from '../../../renderer/studies/sweep/sweepForm';
import { waysForms } from '../../../renderer/studies/ways/waysForm';
import { sampleCar } from './sampleCar';

const document = sampleCar();
const ranges = motionRanges(document, 'front', standingRow({ document, setup: 'Baseline' }, 'front'));

const keepOf = (answer: Keepable<KeptQuestionDocument>): KeptQuestionDocument => {
  if ('question' in answer) return answer.question;
  throw new Error(`not kept: ${String(answer.fault)}`);
};

/** What a study makes of a question that the file keeps, and of its own form with its blanks. */
const study = <Ask extends AskedStudy, Form>({ begin, formOf, questionOf }: QuestionForms<Ask, Form>) => ({
  again: (question: KeptQuestionDocument) => keepOf(questionOf(formOf(question as Parameters<typeof formOf>[0]))),
  begun: () => questionOf(begin()),
});

const STUDIES = {
  ways: study(waysForms(document, 'Baseline', 'front')),
  influence: study(influenceForms('front')),
  map: study(mapForms(document, 'front')),
  sweep: study(sweepForms('front', ranges)),
  compare: study(compareForms('front')),
  gauges: study(gaugesForms(document, 'front', ranges)),
};

const QUESTIONS: readonly KeptQuestionDocument[] = [
  {
    ask: 'ways',
    setup: 'Wet',
    setToe: 0.1,
    locked: true,
    axle: 'front',
    side: 'left',
    at: { travel: 20, roll: 1, rack: -3 },
    reading: 'camber',
    value: -3,
    tolerance: 0.05,
    pairs: false,
  },
  { ask: 'influence', setToe: false, locked: true, axle: 'front', side: 'right', at: { rack: 10 }, readings: ['toe', 'rake'] },
  {
    ask: 'map',
    setToe: true,
    axle: 'front',
    side: 'left',
    x: { adjuster: 'plateAcross' },
    y: { motion: 'steer' },
    reading: 'camber',
    wheel: 'right',
    value: -3,
    tolerance: 0.2,
    where: { reading: 'rollCentreHeight', range: [null, 60] },
  },
  {
    ask: 'map',
    setToe: true,
    axle: 'front',
    side: 'both',
    x: { adjuster: 'plateAcross' },
    y: { adjuster: 'rearBush' },
    reading: 'toe',
    wheel: 'left',
    tolerance: 0.02,
  },
  { ask: 'sweep', axle: 'front', at: { rack: 5 }, over: { motion: 'roll', from: -3, to: 3, steps: 13 }, readings: ['camber'] },
  { ask: 'sweep', positions: [{ travel: 10, roll: 0.5 }, {}], readings: ['toe', 'track'] },
  {
    ask: 'compare',
    axle: 'front',
    against: ['Wet', 'Baseline'],
    at: { travel: -10 },
    motion: 'roll',
    readings: ['camber', 'toe', 'caster', 'track'],
    alike: false,
  },
  { ask: 'gauges', axle: 'front', gauge: 'bumpSteer', from: -30, to: 30, by: 10, spacing: 300, dials: 'thou' },
  { ask: 'gauges', axle: 'front', gauge: 'strings', from: 0, to: 0, by: 5, offset: 900, diameter: 430, lip: 110 },
  {
    ask: 'gauges',
    axle: 'front',
    gauge: 'floor',
    pads: { frontLeft: 1, frontRight: 0, rearLeft: -2, rearRight: 0 },
    cambers: { frontLeft: -2.1 },
  },
];

/** The car with questions kept; the file is read again, so that a fault of one is said. */
const carKeeping = (questions: Readonly<Record<string, KeptQuestionDocument>>): CarDocument => {
  const read = parseCar(serializeCar({ ...document, questions }));
  if (!read.ok) throw new Error(JSON.stringify(read.failure.faults, null, 1));
  return read.value.document;
};

describe('a question that the car file keeps', () => {
  test.each(QUESTIONS.map((question, index) => [`${index}: ${String(question.ask)}`, question] as const))(
    '%s comes back from its form as it was',
    (_name, question) => {
      const { asked } = carKeeping({ asked: question }).questions ?? {};
      expect(asked).toEqual(question);
      expect(STUDIES[question.ask as keyof typeof STUDIES].again(question)).toEqual(question);
    },
  );

  test('can be kept as each study begins, where it has no blanks, and the file has no fault then', () => {
    const kept = Object.entries(STUDIES).flatMap(([name, { begun }]) => {
      const answer = begun();
      return 'question' in answer ? [[name, answer.question] as const] : [];
    });
    expect(kept.map(([name]) => name)).toEqual(['influence', 'map', 'sweep', 'compare', 'gauges']);
    const car = carKeeping(Object.fromEntries(kept));
    expect(Object.keys(STUDIES).flatMap((name) => keptFor(car, name as AskedStudy))).toEqual(kept.map(([name]) => name));
    expect(STUDIES.ways.begun()).toEqual({ fault: null });
  });

  test('a recorded list and setups of other files stay outside, and it is said why', () => {
    const sweep = sweepForms('front', ranges);
    expect(sweep.questionOf({ ...sweep.begin(), motion: 'list' })).toEqual({ fault: expect.stringContaining('its own file') });
    const compare = compareForms('front');
    expect(compare.questionOf({ ...compare.begin(), others: ['own:Wet', 'file:Baseline'] })).toEqual({
      fault: expect.stringContaining('Only setups of this file'),
    });
  });

  test('a field with no number in it cannot be kept', () => {
    const gauges = gaugesForms(document, 'front', ranges);
    expect(gauges.questionOf({ ...gauges.begin(), by: fieldOf(null) })).toEqual({ fault: null });
    const map = mapForms(document, 'front');
    expect(map.questionOf({ ...map.begin(), threshold: { value: null, typed: 'sixty' } })).toEqual({ fault: null });
  });

  test('follows the names of setups and adjusters', () => {
    const car = carKeeping(Object.fromEntries(QUESTIONS.map((question, index) => [`question ${index}`, question])));
    const setupRenamed = withSetupRenamed(car, 'Wet', 'Rain').questions ?? {};
    expect(setupRenamed['question 0']).toMatchObject({ setup: 'Rain' });
    expect(setupRenamed['question 6']).toMatchObject({ against: ['Rain', 'Baseline'] });
    expect(faultOfDeleting(car, 'Wet')).toContain('“question 6”');
    expect(faultOfDeleting(car, 'Wet')).toMatch(/^The question .* of this setup, so it cannot be deleted\.$/);
    const renamed = adjusterRenamed(car, 'front', 'plateAcross', 'topAcross').questions ?? {};
    expect(renamed['question 2']).toMatchObject({ x: { adjuster: 'topAcross' }, y: { motion: 'steer' } });
    expect(renamed['question 3']).toMatchObject({ x: { adjuster: 'topAcross' }, y: { adjuster: 'rearBush' } });
    expect(adjusterRenamed(car, 'rear', 'plateAcross', 'topAcross').questions).toEqual(car.questions);
  });
});
