import { describe, expect, test } from 'vitest';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';
import { temporaryFolder } from '../temporaryFolder';
import { jounceBatch, jounceJson, type Json } from './jounce';

const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');

/** § stands before what is wrong: there the fault has to point. */
interface BadQuestion {
  readonly title: string;
  readonly text: string;
  readonly code: string;
  readonly path: string;
}

const MAY = '"may": [ { "axle": "front", "adjuster": "plateAcross" } ]';
const camber = (rest: string): string => `{ "reading": "camber", "axle": "front", ${rest} }`;
const GOOD = camber('"value": -2, "tolerance": 0.1');
const want = (...lines: readonly string[]): string => `{\n  "wanted": [\n    ${lines.join(',\n    ')}\n  ],\n  ${MAY}\n}`;
const turn = (...lines: readonly string[]): string => `{ "wanted": [ ${GOOD} ],\n  "may": [\n    ${lines.join(',\n    ')}\n  ] }`;
const bad = (title: string, code: string, at: string, text: string): BadQuestion => ({ title, code, path: at, text });

const POINT = '"axle": "front", "point": "tieRodEnd"';

const QUESTIONS: readonly BadQuestion[] = [
  bad(
    'an unknown reading',
    'unknown-reading',
    'wanted[0].reading',
    want('{ "reading": §"cambr", "axle": "front", "value": 1, "tolerance": 1 }'),
  ),
  bad(
    'a reading of three numbers',
    'unknown-reading',
    'wanted[0].reading',
    want('{ "reading": §"wheelCentre", "axle": "front", "value": 1, "tolerance": 1 }'),
  ),
  bad('an unknown adjuster', 'unknown-adjuster', 'may[0].adjuster', turn('{ "axle": "front", "adjuster": §"plate" }')),
  bad(
    'an adjuster of the other axle',
    'unknown-adjuster',
    'may[1].adjuster',
    turn('{ "axle": "front", "adjuster": "plateAcross" }', '{ "axle": "rear", "adjuster": §"plateAcross" }'),
  ),
  bad(
    'an unknown point',
    'unknown-point',
    'may[0].point',
    turn(`{ "axle": "front", "point": §"tieRodEn", "along": [0, 0, 1], "range": [0, 1], "step": 1 }`),
  ),
  bad('an unknown setup', 'unknown-setup', 'setup', `{ "setup": §"Dry", "wanted": [ ${GOOD} ], ${MAY} }`),
  bad('nothing wanted', 'question-form', 'wanted', `{ "wanted": §[], ${MAY} }`),
  bad('nothing to turn', 'question-form', 'may', `{ "wanted": [ ${GOOD} ], "may": §[] }`),
  bad('neither value nor range', 'question-form', 'wanted[1]', want(GOOD, `§${camber('"tolerance": 1')}`)),
  bad('a value and a range', 'question-form', 'wanted[0]', want(`§${camber('"value": 1, "range": [0, 2], "tolerance": 1')}`)),
  bad(
    'at one place and over a stretch',
    'question-form',
    'wanted[0]',
    want(`§${camber('"value": 1, "tolerance": 1, "at": {}, "over": { "motion": "bump", "from": 0, "to": 1, "steps": 2 }')}`),
  ),
  bad('a range open at both ends', 'question-form', 'wanted[0].range', want(camber('"range": §[null, null], "tolerance": 1'))),
  bad('a range the wrong way round', 'reversed-range', 'wanted[0].range', want(camber('"range": §[1, -1], "tolerance": 1'))),
  bad(
    'a range of a point the wrong way round',
    'reversed-range',
    'may[0].range',
    turn(`{ ${POINT}, "along": [0, 0, 1], "range": §[2, -2], "step": 1 }`),
  ),
  bad('tolerance 0', 'out-of-range', 'wanted[0].tolerance', want(camber('"value": 1, "tolerance": §0'))),
  bad('a tolerance below 0', 'out-of-range', 'wanted[0].tolerance', want(camber('"value": 1, "tolerance": §-0.1'))),
  bad('a tolerance of nothing much', 'question-form', 'wanted[0].tolerance', want(camber('"value": 1, "tolerance": §1e-300'))),
  bad('no tolerance', 'missing-key', 'wanted[0].tolerance', want(`§${camber('"value": 1')}`)),
  bad('a step of 0', 'out-of-range', 'may[0].step', turn(`{ ${POINT}, "along": [0, 0, 1], "range": [0, 1], "step": §0 }`)),
  bad(
    'a direction of no length',
    'zero-direction',
    'may[0].along',
    turn(`{ ${POINT}, "along": §[0, 0, 0], "range": [0, 1], "step": 1 }`),
  ),
  bad('no answers', 'out-of-range', 'count', `{ "count": §0, "wanted": [ ${GOOD} ], ${MAY} }`),
  bad('a word for a number', 'wrong-type', 'wanted[0].value', want(camber('"value": §"much", "tolerance": 1'))),
  bad(
    'a part named twice',
    'question-form',
    'may[1].adjuster',
    turn('{ "axle": "front", "adjuster": "plateAcross" }', '{ "axle": "front", "adjuster": §"plateAcross", "sides": "apart" }'),
  ),
  bad(
    'two values of one wheel, at the first',
    'question-form',
    'wanted[0].value',
    want(camber('"value": §-3, "tolerance": 0.05'), camber('"side": "left", "value": -2, "tolerance": 0.05')),
  ),
  bad(
    'two values of one wheel, at the second',
    'question-form',
    'wanted[1].value',
    want(camber('"value": -3, "tolerance": 0.05'), camber('"side": "left", "value": §-2, "tolerance": 0.05')),
  ),
  bad(
    'a value outside a range',
    'question-form',
    'wanted[1].range',
    want(camber('"value": -3, "tolerance": 0.05'), camber('"range": §[-2.5, null], "tolerance": 0.05')),
  ),
  bad(
    'held steady between ends that are wanted apart',
    'question-form',
    'wanted[2].range',
    want(
      camber('"value": -3, "tolerance": 0.05'),
      camber('"at": { "travel": 30 }, "value": -2, "tolerance": 0.05'),
      camber(
        '"over": { "motion": "bump", "from": -30, "to": 30, "steps": 3 }, "change": true, "range": §[-0.1, 0.1], "tolerance": 0.05',
      ),
    ),
  ),
];

