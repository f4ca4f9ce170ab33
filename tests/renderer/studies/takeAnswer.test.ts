import { describe, expect, test } from 'vitest';
import { describeSheet, setupNames, STANDARD_UNITS, toMechanism, WHOLE_SHEET } from '../../../geometry/index';
import { deleteQuestion, faultOfQuestionName, keepQuestion, renameQuestion } from '../../../renderer/state/actions/questions';
import { turnAdjuster, undoStep } from '../../../renderer/state/actions/editSetup';
import { renameSetup, writeNotes } from '../../../renderer/state/actions/setups';
import { showAnswer, takeAnswer } from '../../../renderer/state/actions/takeAnswer';
import type { FoundAnswer } from '../../../renderer/state/answeredSetup';
import { comparedWith, type BenchStore } from '../../../renderer/state/benchStore';
import { copiedFrom } from '../../../renderer/state/copiedFrom';
import { setupNamed } from '../../../renderer/state/settings';
import { againstGroups } from '../../../renderer/setups/againstChoices';
import { adjusterRenamed } from '../../../renderer/points/renaming/adjusterRenamed';
import { pointRenamed } from '../../../renderer/points/renaming/pointRenamed';
import { benchNow, sampleBench, reachKept, sampleCar } from './sampleCar';

const FOUND: FoundAnswer = {
  from: 'Wet',
  settings: { front: { both: { clampBolt: 30, plateAcross: -4 } } },
  toeOn: ['front'],
  toe: true,
};

const sourceOf = (store: BenchStore): string | null => {
  const { history } = store.getState();
  if (!history) throw new Error('a car is open');
  return copiedFrom(history.present);
};

describe('an answer that is taken to the bench', () => {
  test('is a setup of its own beside the one that was started from: one step of undo, compared with that', () => {
    const store = sampleBench();
    const before = benchNow(store);
    const made = takeAnswer(store, FOUND, 'new', 'Take clamp bolt 2 marks');
    const bench = benchNow(store);
    expect(bench.setup).toBe(made);
    expect(setupNames(before.document)).not.toContain(made);
    expect(bench.against).toBe('Wet');
    expect(bench.document.setups?.['Wet']).toBe(before.document.setups?.['Wet']);
    expect(setupNamed(bench.document, bench.setup).front).toEqual({
      ...before.document.setups?.['Wet']?.front,
      both: { plateAcross: -4, perch: 3, clampBolt: 30 },
      setToe: -0.05,
    });
    expect(store.getState().history?.past.at(-1)?.name).toBe('Take clamp bolt 2 marks');
    undoStep(store);
    expect(benchNow(store)).toBe(before);
  });

  test('the new setup is a copy of the one that was started from, whatever stood on the bench, and has not its notes', () => {
    const store = sampleBench();
    expect(benchNow(store).setup).toBe('Trial 3');
    const made = takeAnswer(store, FOUND, 'new', 'Take it') ?? '';
    expect(sourceOf(store)).toBe('Wet');
    const from = { ...FOUND, from: 'Trial 3' };
    takeAnswer(store, from, 'new', 'Take it');
    const { setup, document } = benchNow(store);
    expect(setup).not.toBe(made);
    expect(document.setups?.['Trial 3']?.notes).toContain('five on the left');
    expect(document.setups?.[setup]).not.toHaveProperty('notes');
    expect(document.setups?.[setup]?.record).toEqual(document.setups?.['Trial 3']?.record);
    takeAnswer(store, from, 'change', 'Take it');
    expect(setupNamed(benchNow(store).document, 'Trial 3').notes).toContain('five on the left');
    expect(sourceOf(store)).toBeNull();
  });

  test('the first turn of a setup that came with the file leaves its notes behind too; its own are kept after that', () => {
    const store = sampleBench();
    turnAdjuster(store, 'plateAcross', 'Top plate, across', 'both', -7);
    const { setup } = benchNow(store);
    expect(benchNow(store).document.setups?.[setup]).not.toHaveProperty('notes');
    writeNotes(store, setup, 'one more inboard');
    turnAdjuster(store, 'plateAcross', 'Top plate, across', 'both', -8);
    expect(setupNamed(benchNow(store).document, setup).notes).toBe('one more inboard');
  });

  test('or changes the setup that was started from', () => {
    const store = sampleBench();
    const before = benchNow(store);
    expect(takeAnswer(store, FOUND, 'change', 'Take it')).toBe('Wet');
    expect(setupNames(benchNow(store).document)).toEqual(setupNames(before.document));
    expect(setupNamed(benchNow(store).document, 'Wet').front?.both?.['clampBolt']).toBe(30);
  });

  test('a number for both wheels takes their own away; a toe that was asked is set, one that follows is not', () => {
    const store = sampleBench();
    const shims = { front: { both: { rodShim: 1 } } };
    takeAnswer(store, { from: 'Trial 3', settings: shims, toeOn: ['front'], toe: 0.2 }, 'change', 'Take it');
    const { front } = setupNamed(benchNow(store).document, 'Trial 3');
    expect([front?.left, front?.right, front?.both?.['rodShim'], front?.setToe]).toEqual([undefined, undefined, 1, 0.2]);
    takeAnswer(store, { from: 'Baseline', settings: shims, toeOn: ['front'], toe: undefined }, 'change', 'Take it');
    expect(setupNamed(benchNow(store).document, 'Baseline').front?.setToe).toBeUndefined();
  });

  test('points of the drawing go where they would be', () => {
    const store = sampleBench();
    const points = { front: { points: { tieRodEnd: [1, 2, 3] } } } as const;
    takeAnswer(store, { ...FOUND, points }, 'new', 'Take it');
    expect(benchNow(store).document.front?.points['tieRodEnd']).toEqual([1, 2, 3]);
    expect(benchNow(store).document.front?.points['ballJoint']).toEqual(sampleCar().front?.points['ballJoint']);
  });

  test('points of the drawing are work to do in the notes of the new setup, and so on its sheet', () => {
    const store = sampleBench();
    const car = sampleCar();
    const [x, y, z] = car.front!.points['tieRodEnd'];
    const points = { front: { points: { tieRodEnd: [x, y - 1.5, z + 2.5] } } } as const;
    const made = takeAnswer(store, { ...FOUND, points }, 'new', 'Take it') ?? '';
    const { document } = benchNow(store);
    const { notes = '' } = setupNamed(document, made);
    expect(notes).toContain('no adjuster does it: move point tie rod end, front left, and right as its mirror image');
    expect(notes).toContain('by X 0.00, Y −1.50, Z +2.50 mm');
    expect(document.setups?.['Wet']?.notes).toBe(car.setups?.['Wet']?.notes);
    const sheet = describeSheet(toMechanism(document), {
      setup: { name: made, setup: setupNamed(document, made) },
      onCar: null,
      axles: ['front', 'rear'],
      clock: 'fitter',
      parts: WHOLE_SHEET,
      units: STANDARD_UNITS,
      date: '2026-05-16',
      fileName: null,
    });
    if (!sheet.ok) throw new Error(sheet.failure.message);
    const lines = sheet.value.sections.flatMap((section) => (section.kind === 'notes' ? section.lines : []));
    expect(lines.filter((line) => line.includes('move point tie rod end'))).toHaveLength(1);
  });

  test('a point that is moved on the right alone is said of the right alone', () => {
    const store = sampleBench();
    const [x, y, z] = sampleCar().front!.points['tieRodEnd'];
    const points = { front: { points: {}, right: { points: { tieRodEnd: [x, -y, z + 2] } } } } as const;
    const made = takeAnswer(store, { ...FOUND, points }, 'new', 'Take it') ?? '';
    const { notes = '' } = setupNamed(benchNow(store).document, made);
    expect(notes).toContain('tie rod end, front right, by X 0.00, Y 0.00, Z +2.00 mm');
    expect(notes).not.toContain('front left');
  });

  test('as a ghost it is what the bench is compared with, and the car stays as it is', () => {
    const store = sampleBench();
    const { document } = benchNow(store);
    showAnswer(store, FOUND, 'Clamp bolt 2 marks');
    const bench = benchNow(store);
    expect(bench.document).toBe(document);
    expect(bench.setup).toBe('Wet');
    expect(comparedWith(store.getState())).toMatchObject({ setup: 'Clamp bolt 2 marks', name: 'Clamp bolt 2 marks' });
    expect(store.getState().shown?.against).toBe('Clamp bolt 2 marks');
    expect(store.getState().shown?.difference.left['camber']).toBeGreaterThan(0);
    expect(againstGroups(bench, null).map(({ label }) => label)).toContain('Answer of a study');
    expect(store.getState().history?.past).toEqual([]);
  });
});

