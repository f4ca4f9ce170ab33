import { describe, expect, test } from 'vitest';
import { CommandError } from '../../../electron/command/commandError';
import type { Setting } from '../../../electron/command/options';
import { applySettings } from '../../../electron/command/settings';
import type { CarDocument, SetupDocument } from '../../../geometry/index';

const wheel = { camber: 0, toe: 0, loadedRadius: 300 };
const CAR: CarDocument = {
  format: 'jounce-car',
  version: 1,
  name: 'a car with one axle',
  front: {
    layout: 'strut',
    points: {},
    wheel,
    adjusters: {
      rearBush: {
        kind: 'offset-bushing',
        moves: 'armRear',
        axis: [1, 0, 0],
        twelve: [0, 0, 1],
        offset: 4,
        index: 15,
        seenFrom: 'front',
      },
      topPlate: { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-8, 8], step: 2 },
    },
  },
};

const apply = (setup: SetupDocument, ...settings: (readonly [string, Setting['value']])[]): SetupDocument =>
  applySettings(
    CAR,
    setup,
    settings.map(([name, value]) => ({ name, value })),
  );
const refusal = (name: string, value: Setting['value']): string => {
  try {
    apply({}, [name, value]);
  } catch (thrown) {
    if (thrown instanceof CommandError && thrown.document.kind === 'usage') return thrown.message;
    throw thrown;
  }
  throw new Error(`${name} was accepted`);
};

describe('--set', () => {
  test('both takes the entries of left and right out first', () => {
    const before: SetupDocument = {
      front: { both: { topPlate: -2 }, left: { rearBush: 30, topPlate: 2 }, right: { rearBush: 60 } },
    };
    expect(apply(before, ['front.both.rearBush', 90])).toEqual({
      front: { both: { topPlate: -2, rearBush: 90 }, left: { topPlate: 2 }, right: {} },
    });
  });

  test('a side leaves the other alone', () => {
    expect(apply({ front: { both: { rearBush: 90 } } }, ['front.left.rearBush', '45'])).toEqual({
      front: { both: { rearBush: 90 }, left: { rearBush: 45 } },
    });
  });

  test('none and null fit a concentric bushing, even where both have an eccentric one', () => {
    for (const none of ['none', null])
      expect(apply({ front: { both: { rearBush: 90 } } }, ['front.left.rearBush', none]).front?.left).toEqual({ rearBush: null });
  });

  test('an hour is as the fitter sees it', () => {
    expect(apply({}, ['front.both.rearBush', '3h']).front?.both).toEqual({ rearBush: 270 });
  });

  test('toe, ride height, rates, hole and wheel are set, and taken out by none', () => {
    const set = apply(
      {},
      ['front.setToe', '0.05'],
      ['front.rideHeight', -10],
      ['front.springRate', 60],
      ['front.barRate', '0'],
      ['front.barHole', 'soft'],
      ['front.wheel.loadedRadius', 306],
    );
    expect(set.front).toEqual({
      setToe: 0.05,
      rideHeight: -10,
      springRate: 60,
      barRate: 0,
      barHole: 'soft',
      wheel: { loadedRadius: 306 },
    });
    const unset = apply(
      set,
      ['front.setToe', 'none'],
      ['front.rideHeight', null],
      ['front.barHole', 'none'],
      ['front.wheel.loadedRadius', null],
    );
    expect(unset.front).toEqual({ springRate: 60, barRate: 0, wheel: {} });
  });

  test('the holes of the two sides may differ, but each needs one', () => {
    expect(apply({ front: { barHole: 'soft' } }, ['front.left.barHole', 'hard']).front?.barHole).toEqual({
      left: 'hard',
      right: 'soft',
    });
    expect(refusal('front.left.barHole', 'hard')).toContain('right');
  });

  test('later ones win, and the setup that was given stays as it was', () => {
    const before: SetupDocument = { front: { left: { topPlate: 2 } } };
    expect(apply(before, ['front.both.topPlate', 4], ['front.right.topPlate', -4]).front).toEqual({
      left: {},
      both: { topPlate: 4 },
      right: { topPlate: -4 },
    });
    expect(before).toEqual({ front: { left: { topPlate: 2 } } });
  });

  test('unknown names are refused with the nearest known one', () => {
    expect(refusal('front.both.rearBusch', 90)).toContain('`rearBush`');
    expect(refusal('frnt.both.rearBush', 90)).toContain('`front`');
    expect(refusal('front.lefft.rearBush', 90)).toContain('`left`');
    expect(refusal('front.setTow', 1)).toContain('`setToe`');
    expect(refusal('front.rearBush', 90)).toContain('front.both.rearBush');
    expect(refusal('rear.both.rearBush', 90)).toContain('no rear axle');
    for (const name of [
      'front',
      'front.both',
      'front.both.rearBush.x',
      'front.both.constructor',
      '__proto__.both.x',
      'front.both.__proto__',
      '',
    ])
      expect(refusal(name, 1)).not.toBe('');
  });

  test('values that are no number are refused', () => {
    expect(refusal('front.both.rearBush', 'soft')).toContain('"soft"');
    expect(refusal('front.both.topPlate', '3h')).toContain('clock');
    expect(refusal('front.barHole', 3)).toContain('hole');
    expect(refusal('front.setToe', '1e999')).toContain('number');
    // a clock is spoken of only where there is one
    expect(refusal('front.both.rearBush', 'soft')).toContain('3h');
    for (const name of ['front.setToe', 'front.both.topPlate', 'front.wheel.loadedRadius'])
      expect(refusal(name, 'soft')).not.toContain('3h');
  });
});