/** Line and column of the mark, from 1. */
const placeOf = (text: string): readonly [number, number] => {
  const before = text.slice(0, text.indexOf('§')).split('\n');
  return [before.length, (before.at(-1) ?? '').length + 1];
};
const unmarked = (text: string): string => text.replace('§', '');
const faultAt = (error: Json | undefined, { code, path: at }: BadQuestion): Json | undefined =>
  [...((error?.['faults'] ?? []) as readonly Json[])].find(
    (fault) => String(fault['code']) === code && String(fault['path']) === at,
  );

const questionFiles = (): Promise<string> =>
  temporaryFolder(Object.fromEntries(QUESTIONS.map(({ text }, index) => [`${index}.json`, unmarked(text)])));

describe('a bad question of reach', () => {
  test('by the command line: each fault at its line and column', { timeout: 120_000 }, async () => {
    const folder = await questionFiles();
    for (const [index, question] of QUESTIONS.entries()) {
      const { status, document } = await jounceJson(['reach', HATCH, `${index}.json`], { folder });
      expect(status, question.title).toBe(2);
      expect(Object.keys(document), question.title).toEqual(['error']);
      expect(String(document['error']?.['kind']), question.title).toBe('file');
      const fault = faultAt(document['error'], question);
      expect(fault, `${question.title}: ${JSON.stringify(document['error'])}`).toBeDefined();
      expect([fault?.['line'], fault?.['column']], question.title).toEqual([...placeOf(question.text)]);
      expect(String(fault?.['expected']).length, question.title).toBeGreaterThan(0);
    }
  });

  test('in a batch: as a document each fault has its path, as a file its line too; the lines after it are answered', async () => {
    const folder = await questionFiles();
    const documents = QUESTIONS.map(({ text }, id) => ({
      id,
      car: HATCH,
      ask: 'reach',
      options: { question: JSON.parse(unmarked(text)) as object },
    }));
    const files = QUESTIONS.map((_, id) => ({
      id,
      car: HATCH,
      ask: 'reach',
      options: { question: path.join(folder, `${id}.json`) },
    }));
    const last = { id: 'last', car: HATCH, ask: 'ways', options: { wanted: 'camber=-1.6', axle: 'front' } };
    const { status, answers } = await jounceBatch([...documents, ...files, last]);
    expect(status).toBe(0);
    expect(answers).toHaveLength(2 * QUESTIONS.length + 1);
    QUESTIONS.forEach((question, index) => {
      const error = answers[index]?.['error'];
      expect(String(error?.['kind']), question.title).toBe('usage');
      expect(faultAt(error, question), `${question.title}: ${JSON.stringify(answers[index])}`).toMatchObject({
        line: null,
        column: null,
      });
      const [line, column] = placeOf(question.text);
      expect(faultAt(answers[QUESTIONS.length + index]?.['error'], question), question.title).toMatchObject({ line, column });
    });
    expect(answers.at(-1)).toHaveProperty('answer');
  });

  test('lines that exclude each other name one another', async () => {
    const folder = await questionFiles();
    const at = QUESTIONS.findIndex(({ title }) => title === 'a value outside a range');
    const { document } = await jounceJson(['reach', HATCH, `${at}.json`], { folder });
    expect(document['error']?.['faults']).toMatchObject([
      { path: 'wanted[0].value', found: '-3', expected: expect.stringContaining('wanted[1].range (-2.5 or more)') as unknown },
      {
        path: 'wanted[1].range',
        found: '[-2.5, null]',
        expected: expect.stringContaining('wanted[0].value (-3 within 0.05)') as unknown,
      },
    ]);
  });

  test('NaN, nothing at all, and half a question are no JSON, said where', async () => {
    const broken = await temporaryFolder({
      'nan.json': '{ "wanted": [\n  { "reading": "camber", "axle": "front", "value": NaN, "tolerance": 1 } ] }',
      'empty.json': '',
      'half.json': '{ "wanted": [',
    });
    for (const [name, line] of [
      ['nan.json', 2],
      ['empty.json', null],
      ['half.json', null],
    ] as const) {
      const { status, document } = await jounceJson(['reach', HATCH, name], { folder: broken });
      expect(status, name).toBe(2);
      const [fault] = [...((document['error']?.['faults'] ?? []) as readonly Json[])];
      expect(String(fault?.['code']), name).toBe('not-json');
      if (line !== null) expect(Number(fault?.['line']), name).toBe(line);
    }
    const { answers } = await jounceBatch([
      `{ "id": 1, "car": ${JSON.stringify(HATCH)}, "ask": "ways", "options": { "wanted": NaN } }`,
    ]);
    expect(answers[0]).toMatchObject({ id: null, error: { kind: 'usage' } });
  });
});