describe('questions kept in the car file', () => {
  const [name = ''] = Object.keys(sampleCar().questions ?? {});

  test('kept, renamed in their place, deleted: one step each', () => {
    const store = sampleBench();
    const [, question] = reachKept(sampleCar()).find(([one]) => one === name) ?? [];
    if (!question) throw new Error('a question');
    const names = () => Object.keys(benchNow(store).document.questions ?? {});
    const before = names();
    keepQuestion(store, 'Another', question);
    expect(names()).toEqual([...before, 'Another']);
    renameQuestion(store, name, 'First');
    expect(names()).toEqual(['First', ...before.slice(1), 'Another']);
    keepQuestion(store, 'First', { ...question, count: 2 });
    expect(benchNow(store).document.questions?.['First']).toMatchObject({ count: 2 });
    for (const one of names()) deleteQuestion(store, one);
    expect(benchNow(store).document).not.toHaveProperty('questions');
    expect(store.getState().history?.past).toHaveLength(3 + before.length + 1);
    undoStep(store);
    expect(names()).toHaveLength(1);
  });

  test('a name has to be one', () => {
    const document = sampleCar();
    expect(faultOfQuestionName(document, ' ', null)).toMatch(/needs a name/);
    expect(faultOfQuestionName(document, name, null)).toMatch(/already/);
    expect(faultOfQuestionName(document, name, name)).toBeNull();
    expect(faultOfQuestionName(document, '12', null)).toMatch(/word/);
    expect(faultOfQuestionName(document, 'x'.repeat(61), null)).toMatch(/60/);
  });

  test('are told new names of what they name', () => {
    const question = (document: ReturnType<typeof sampleCar>) => document.questions?.[name];
    const document = sampleCar();
    expect(JSON.stringify(question(adjusterRenamed(document, 'front', 'clampBolt', 'strutCam')))).toContain('"strutCam"');
    const free = {
      ...document,
      questions: {
        [name]: { wanted: [], may: [{ axle: 'front', point: 'tieRodEnd', along: [0, 0, 1], range: [0, 1], step: 1 }] },
      },
    } as const;
    expect(JSON.stringify(question(pointRenamed(free, 'front', 'tieRodEnd', 'outer')))).toContain('"outer"');
    const store = sampleBench();
    renameSetup(store, 'Baseline', 'As built');
    expect(question(benchNow(store).document)).toMatchObject({ setup: 'As built' });
  });
});
