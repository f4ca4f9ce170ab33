import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { answerStudy, openStudy, type LeastSpare, type QuestionDocument } from '../../../geometry/index';
import { GapCell } from '../../../renderer/studies/answers/AnswerCells';
import { gapText, shortPairOf } from '../../../renderer/studies/answers/gapText';
import { fieldOf } from '../../../renderer/studies/question/fieldValue';
import { reachPlainTable, reachTable, type ReachOrder } from '../../../renderer/studies/reach/reachTable';
import { beginWays, readWays } from '../../../renderer/studies/ways/waysForm';
import { waysPlainTable, waysTable } from '../../../renderer/studies/ways/waysTable';
import { setupNamed } from '../../../renderer/state/settings';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { sampleCar } from './sampleCar';

const document = sampleCar();
const SHORT: LeastSpare = { pair: ['tyreFront', 'strutTube'], axle: 'front', side: 'both', spare: -2.94, verdict: 'short' };
const CLEAR: LeastSpare = { ...SHORT, spare: 4, verdict: 'clear' };
const WORDS = 'tyre front – strut tube short by 2.9 mm';

test('a pair that is short has its words and its verdict in the units that are read; one that is clear has none', () => {
  expect(shortPairOf(SHORT, STANDARD_UNITS)).toEqual({ verdict: 'broken', words: WORDS, brief: '2.9 short' });
  expect(shortPairOf(SHORT, STANDARD_UNITS, true)?.words).toBe(`front ${WORDS}`);
  const inches = shortPairOf({ ...SHORT, spare: -50.8 }, { ...STANDARD_UNITS, length: 'in' });
  expect(inches?.words).toMatch(/short by 2\.0+ ?(in|″)$/);
  expect(shortPairOf({ ...SHORT, spare: 0.2, verdict: 'not-proved' }, STANDARD_UNITS)).toMatchObject({
    verdict: 'close',
    brief: 'not proved',
  });
  expect(shortPairOf({ ...SHORT, verdict: 'cuts' }, STANDARD_UNITS)?.brief).toBe('cuts');
  expect(shortPairOf(CLEAR, STANDARD_UNITS)).toBeNull();
  expect(shortPairOf(null, STANDARD_UNITS)).toBeNull();
  // 0 is told where they cut and no depth is known
  expect(gapText(0, STANDARD_UNITS)).toBe('cuts');
});

test('the gap has the pair under it, with a shape of its verdict beside the words', () => {
  const cellOf = (spare: LeastSpare): string =>
    renderToStaticMarkup(createElement(GapCell, { text: '7.1', short: shortPairOf(spare, STANDARD_UNITS), why: undefined }));
  expect(cellOf(SHORT)).toMatch(
    new RegExp(
      `^<td[^>]*>7\\.1<.*title="${WORDS}"><span class="chip broken"><svg.*</svg>2\\.9 short</span><span class="unseen">: ${WORDS}<`,
    ),
  );
  expect(cellOf(CLEAR)).toMatch(/^<td[^>]*>7\.1<\/td>$/);
});

describe('a table of answers', () => {
  test('of ways says what is short in the row of the way, and as it is copied', () => {
    const read = readWays({ ...beginWays(document, 'Baseline'), value: fieldOf(-1.6), pairs: false }, document, 'front');
    if ('faults' in read) throw new Error('no faults');
    const made = answerStudy(openStudy(read.order));
    if (!made.ok) throw new Error('answered');
    const [first, second] = made.value.ways;
    if (!first || !second) throw new Error('two ways');
    const ways = [
      { ...first, leastGap: 7.06, leastSpare: SHORT },
      { ...second, leastGap: 12, leastSpare: CLEAR },
    ];
    const rows = waysTable(read.order, { ...made.value, ways }, STANDARD_UNITS, 7).groups.flatMap((group) => group.rows);
    expect(rows.find(({ index }) => index === 0)).toMatchObject({ gap: '7.1', short: { verdict: 'broken', words: WORDS } });
    expect(rows.find(({ index }) => index === 1)?.short).toBeNull();
    const plain = waysPlainTable(document, read.order, { ...made.value, ways }, STANDARD_UNITS);
    const column = plain.heads.indexOf('short of its margin');
    expect(plain.heads[column - 1]).toBe('least gap [mm]');
    expect(plain.rows.map((row) => row[column])).toEqual(expect.arrayContaining([WORDS, null]));
    for (const row of plain.rows) expect(row).toHaveLength(plain.heads.length);
  });

  test('of reach keeps what is met apart from what is short, and names the axle where it is about both', () => {
    const tableOf = (rear: boolean) => {
      const question: QuestionDocument = {
        count: 1,
        setToe: false,
        wanted: [{ reading: 'camber', axle: 'front', value: -1.6, tolerance: 0.2 }],
        may: [
          { axle: 'front', adjuster: 'plateAcross' },
          ...(rear ? [{ axle: 'rear', adjuster: 'upperRod', range: [0, 1], step: 1 } as const] : []),
        ],
      };
      const order: ReachOrder = {
        study: 'reach',
        document,
        setup: setupNamed(document, 'Baseline'),
        question,
        from: 'Baseline',
      };
      const made = answerStudy(openStudy(order));
      if (!made.ok) throw new Error(made.failure.message);
      const answers = made.value.answers.map((one) => ({ ...one, leastGap: 7.06, leastSpare: SHORT }));
      return [order, { ...made.value, answers }] as const;
    };
    const [order, answer] = tableOf(false);
    const [row] = reachTable(order, answer, STANDARD_UNITS, 4).rows;
    expect(row).toMatchObject({ gap: '7.1', short: { verdict: 'broken', words: WORDS }, answer: { met: true } });
    const plain = reachPlainTable(order, answer, STANDARD_UNITS);
    expect(plain.rows[0]?.[plain.heads.indexOf('short of its margin')]).toBe(WORDS);
    expect(plain.rows[0]).toHaveLength(plain.heads.length);
    expect(reachTable(...tableOf(true), STANDARD_UNITS, 4).rows[0]?.short?.words).toBe(`front ${WORDS}`);
  });
});
