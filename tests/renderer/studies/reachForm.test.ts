import { describe, expect, test } from 'vitest';
import { resolveQuestion, toMechanism, type QuestionDocument, type WantedDocument } from '../../../geometry/index';
import { setupNamed } from '../../../renderer/state/settings';
import { fieldOf } from '../../../renderer/studies/question/fieldValue';
import { combinationsOf } from '../../../renderer/studies/reach/combinations';
import {
  beginPoint,
  beginReach,
  formOf,
  moved,
  nextWanted,
  withAllOf,
  withWhere,
  type MayForm,
  type ReachForm,
} from '../../../renderer/studies/reach/reachForm';
import { readReach, wantedOf } from '../../../renderer/studies/reach/readReach';
import { rulesAgainst } from '../../../renderer/studies/reach/rulesAgainst';
import { reachKept, sampleCar } from './sampleCar';

const document = sampleCar();
const kept = reachKept(document);

const EVERYTHING: QuestionDocument = {
  setup: 'Wet',
  setToe: 0.1,
  locked: true,
  count: 3,
  seed: 7,
  wanted: [
    { reading: 'camber', axle: 'rear', side: 'left', at: { travel: 20, rack: 0, roll: 1 }, value: -2, tolerance: 0.05 },
    {
      reading: 'camber',
      axle: 'front',
      side: 'both',
      at: { travel: [10, -10], rack: 5, roll: 0 },
      range: [-3, -2],
      tolerance: 0.1,
    },
    {
      reading: 'toe',
      axle: 'front',
      side: 'right',
      over: { motion: 'steer', from: -20, to: 20, steps: 5 },
      change: true,
      range: [null, 3],
      tolerance: 0.5,
    },
    { reading: 'rollCentreHeight', axle: 'rear', at: { travel: 0, rack: 0, roll: 0 }, range: [40, null], tolerance: 1 },
    { reading: 'rollGradient', at: { travel: 0, rack: 0, roll: 0 }, value: 2, tolerance: 0.2 },
  ],
  may: [
    { axle: 'front', adjuster: 'rearBush', sides: 'apart' },
    { axle: 'front', adjuster: 'armBolt', sides: 'together' },
    { axle: 'front', point: 'tieRodEnd', along: [0, 0, 1], range: [-15, 15], step: 0.5, sides: 'together' },
    { axle: 'rear', point: 'armPivot', along: [1, 0, 0.2], range: [0, 4], step: 1, sides: 'apart' },
  ],
};

const questionOf = (form: ReachForm): QuestionDocument => {
  const read = readReach(form, document);
  if ('faults' in read) throw new Error(JSON.stringify(read.faults));
  return read.question;
};
const faultsOf = (form: ReachForm) => {
  const read = readReach(form, document);
  return 'faults' in read ? read.faults : {};
};
const [, first] = kept[0] ?? [];
if (!first) throw new Error('the sample keeps questions');
const base = formOf(document, first, 'Baseline');
const withWanted = (part: Partial<ReachForm['wanted'][number]>): ReachForm => ({
  ...base,
  wanted: base.wanted.map((one, index) => (index === 0 ? { ...one, ...part } : one)),
});

