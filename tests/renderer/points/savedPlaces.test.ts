import { describe, expect, test } from 'vitest';
import { farPoints, linesBesideSaved, stepThatMoved } from '../../../renderer/points/farMoved';
import { FIRST_CHOICE, newCarDocument } from '../../../renderer/points/newCar/newCarDocument';
import { renamePart } from '../../../renderer/points/renaming/renamePart';
import { beginCar } from '../../../renderer/state/actions/beginCar';
import { callPoint, editAxle, movePoint } from '../../../renderer/state/actions/editCar';
import { beginTurn, endTurn, redoStep, setToe, undoStep } from '../../../renderer/state/actions/editSetup';
import { benchOf, type BenchStore } from '../../../renderer/state/benchStore';
import { namesIn } from '../../../renderer/state/pointNames';
import type { Triple } from '../../../geometry/index';
import { openedBench } from '../carUnderTest';

const documentOf = (store: BenchStore) => {
  const document = benchOf(store.getState())?.document;
  if (!document) throw new Error('a car is open');
  return document;
};

const placeOf = (store: BenchStore, point: string): Triple => documentOf(store).rear?.points[point] ?? [NaN, NaN, NaN];

const moveBy = (store: BenchStore, point: string, dz: number): void => {
  const [x, y, z] = placeOf(store, point);
  movePoint(store, 'rear', 'left', point, [x, y, z + dz], `Move ${point}`);
};

const rename = (store: BenchStore, from: string, to: string): void => {
  const renamed = renamePart(documentOf(store), { part: 'point', axle: 'rear', name: from }, to);
  if (!renamed.ok) throw new Error(renamed.fault);
  callPoint(store, 'rear', from, to, renamed.document);
};

const movedOf = (store: BenchStore, point: string): number | null | undefined =>
  linesBesideSaved(store.getState(), 'rear', 'left').find(({ name }) => name === point)?.moved;

/** As the window does when the file was written. */
const save = (store: BenchStore): void => {
  const { file, history } = store.getState();
  const document = documentOf(store);
  if (file && history)
    store.setState({ file: { ...file, saved: { ...file.saved, document, names: namesIn(history, document) } } });
};

describe('a point beside the car as saved', () => {
  test('is followed through another name, through undo and redo, and through saving in between', () => {
    const store = openedBench();
    const [name = '', second = ''] = Object.keys(documentOf(store).rear?.points ?? {});
    moveBy(store, name, 2);
    rename(store, name, 'inner');
    expect(movedOf(store, 'inner')).toBeCloseTo(2, 9);
    rename(store, 'inner', 'innermost');
    moveBy(store, 'innermost', 1);
    expect(movedOf(store, 'innermost')).toBeCloseTo(3, 9);
    undoStep(store);
    undoStep(store);
    undoStep(store);
    expect(movedOf(store, name)).toBeCloseTo(2, 9);
    redoStep(store);
    redoStep(store);
    save(store);
    expect(movedOf(store, 'innermost')).toBe(0);
    // the name before the one that was saved
    undoStep(store);
    undoStep(store);
    moveBy(store, name, 5);
    expect(movedOf(store, name)).toBeCloseTo(5, 9);
    rename(store, second, 'other');
    rename(store, 'other', second);
    expect(movedOf(store, second)).toBe(0);
  });

  test('is new where it has taken a name that another one has given up', () => {
    const store = openedBench();
    const [name = ''] = Object.keys(documentOf(store).rear?.points ?? {});
    rename(store, name, 'inner');
    editAxle(store, 'rear', 'Add point', (axle) => ({
      ...axle,
      points: { ...axle.points, [name]: [0, 300, 200], spare: [0, 300, 210] },
    }));
    expect([movedOf(store, name), movedOf(store, 'spare'), movedOf(store, 'inner')]).toEqual([null, null, 0]);
  });
});

describe('a point that went farther than a pickup point goes', () => {
  test('is told with the step that took it there, once the drag is over, and is taken all the same', () => {
    const store = openedBench();
    const { points, right } = documentOf(store).rear ?? { points: {} };
    const name = Object.keys(points).find((point) => !right?.points?.[point]) ?? '';
    const [x, y, z] = placeOf(store, name);
    moveBy(store, name, 199);
    expect(farPoints(store.getState(), 'rear', 'left')).toEqual([]);
    moveBy(store, name, 2);
    const [far] = farPoints(store.getState(), 'rear', 'left');
    expect([far?.line.name, far?.distance]).toEqual([name, expect.closeTo(201, 6)]);
    expect(stepThatMoved(store.getState(), 'rear', 'left')).toBe(`Move ${name}`);
    expect(farPoints(store.getState(), 'rear', 'right').map(({ line }) => line.name)).toEqual([name]);
    setToe(store, 0.1);
    expect(stepThatMoved(store.getState(), 'rear', 'left')).toBeNull();
    undoStep(store);
    undoStep(store);
    expect(farPoints(store.getState(), 'rear', 'left')).toEqual([]);
    beginTurn(store);
    moveBy(store, name, 2500);
    expect(farPoints(store.getState(), 'rear', 'left')).toEqual([]);
    endTurn(store);
    expect(placeOf(store, name)).toEqual([x, y, z + 199 + 2500]);
    expect(farPoints(store.getState(), 'rear', 'left')).toHaveLength(1);
    save(store);
    expect(farPoints(store.getState(), 'rear', 'left')).toEqual([]);
  });

  test('is judged more mildly against typical points, which no car is like', () => {
    const store = openedBench();
    beginCar(store, FIRST_CHOICE, newCarDocument(FIRST_CHOICE));
    moveBy(store, 'upperBody', 400);
    expect(farPoints(store.getState(), 'rear', 'left')).toEqual([]);
    moveBy(store, 'upperBody', 2500);
    expect(farPoints(store.getState(), 'rear', 'left').map(({ line }) => line.name)).toEqual(['upperBody']);
  });
});
