import { describe, expect, test } from 'vitest';
import { allowMove, chooseScope, choosePoint, switchOverlay, switchProjection } from '../../../renderer/state/actions/viewing';
import { chooseAxle, chooseView } from '../../../renderer/state/actions/lookAt';
import { openCarText } from '../../../renderer/state/actions/openCar';
import { createBenchStore } from '../../../renderer/state/benchStore';
import type { Preferences } from '../../../renderer/state/preferences';
import { carText, openedBench } from '../carUnderTest';
import { overlaysOf, projectionOf, scopeOf } from '../../../renderer/state/viewing';

describe('how the car is looked at', () => {
  test('is usual where nothing was kept, or what was kept is not known', () => {
    const odd: Preferences = { 'view.shown': 'boot', 'view.over': 7, 'view.parallel': true };
    for (const kept of [{}, odd]) {
      expect(scopeOf(kept)).toBe('left');
      expect(overlaysOf(kept)).toEqual(['ghost', 'steeringAxis', 'rollCentre']);
      expect(projectionOf(kept, 'corner')).toBe('perspective');
      expect(projectionOf(kept, 'side')).toBe('parallel');
    }
    expect(overlaysOf({ 'view.over': 'halo,path' })).toEqual(['path']);
  });

  test('is kept in what goes to the disk: another window with the same preferences looks at it the same way', () => {
    const store = createBenchStore();
    chooseScope(store, 'axle');
    switchOverlay(store, 'ghost');
    switchOverlay(store, 'envelope');
    chooseView(store, 'side');
    switchProjection(store);
    const next = JSON.parse(JSON.stringify(store.getState().preferences)) as Preferences;
    expect(scopeOf(next)).toBe('axle');
    expect(overlaysOf(next)).toEqual(['steeringAxis', 'rollCentre', 'envelope']);
    expect(projectionOf(next, 'side')).toBe('perspective');
    expect(projectionOf(next, 'top')).toBe('parallel');
    switchProjection(store);
    expect(projectionOf(store.getState().preferences, 'side')).toBe('parallel');
  });

  test('everything can be switched off, and that is kept as well', () => {
    const store = createBenchStore();
    for (const name of ['ghost', 'steeringAxis', 'rollCentre'] as const) switchOverlay(store, name);
    expect(overlaysOf(JSON.parse(JSON.stringify(store.getState().preferences)) as Preferences)).toEqual([]);
  });

  test('the chosen point goes to the side that is shown', () => {
    const store = createBenchStore();
    choosePoint(store, { axle: 'front', side: 'left', point: 'ballJoint' });
    chooseScope(store, 'right');
    expect(store.getState().viewing.chosen).toEqual({ axle: 'front', side: 'right', point: 'ballJoint' });
    chooseScope(store, 'car');
    expect(store.getState().viewing.chosen?.side).toBe('right');
  });

  test('a chosen point is let go of where the other axle or another car comes on the bench: it would be moved unseen', () => {
    const store = openedBench();
    const choose = () => {
      choosePoint(store, { axle: 'front', side: 'left', point: 'ballJoint' });
      allowMove(store);
    };
    choose();
    chooseAxle(store, 'rear');
    expect(store.getState().viewing).toMatchObject({ chosen: null, mayMove: false });
    chooseAxle(store, 'front');
    choose();
    openCarText(store, 'car-21', 'car-21', carText('car-21'));
    expect(store.getState().viewing).toMatchObject({ chosen: null, mayMove: false, tape: null });
  });
});