describe('a question on the page', () => {
  test('a line that is added wants what is not wanted yet', () => {
    const lines = Array.from({ length: 20 }).reduce<ReachForm['wanted']>(
      (wanted) => [...wanted, nextWanted(document, { wanted }, 'rear')],
      [],
    );
    expect(new Set(lines.map(({ reading }) => reading)).size).toBe(20);
    expect(new Set(lines.map(({ id }) => id)).size).toBe(20);
  });

  test('the next line is what is wanted most besides: toe steady through the travel, the roll centre above something', () => {
    const begun = beginReach(document, 'Baseline', 'front');
    const [camber] = begun.wanted;
    if (!camber) throw new Error('a line');
    const toe = nextWanted(document, begun, 'front');
    const height = nextWanted(document, { wanted: [camber, toe] }, 'front');
    const may = withAllOf(begun, document, 'front').may;
    const form: ReachForm = {
      ...begun,
      wanted: [
        { ...camber, value: fieldOf(-3.2) },
        { ...toe, greatest: fieldOf(0.03) },
        { ...height, least: fieldOf(40) },
      ],
      may,
    };
    const question = questionOf(form);
    expect(question.wanted).toMatchObject([
      { reading: 'camber', axle: 'front', side: 'both', value: -3.2 },
      { reading: 'toe', over: { motion: 'bump', from: -30, to: 30, steps: 7 }, change: true, range: [-0.03, 0.03] },
      { reading: 'rollCentreHeight', range: [40, null] },
    ]);
    // all but what the rules lock and what sets the toe
    expect(may.map(({ name }) => name)).not.toContain('armBolt');
    expect(may.map(({ name }) => name)).not.toContain(document.front?.toeAdjuster);
    expect(may).toHaveLength(Object.keys(document.front?.adjusters ?? {}).length - 2);
    expect(withAllOf({ ...begun, may }, document, 'front').may).toEqual(may);
    expect(questionOf(formOf(document, question, 'Baseline'))).toEqual(question);
    expect(faultsOf({ ...form, wanted: [{ ...toe, greatest: fieldOf(-0.03) }] })['wanted.2.greatest']).toMatch(/below 0/);
  });

  test('over a stretch a reading is wanted steady, at one place as a value', () => {
    const [line] = base.wanted;
    if (!line) throw new Error('a line');
    expect(withWhere(line, 'over')).toMatchObject({ where: 'over', isChange: true, relation: 'steady' });
    expect(withWhere(withWhere(line, 'over'), 'at')).toMatchObject({ where: 'at', isChange: false, relation: 'value' });
  });

  test.each([...kept, ['everything that a question can say', EVERYTHING] as const])(
    '%s: read from the page as it is kept',
    (_, question) => {
      expect(questionOf(formOf(document, question, 'Baseline'))).toEqual(question);
    },
  );

  test('blanks: nothing typed is no number, and nothing to turn is said', () => {
    const faults = faultsOf(beginReach(document, 'Baseline', 'front'));
    expect(faults['wanted.1.value']).toBe('Camber: a number is missing.');
    expect(faults['may']).toBe('Nothing may be turned: choose parts.');
    expect(faultsOf({ ...base, wanted: [] })['wanted']).toContain('Nothing is wanted');
  });

  test.each<[string, ReachForm, string, RegExp]>([
    ['tolerance 0', withWanted({ tolerance: fieldOf(0) }), 'wanted.1.tolerance', /over 0/],
    ['tolerance below 0', withWanted({ tolerance: fieldOf(-0.1) }), 'wanted.1.tolerance', /over 0/],
    ['a word for a number', withWanted({ value: { value: null, typed: 'much' } }), 'wanted.1.value', /“much” is not a number/],
    [
      'a range the wrong way round',
      withWanted({ relation: 'within', least: fieldOf(1), greatest: fieldOf(-1) }),
      'wanted.1.greatest',
      /wrong way round/,
    ],
    [
      'a stretch of one position: only one of its ends would be judged',
      withWanted({ where: 'over', from: fieldOf(-30), to: fieldOf(30), steps: fieldOf(1) }),
      'wanted.1.where',
      /one is no stretch: take 2 at least/,
    ],
    [
      'a stretch the wrong way round',
      withWanted({ where: 'over', from: fieldOf(40), to: fieldOf(-40) }),
      'wanted.1.where',
      /lower to the higher/,
    ],
    ['half a position', withWanted({ where: 'over', steps: fieldOf(4.5) }), 'wanted.1.where', /whole number/],
    ['an unknown reading', withWanted({ reading: 'cambre' }), 'wanted.1.reading', /no reading “cambre”/],
    ['a setup that is gone', { ...base, setup: 'Gone' }, 'setup', /no setup “Gone”/],
    ['no answers asked for', { ...base, count: fieldOf(0) }, 'count', /from 1 to 1000/],
    ['toe to what', { ...base, toe: { kind: 'value', value: { value: null, typed: 'in' } } }, 'toe', /“in” is not a number/],
  ])('%s is said at its field', (_, form, field, words) => {
    expect(faultsOf(form)[field]).toMatch(words);
  });

  test('lines that exclude each other are said beside the fields of both, or of all three', () => {
    const begun = beginReach(document, 'Baseline', 'front');
    const [camber] = begun.wanted;
    if (!camber) throw new Error('a line');
    const may = withAllOf(begun, document, 'front').may;
    const asked = (...wanted: ReachForm['wanted']) => faultsOf({ ...begun, wanted, may });
    const three = { ...camber, value: fieldOf(-3), tolerance: fieldOf(0.1) };
    const above = { ...camber, id: 2, relation: 'above', least: fieldOf(-2.5) } as const;
    expect(asked(three, above)).toEqual({
      'wanted.1.value': 'Camber: this line and the second exclude each other at ride height: no car meets both.',
      'wanted.2.least': 'Camber: this line and the first exclude each other at ride height: no car meets both.',
    });
    expect(asked(three, { ...above, least: fieldOf(-2.95) })).toEqual({});
    expect(asked({ ...three, side: 'left' }, { ...above, side: 'right' })).toEqual({});
    const toe = { ...camber, reading: 'toe', value: fieldOf(0), tolerance: fieldOf(0.01) };
    const there = { ...toe, id: 2, place: { ...toe.place, travel: fieldOf(30) }, value: fieldOf(0.2) };
    const steady = { ...withWhere({ ...toe, id: 3 }, 'over'), greatest: fieldOf(0.05) };
    expect(asked(toe, there, steady)).toEqual({
      'wanted.1.value':
        'Toe: this line, the second and the third exclude each other at a place that they share: no car meets all of them.',
      'wanted.2.value':
        'Toe: this line, the first and the third exclude each other at a place that they share: no car meets all of them.',
      'wanted.3.greatest':
        'Toe: this line, the first and the second exclude each other at a place that they share: no car meets all of them.',
    });
    // a line that is wrong in itself is not held against others
    expect(asked({ ...three, tolerance: fieldOf(0) }, above)).toEqual({ 'wanted.1.tolerance': expect.stringMatching(/over 0/) });
  });

  test('an adjuster that is not there any more, one that is locked, one named twice', () => {
    const line = (name: string, id: number): MayForm => ({ kind: 'adjuster', id, axle: 'front', name, sides: 'together' });
    expect(faultsOf({ ...base, may: [line('gone', 1)] })['may.1.name']).toMatch(/no adjuster “gone” any more/);
    expect(faultsOf({ ...base, may: [line('armBolt', 1)] })['may.1.name']).toMatch(/locked: sample rules 5.2/);
    expect(faultsOf({ ...base, withLocked: true, may: [line('armBolt', 1)] })).toEqual({});
    expect(faultsOf({ ...base, may: [line('perch', 1), line('perch', 2)] })['may.2.name']).toMatch(/twice/);
  });

  test('a free point: its range, its step and its direction', () => {
    const point = beginPoint(1, 'front', 'tieRodEnd');
    if (point.kind !== 'point') throw new Error('a point');
    const faults = faultsOf({
      ...base,
      may: [
        {
          ...point,
          direction: 'own',
          along: [fieldOf(0), fieldOf(0), fieldOf(0)],
          least: fieldOf(2),
          greatest: fieldOf(1),
          step: fieldOf(0),
        },
      ],
    });
    expect(faults['may.1.range']).toMatch(/wrong way round/);
    expect(faults['may.1.step']).toMatch(/over 0/);
    expect(faults['may.1.along']).toMatch(/points nowhere/);
  });

  test.each([...kept, ['everything', EVERYTHING] as const])(
    '%s: the combinations said before are those that are tried',
    (_, question) => {
      const form = formOf(document, question, 'Baseline');
      const resolved = resolveQuestion(toMechanism(document), question, setupNamed(document, form.setup));
      expect(combinationsOf(form, document)).toBe(resolved.combinations);
    },
  );

  test('lines are moved by one place, and not past the ends', () => {
    const ids = (lines: readonly { readonly id: number }[]) => lines.map(({ id }) => id);
    expect(ids(moved(base.wanted, 3, -1))).toEqual([1, 3, 2]);
    expect(ids(moved(base.wanted, 1, -1))).toEqual([1, 2, 3]);
    expect(ids(moved(base.wanted, 3, 1))).toEqual([1, 2, 3]);
  });
});