describe('a bad question of the other studies', () => {
  const MAP = ['map', HATCH, '--x', 'front.both.plateAcross', '--y', 'travel', '--reading', 'front.left.camber'];
  const WAYS = ['ways', HATCH, 'camber=-1', '--axle', 'front'];
  const SWEEP = ['sweep', HATCH, '--motion', 'bump', '--from', '0', '--to', '10', '--steps', '3'];
  const instead = (words: readonly string[], option: string, value: string): readonly string[] =>
    words.map((word, index) => (words[index - 1] === option ? value : word));
  test.each<[string, readonly string[], string]>([
    ['ways: an unknown reading', ['ways', HATCH, 'cambr=-1', '--axle', 'front'], 'cambr'],
    ['ways: NaN', ['ways', HATCH, 'camber=NaN', '--axle', 'front'], 'camber=NaN'],
    ['ways: nothing', ['ways', HATCH, 'camber=', '--axle', 'front'], 'camber='],
    ['ways: an unknown setup', [...WAYS, '--setup', 'Dry'], '"Dry"'],
    ['ways: an axle that no car has', instead(WAYS, '--axle', 'middle'), 'middle'],
    ['ways: a side that no car has', [...WAYS, '--side', 'middle'], 'middle'],
    ['ways: tolerance 0', [...WAYS, '--tolerance', '0'], '--tolerance'],
    ['ways: a tolerance of NaN', [...WAYS, '--tolerance', 'NaN'], '--tolerance'],
    ['ways: an unknown adjuster set', [...WAYS, '--set', 'front.both.plate=1'], 'plate'],
    ['influence: an unknown setup', ['influence', HATCH, '--setup', 'Dry'], '"Dry"'],
    ['influence: NaN', ['influence', HATCH, '--travel', 'NaN'], '--travel'],
    ['map: an unknown adjuster', instead(MAP, '--x', 'front.both.plate'), 'front.both.plate'],
    ['map: an unknown reading', instead(MAP, '--reading', 'front.left.cambr'), 'front.left.cambr'],
    ['map: an unknown setup', [...MAP, '--setup', 'Dry'], '"Dry"'],
    ['map: NaN', [...MAP, '--from', 'NaN', '--to', '3'], '--from'],
    ['map: no places', [...MAP, '--nx', '0'], '--nx'],
    ['sweep: NaN', instead(SWEEP, '--to', 'NaN'), '--to'],
    ['sweep: no steps', instead(SWEEP, '--steps', '0'), '--steps'],
    ['sweep: the swept quantity held too', [...SWEEP, '--travel', '4'], 'travel'],
    ['sweep: an unknown motion', instead(SWEEP, '--motion', 'heave'), 'heave'],
    ['sweep: an unknown setup', [...SWEEP, '--setup', 'Dry'], '"Dry"'],
  ])('%s is named', async (_, words, named) => {
    const { status, document } = await jounceJson(words);
    expect(status).toBe(2);
    expect(['usage', 'setup']).toContain(String(document['error']?.['kind']));
    expect(JSON.stringify(document['error'])).toContain(JSON.stringify(named).slice(1, -1));
  });
});
