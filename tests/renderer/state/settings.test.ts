import { expect, test } from 'vitest';
import { freeTrialName, isApart, settingOf, withAxleValue, withSetting, withSidesApart } from '../../../renderer/state/settings';

const setup = { front: { both: { bolt: 15, plate: -3 }, right: { bolt: 30, bush: null } } };

test("a side's entry replaces that of both, null included", () => {
  expect(settingOf(setup, 'front', 'bolt', 'left')).toBe(15);
  expect(settingOf(setup, 'front', 'bolt', 'right')).toBe(30);
  expect(settingOf({ front: { both: { bush: 90 }, right: { bush: null } } }, 'front', 'bush', 'right')).toBeNull();
  expect(settingOf(setup, 'rear', 'bolt', 'left')).toBeNull();
});

test('setting both sides takes the numbers of their own away and leaves no empty side behind', () => {
  const changed = withSetting({ front: { both: { plate: 1 }, right: { bolt: 30 } } }, 'front', 'bolt', 'both', 45);
  expect(changed).toEqual({ front: { both: { plate: 1, bolt: 45 } } });
});

test('sides apart keep what they had, and the setup before is untouched', () => {
  const apart = withSidesApart(setup, 'front', 'plate');
  expect(isApart(setup, 'front', 'plate')).toBe(false);
  expect(isApart(apart, 'front', 'plate')).toBe(true);
  expect(settingOf(apart, 'front', 'plate', 'right')).toBe(-3);
  expect(setup.front.right).toEqual({ bolt: 30, bush: null });
});

test('a toe or height that is taken out leaves the setup without the key', () => {
  const set = withAxleValue({}, 'rear', 'setToe', 0.1);
  expect(set).toEqual({ rear: { setToe: 0.1 } });
  expect(withAxleValue(set, 'rear', 'setToe', null)).toEqual({ rear: {} });
});

test('trials are numbered past those that are there', () => {
  expect(freeTrialName(['Baseline'])).toBe('Trial 1');
  expect(freeTrialName(['Trial 1', 'Trial 3', 'Trial 2'])).toBe('Trial 4');
  expect(freeTrialName(['Baseline', 'Trial 3', 'Trial of Tom'])).toBe('Trial 4');
});