describe('rules against what is wanted', () => {
  const camber = { reading: 'camber', axle: 'front', side: 'both', tolerance: 0.1 } as const;
  const sourcesOf = (wanted: WantedDocument, car = document) => rulesAgainst(car, wanted).map(({ source }) => source);

  test('a value whose whole tolerance lies past an end, and a range that does', () => {
    expect(sourcesOf({ ...camber, value: -4.2 })).toEqual(['sample rules 5.2']);
    expect(sourcesOf({ ...camber, side: 'right', value: 0.2 })).toEqual(['sample rules 5.2']);
    // its end is within the tolerance: that can be had
    expect(sourcesOf({ ...camber, value: -4.1 })).toEqual([]);
    expect(sourcesOf({ ...camber, value: -3.2 })).toEqual([]);
    const track = { reading: 'track', axle: 'front', tolerance: 5 } as const;
    expect(sourcesOf({ ...track, range: [1600, null] })).toEqual(['sample rules 4.1']);
    expect(sourcesOf({ ...track, range: [null, 1600] })).toEqual([]);
    expect(sourcesOf({ ...track, axle: 'rear', range: [1600, 1700] })).toEqual(['sample rules 4.1']);
  });

  test('only where the car stands, where limits are judged, and of the wheel and axle that the rule is of', () => {
    expect(sourcesOf({ ...camber, value: -5, at: { travel: 0, rack: 0 } })).toEqual(['sample rules 5.2']);
    expect(sourcesOf({ ...camber, value: -5, at: { travel: 30 } })).toEqual([]);
    expect(sourcesOf({ ...camber, value: -5, over: { motion: 'bump', from: -30, to: 30, steps: 5 } })).toEqual([]);
    expect(sourcesOf({ ...camber, value: -5, change: true })).toEqual([]);
    const ofLeft = {
      ...document,
      limits: [{ reading: 'camber', axle: 'front', side: 'left', min: -4, source: 'left' } as const],
    };
    expect(sourcesOf({ ...camber, value: -5 }, ofLeft)).toEqual(['left']);
    expect(sourcesOf({ ...camber, side: 'right', value: -5 }, ofLeft)).toEqual([]);
    expect(sourcesOf({ ...camber, axle: 'rear', value: -5 }, ofLeft)).toEqual([]);
  });

  test('a limit of a file in inches is compared in mm', () => {
    const inches = {
      ...document,
      units: { length: 'in' },
      limits: [{ reading: 'track', axle: 'front', max: 60, source: 'inches' }],
    } as const;
    const track = { reading: 'track', axle: 'front', tolerance: 5 } as const;
    expect(sourcesOf({ ...track, range: [1530, null] }, inches)).toEqual(['inches']);
    expect(sourcesOf({ ...track, range: [1520, null] }, inches)).toEqual([]);
  });

  test('a line by itself is read as soon as its numbers are there', () => {
    const [line] = base.wanted;
    if (!line) throw new Error('a line');
    expect(wantedOf({ ...line, value: fieldOf(-4.2) }, document)).toMatchObject({ reading: 'camber', value: -4.2 });
    expect(wantedOf({ ...line, value: { value: null, typed: '' } }, document)).toBeNull();
  });
});
