import { describe, expect, test } from 'vitest';
import {
  answerStudy,
  fitterWords,
  openStudy,
  settingOf,
  readingsOfCar,
  assembleCar,
  toMechanism,
  valueInContractUnits,
  type QuestionDocument,
} from '../../../geometry/index';
import { effectsOf, columnsOf } from '../../../renderer/studies/answers/sideEffects';
import { isStale } from '../../../renderer/studies/answers/isStale';
import { turnedParts } from '../../../renderer/studies/answers/turnedParts';
import { reachPlainTable, reachTable, rowWords, type ReachOrder } from '../../../renderer/studies/reach/reachTable';
import { helpWords, missWords, nearestWords, proofWords, stepsWords } from '../../../renderer/studies/reach/reachWords';
import { isMetAsItStands } from '../../../renderer/studies/reach/stretches';
import { sparkPoints } from '../../../renderer/studies/reach/sparkPoints';
import { beginWays, readWays } from '../../../renderer/studies/ways/waysForm';
import { waysPlainTable, waysTable } from '../../../renderer/studies/ways/waysTable';
import { fieldOf } from '../../../renderer/studies/question/fieldValue';
import { answeredSetup } from '../../../renderer/state/answeredSetup';
import { setupNamed, withSetup } from '../../../renderer/state/settings';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { sampleCar } from './sampleCar';

const document = sampleCar();

const QUESTION: QuestionDocument = {
  setup: 'Baseline',
  setToe: true,
  count: 3,
  wanted: [
    { reading: 'camber', axle: 'front', side: 'both', at: { travel: 0 }, value: -2.2, tolerance: 0.05 },
    {
      reading: 'toe',
      axle: 'front',
      side: 'both',
      over: { motion: 'bump', from: -30, to: 30, steps: 5 },
      change: true,
      range: [-0.02, 0.02],
      tolerance: 0.01,
    },
  ],
  may: [
    { axle: 'front', adjuster: 'plateAcross' },
    { axle: 'front', adjuster: 'rodShim' },
  ],
};
const orderOf = (question: QuestionDocument): ReachOrder => ({
  study: 'reach',
  document,
  setup: setupNamed(document, 'Baseline'),
  question,
  from: 'Baseline',
});
const order = orderOf(QUESTION);
const answered = answerStudy(openStudy(order));
if (!answered.ok) throw new Error('answered');
const answer = answered.value;

