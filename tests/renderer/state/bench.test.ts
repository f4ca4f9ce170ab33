import { describe, expect, test } from 'vitest';
import { setupNames } from '../../../geometry/index';
import {
  beginTurn,
  chooseSetup,
  endTurn,
  redoStep,
  setRideHeight,
  setToe,
  turnAdjuster,
  turnOn,
  undoStep,
} from '../../../renderer/state/actions/editSetup';
import { chooseAxle, moveTo, standStill } from '../../../renderer/state/actions/lookAt';
import { openCarText } from '../../../renderer/state/actions/openCar';
import { carDocument, carText, openedBench } from '../carUnderTest';

const camber = (store: ReturnType<typeof openedBench>): number => store.getState().shown?.row.left['camber'] as number;

describe('editing', () => {
  test('the first edit of a setup of the file makes a trial, compared with what it was', () => {
    const store = openedBench();
    const before = store.getState().history?.present;
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
    const { history, shown } = store.getState();
    expect(history?.present.setup).toBe('Trial 1');
    expect(history?.present.against).toBe('Baseline');
    expect(history?.present.document.setups?.['Baseline']).toBe(before?.document.setups?.['Baseline']);
    expect(shown?.difference.left['camber']).toBeLessThan(-0.2);
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -6);
    const names = setupNames(carDocument('car-23'));
    expect(Object.keys(store.getState().history?.present.document.setups ?? {})).toEqual([...names, 'Trial 1']);
  });

  test('a part that is set to where it stands leaves no step and makes no trial, on either side or both', () => {
    const store = openedBench();
    const before = store.getState().history;
    for (const sides of ['both', 'left', 'right'] as const) {
      turnAdjuster(store, 'plateAcross', 'plate across', sides, 0);
      turnAdjuster(store, 'rearBush', 'rear bush', sides, null);
    }
    expect(store.getState().history).toBe(before);
    turnAdjuster(store, 'plateAcross', 'plate across', 'left', -5);
    const turned = store.getState().history;
    turnAdjuster(store, 'plateAcross', 'plate across', 'left', -5);
    expect(store.getState().history).toBe(turned);
    // one side stands there already, the other does not
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
    expect(store.getState().history?.past).toHaveLength(2);
  });

  test('undo and redo bring back document, setup and readings together', () => {
    const store = openedBench();
    const before = camber(store);
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
    const after = camber(store);
    undoStep(store);
    expect(store.getState().history?.present.setup).toBe('Baseline');
    expect(camber(store)).toBe(before);
    redoStep(store);
    expect(camber(store)).toBe(after);
  });

  test('a drag through many marks is one step', () => {
    const store = openedBench();
    beginTurn(store);
    for (const clock of [15, 30, 45]) turnAdjuster(store, 'armBolt', 'arm bolt', 'both', clock);
    endTurn(store);
    expect(store.getState().history?.past).toHaveLength(1);
    undoStep(store);
    expect(store.getState().history?.present.document).toBe(store.getState().file?.asRead);
  });

  test('notches of one turning of the wheel are one step, and an earlier step is no part of it', () => {
    const store = openedBench();
    const notch = (left: ReturnType<typeof turnOn>, clock: number) =>
      turnOn(store, left, () => turnAdjuster(store, 'armBolt', 'arm bolt', 'both', clock));
    turnAdjuster(store, 'plateAcross', 'plate across', 'both', -5);
    const earlier = store.getState().history?.present;
    // the first notch goes nowhere: it stands at its end
    let left = notch(null, 0);
    expect(left).toBeNull();
    for (const clock of [15, 30, 45]) left = notch(left, clock);
    expect(store.getState().history?.past.map(({ name }) => name)).toEqual(['Turn plate across', 'Turn arm bolt']);
    undoStep(store);
    expect(store.getState().history?.present).toBe(earlier);
    // undone meanwhile: the next notch begins anew
    notch(left, 15);
    expect(store.getState().history?.past).toHaveLength(2);
    undoStep(store);
    expect(store.getState().history?.present).toBe(earlier);
  });

  test('set toe turns the toe adjuster, ride height moves the body', () => {
    const store = openedBench();
    setToe(store, 0.1);
    expect(store.getState().shown?.row.left['toe']).toBeCloseTo(0.1, 9);
    expect(store.getState().shown?.row.toeReset?.adjuster).toBe('tieRod');
    setRideHeight(store, -12);
    expect(store.getState().history?.present.document.setups?.['Trial 1']?.front?.rideHeight).toBe(-12);
    expect(store.getState().answer?.ok).toBe(true);
  });
});

describe('a position that cannot be reached', () => {
  test('says why and how much is missing; what is shown stays at the last good position', () => {
    const store = openedBench();
    moveTo(store, { travel: 40 });
    const good = store.getState().shown;
    moveTo(store, { travel: 400 });
    const { answer, shown, position } = store.getState();
    expect(answer?.ok).toBe(false);
    if (answer && !answer.ok) {
      expect(answer.failure.kind).toBe('unreachable');
      expect(answer.failure.missingMm).toBeGreaterThan(1);
    }
    expect(shown).toBe(good);
    expect(position.travel).toBe(400);
    standStill(store);
    expect(store.getState().answer?.ok).toBe(true);
  });

  test('a setting that cannot be reached is no different', () => {
    const store = openedBench();
    const good = store.getState().shown;
    setRideHeight(store, -400);
    expect(store.getState().answer?.ok).toBe(false);
    expect(store.getState().shown).toBe(good);
    undoStep(store);
    expect(store.getState().answer?.ok).toBe(true);
  });
});

test('another axle: its own adjuster is in hand, and the rack is left behind', () => {
  const store = openedBench();
  moveTo(store, { rack: 20, travel: 10 });
  chooseAxle(store, 'rear');
  const { held, position, shown } = store.getState();
  expect(held).toBe(Object.keys(carDocument('car-23').rear?.adjusters ?? {})[0]);
  expect(position).toEqual({ travel: 10, rollDeg: 0, rack: 0 });
  expect(shown?.row.why['left.casterBySwing']).toBeTruthy();
});

test('a file with faults is refused with them, and what was open stays', () => {
  const store = openedBench();
  const before = store.getState().history;
  const broken = carText('car-23').replace('"layout": "strut"', '"layout": "struts"');
  expect(openCarText(store, 'broken', null, broken)).toBe(false);
  expect(store.getState().history).toBe(before);
  expect(store.getState().refused?.faults[0]?.path).toContain('front.layout');
  chooseSetup(store, 'Trial');
  expect(store.getState().history?.present.setup).toBe('Trial');
});