describe('answers of reach as a table', () => {
  const table = reachTable(order, answer, STANDARD_UNITS, 4);
  const [best] = table.rows;
  if (!best) throw new Error('there is an answer');

  test('its setup, read again, gives the value that the table shows', () => {
    const setup = answeredSetup(document, { from: 'Baseline', settings: best.answer.settings, toeOn: ['front'], toe: true });
    const car = assembleCar(toMechanism(document), setup);
    const row = car.ok ? readingsOfCar(car.value).front : null;
    if (!row?.ok) throw new Error('it stands');
    const camber = valueInContractUnits(row.value.left.camber, 'angle');
    expect(camber).toBeCloseTo(best.answer.wanted[0]?.worst ?? NaN, 9);
    expect(best.wanted[0]?.value).toBe((camber as number).toFixed(2).replace('-', '−'));
  });

  test('the course over the stretch has the positions that were asked, and its worst is the answer’s', () => {
    const stretch = best.wanted[1]?.stretch;
    expect(stretch?.inputs).toEqual([-30, -15, 0, 15, 30]);
    expect(stretch?.lines.map(({ side }) => side)).toEqual(['both']);
    const [values] = stretch?.lines.map((line) => line.values) ?? [];
    expect(values?.[2]).toBeCloseTo(0, 9);
    const worst = best.answer.wanted[1]?.worst ?? NaN;
    expect(Math.min(...(values ?? []).map((value) => Math.abs(value - worst)))).toBeLessThan(1e-9);
  });

  test('dots of the course that miss are those outside the band', () => {
    const { lines, band, zero } = sparkPoints(
      { inputs: [-10, 0, 10], lines: [{ side: 'both', values: [-0.05, 0, 0.01] }], least: -0.02, greatest: 0.02 },
      112,
      38,
    );
    expect(lines[0]?.points.map(({ isMissed }) => isMissed)).toEqual([true, false, false]);
    expect(lines[0]?.points[0]?.y).toBeGreaterThan((band?.top ?? 0) + (band?.height ?? 0));
    expect(zero).toBe(56);
  });

  test('where the setup already gives what is wanted there is nothing to do', () => {
    const now = setupNamed(document, 'Baseline');
    const car = assembleCar(toMechanism(document), now);
    const row = car.ok ? readingsOfCar(car.value).front : null;
    if (!row?.ok) throw new Error('it stands');
    const camber = valueInContractUnits(row.value.left.camber, 'angle') as number;
    const asked = (value: number): QuestionDocument => ({
      ...QUESTION,
      wanted: [{ reading: 'camber', axle: 'front', side: 'both', value, tolerance: 0.1 }],
    });
    expect(isMetAsItStands(document, asked(camber + 0.09), 'Baseline')).toBe(true);
    expect(isMetAsItStands(document, asked(camber + 0.11), 'Baseline')).toBe(false);
  });

  test('what sets the toe is said with the parts, by how far it goes from where it stands', () => {
    const axle = 'front';
    const key = document[axle]?.toeAdjuster ?? '';
    const stands = (setup: ReturnType<typeof setupNamed>): number => {
      const car = assembleCar(toMechanism(document), setup);
      const reset = car.ok ? car.value.front?.toeReset : null;
      return reset ? reset.left : (settingOf(setup, axle, key, 'left') ?? 0);
    };
    const found = { from: 'Baseline', settings: best.answer.settings, toeOn: [axle], toe: true } as const;
    const turns = stands(answeredSetup(document, found)) - stands(setupNamed(document, 'Baseline'));
    expect(Math.abs(turns)).toBeGreaterThan(0.05);
    const [words] = best.toe;
    expect(words).toMatch(new RegExp(`^.+ about .*turns? ${turns > 0 ? 'longer' : 'shorter'}(, to .+)?$`));
    const said = fitterWords(document[axle]!.adjusters![key]!, Math.round(turns * 100) / 100, 1, STANDARD_UNITS).short;
    expect(words).toContain(said);
    expect(rowWords(best)).toContain(said);
    // from a setup in which it is turned already it is said where it comes to stand as well
    const own = document[axle]!;
    const turned = {
      ...document,
      setups: { ...document.setups, Baseline: { ...document.setups!['Baseline'], [axle]: { both: { [key]: 2 } } } },
    } as typeof document;
    const answeredTurned = answerStudy(openStudy({ ...orderOf(QUESTION), document: turned }));
    if (!answeredTurned.ok) throw new Error('answered');
    const [from2] = reachTable({ ...orderOf(QUESTION), document: turned }, answeredTurned.value, STANDARD_UNITS, 4).rows;
    const ends = stands(answeredSetup(turned, { ...found, settings: from2!.answer.settings }));
    const end = fitterWords(own.adjusters![key]!, Math.round(ends * 100) / 100, 1, STANDARD_UNITS).short;
    expect(from2!.toe[0]).toContain(`, to ${end}`);
    // without a toe reset nobody touches it
    const kept: QuestionDocument = { ...QUESTION, setToe: false };
    const answeredKept = answerStudy(openStudy(orderOf(kept)));
    if (!answeredKept.ok) throw new Error('answered');
    expect(reachTable(orderOf(kept), answeredKept.value, STANDARD_UNITS, 4).rows[0]?.toe).toEqual([]);
  });

  test('settings that give everything stand first, whatever the score of one that leaves its band', () => {
    const [first] = answer.answers;
    if (!first) throw new Error('there is an answer');
    const answers = [
      { ...first, met: false, score: 0.1 },
      { ...first, met: true, score: 0.4 },
      { ...first, met: true, score: 0.6 },
    ];
    const sorted = reachTable(order, { ...answer, answers }, STANDARD_UNITS, 4).rows;
    expect(sorted.map((row) => row.answer.score)).toEqual([0.4, 0.6, 0.1]);
    expect(sorted.map(({ index }) => index)).toEqual([0, 1, 2]);
  });

  test('as it is copied: a number in every column that is one', () => {
    const plain = reachPlainTable(order, answer, STANDARD_UNITS);
    expect(plain.rows).toHaveLength(3);
    for (const row of plain.rows) expect(row).toHaveLength(plain.heads.length);
    expect(plain.heads.slice(0, 4)).toEqual(['rank', 'settings', 'camber [°]', 'camber: met?']);
    expect(plain.rows[0]?.[2]).toBeCloseTo(best.answer.wanted[0]?.worst ?? NaN, 9);
  });
});

describe('words of an answer', () => {
  const [camber, toe] = QUESTION.wanted;
  if (!camber || !toe) throw new Error('two wanted');

  test('met, short of a value or over it, outside a range', () => {
    expect(missWords(camber, { worst: -2.16, missBy: 0.04 }, STANDARD_UNITS)).toEqual({ isMet: true, words: 'met' });
    expect(missWords(camber, { worst: -2.03, missBy: 0.17 }, STANDARD_UNITS).words).toBe('0.17° short');
    expect(missWords(camber, { worst: -2.37, missBy: 0.17 }, STANDARD_UNITS).words).toBe('0.17° over');
    expect(missWords(toe, { worst: -0.03, missBy: 0.01 }, STANDARD_UNITS).words).toBe('0.010° over');
    const above = { reading: 'rollCentreHeight', axle: 'front', range: [34, null], tolerance: 1 } as const;
    expect(missWords(above, { worst: 32, missBy: 2 }, STANDARD_UNITS).words).toBe('2.0 mm short');
  });

  test('a miss under the digits that are shown is not nothing', () => {
    expect(missWords(toe, { worst: 0.0203, missBy: 0.0003 }, STANDARD_UNITS)).toEqual({ isMet: false, words: '< 0.001° over' });
    expect(missWords(camber, { worst: -2.1, missBy: 0.0504 }, STANDARD_UNITS).words).toBe('0.05° short');
  });

  test('what misses first, then what is met', () => {
    const misses = [
      { isMet: false, words: '0.11° short' },
      { isMet: true, words: 'met' },
      { isMet: true, words: 'met' },
    ];
    expect(nearestWords(['Camber', 'Roll centre', 'Toe change'], misses)).toBe(
      'camber is 0.11° short; roll centre and toe change are met',
    );
  });

  test('the proof', () => {
    expect(proofWords({ tried: 4394, all: true })).toBe('all 4,394 combinations tried');
    expect(proofWords({ tried: 9132, all: false, starts: { of: 24, agreed: 20 } })).toBe(
      'searched from 24 starts, 20 ended on the best; 9,132 combinations tried, not all',
    );
  });

  test('what would help: an end of a part, and a limit with its rule', () => {
    const range = { kind: 'range', axle: 'front', side: 'both', name: 'plateAcross', end: 'min', by: 1, gain: 2 } as const;
    expect(helpWords(document, range, STANDARD_UNITS)).toEqual({
      what: 'Top plate, across (front): one step past −12 mm',
      why: 'end of its range',
    });
    const limit = { kind: 'limit', axle: 'front', side: 'both', name: 'track', end: 'max', by: 1, gain: 2 } as const;
    expect(helpWords(document, limit, STANDARD_UNITS)).toEqual({
      what: 'Track (front): the limit 1,590.0 mm let out by 1.0 mm',
      why: 'track of the homologated body, sample rules 4.1',
    });
  });

  test('the steps that a part has', () => {
    expect(stepsWords(document, 'front', 'plateAcross', STANDARD_UNITS)).toBe('21 steps of 1 mm, −12…+8');
    expect(stepsWords(document, 'front', 'clampBolt', STANDARD_UNITS)).toBe('13 marks of 15°');
    expect(stepsWords(document, 'front', 'rearBush', STANDARD_UNITS)).toBe('12 marks of 30°');
    expect(stepsWords(document, 'rear', 'upperRod', STANDARD_UNITS)).toBe('97 steps of 0.125 turn, −6…+6');
  });

  test('parts that are turned, in the order of the file, in the fitter’s words', () => {
    const parts = turnedParts(
      document,
      { front: { both: { clampBolt: 30 }, left: { rodShim: 1 }, right: { rodShim: 0.5 } } },
      STANDARD_UNITS,
    );
    expect(parts.map(({ label, words }) => `${label}: ${words}`)).toEqual([
      'Clamp bolt: 2 marks, top in',
      'Tie-rod end shims: left 1 mm down; right 0.5 mm down',
    ]);
  });
});

describe('side effects', () => {
  test('left and right that change alike are one; else the wheel that changes more', () => {
    const effects = effectsOf(document, {
      'front.left.caster': 0.2,
      'front.right.caster': 0.2,
      'front.left.camber': 0.1,
      'front.right.camber': -0.3,
      'front.both.track': 12,
      'wholeCar.rake': null,
    });
    expect(effects.map(({ column, change, side, share }) => [column.key, change, side, share])).toEqual([
      ['front.caster', 0.2, null, 0.4],
      ['front.camber', -0.3, 'right', expect.closeTo(-3, 9)],
      ['front.track', 12, null, 1.2],
      ['wholeCar.rake', null, null, null],
    ]);
  });

  test('the columns are those that matter most, in the order in which one asks', () => {
    const rows = [
      effectsOf(document, {
        'front.left.camber': 0.5,
        'front.both.track': 1,
        'front.left.caster': 3,
        'front.left.scrubRadius': 0.1,
      }),
    ];
    expect(columnsOf(rows, 2, []).map(({ key }) => key)).toEqual(['front.camber', 'front.caster']);
    expect(columnsOf(rows, 2, ['front.track']).map(({ key }) => key)).toEqual(['front.caster', 'front.track']);
  });
});

describe('ways as a table', () => {
  const form = { ...beginWays(document, 'Baseline'), value: fieldOf(-1.6), pairs: false };
  const read = readWays(form, document, 'front');
  if ('faults' in read) throw new Error('no faults');
  const result = answerStudy(openStudy(read.order));
  if (!result.ok) throw new Error('answered');
  const table = waysTable(read.order, result.value, STANDARD_UNITS, 7);

  test('what a part is past its rule by has the unit of the part', () => {
    const [way] = result.value.ways;
    if (!way) throw new Error('a way');
    const saidOf = (of: string, by: number): string | undefined => {
      const walls = [{ ...way, broken: [{ kind: 'setting', of, by }] as const }];
      return waysTable(read.order, { ...result.value, walls }, STANDARD_UNITS, 7)
        .groups.flatMap(({ rows }) => rows)
        .find(({ isWalled }) => isWalled)?.verdictWords;
    };
    expect(saidOf('armBolt', 30)).toBe('Front arm bolt 30° past its rule');
    expect(saidOf('plateAcross', 2.5)).toBe('Top plate, across 2.5 mm past its rule');
    expect(saidOf('tieRod', 0.25)).toBe('Tie rod 0.25 turns past its rule');
  });

  test('every way stands in one group, with a verdict that says its miss', () => {
    const rows = table.groups.flatMap((group) => group.rows);
    expect(rows).toHaveLength(result.value.ways.length + (result.value.walls?.length ?? 0));
    for (const row of rows) {
      if (row.isWalled) {
        expect(row.verdict).toBe('broken');
        expect(row.verdictWords).toMatch(/past|not judged/);
        continue;
      }
      expect(row.verdict === 'within').toBe(row.way.reaches);
      if (row.way.reaches) expect(row.verdictWords).toBe('reaches');
      else expect(row.verdictWords).toContain(row.way.missBy.toFixed(2));
    }
    const clamp = rows.find(({ parts }) => parts[0]?.name === 'clampBolt');
    expect(clamp?.group).toBe('alone');
    expect(clamp?.parts[0]?.words).toMatch(/^\d marks?, top in$/);
  });

  test('as it is copied', () => {
    const plain = waysPlainTable(document, read.order, result.value, STANDARD_UNITS);
    for (const row of plain.rows) expect(row).toHaveLength(plain.heads.length);
    expect(plain.heads).toContain('change of front roll centre [mm]');
  });

  test('a sentence with blanks, or with a tolerance of nothing, says which', () => {
    const faults = readWays({ ...form, value: fieldOf(null), tolerance: fieldOf(0), setup: 'Gone' }, document, 'front');
    expect('faults' in faults && Object.keys(faults.faults)).toEqual(['value', 'tolerance', 'setup']);
    const ofCar = readWays({ ...form, reading: 'rake' }, document, 'front');
    expect('faults' in ofCar && ofCar.faults.reading).toMatch(/of a corner or an axle/);
  });
});

describe('an answer of a car that was changed', () => {
  const turned = (setup: string) =>
    withSetup(document, setup, { ...setupNamed(document, setup), front: { both: { clampBolt: 45 } } });

  test('another number of the setup that was asked about, or of the car, makes it stale', () => {
    expect(isStale(document, turned('Baseline'), 'Baseline')).toBe(true);
    expect(isStale(document, { ...document, limits: [] }, 'Baseline')).toBe(true);
    const front = document.front;
    if (!front) throw new Error('a front axle');
    expect(isStale(document, { ...document, front: { ...front, toeAdjuster: 'rodShim' } }, 'Baseline')).toBe(true);
  });

  test('another setup, a note or a kept question does not', () => {
    expect(isStale(document, turned('Wet'), 'Baseline')).toBe(false);
    expect(isStale(document, { ...document, questions: {}, notes: 'another' }, 'Baseline')).toBe(false);
    const noted = withSetup(document, 'Baseline', { ...setupNamed(document, 'Baseline'), notes: 'damp' });
    expect(isStale(document, noted, 'Baseline')).toBe(false);
  });
});
