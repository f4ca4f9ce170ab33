import { expect, test } from 'vitest';
import { faultPlace, type Box } from '../../../renderer/look/controls/faultPlace';

const window = { width: 1280, height: 720 };
const note = { width: 200, height: 40 };
const field: Box = { left: 190, top: 117, right: 363, bottom: 147 };
const box = (left: number, top: number, width: number, height: number): Box => ({
  left,
  top,
  right: left + width,
  bottom: top + height,
});

test('under the field where nothing is in the way', () => {
  expect(faultPlace({ field, note, window, controls: [] })).toEqual({ left: 163, top: 151 });
});

test('the steps of the part under a field, and the sides over it, stay free', () => {
  const steps = box(190, 153, 173, 28);
  expect(faultPlace({ field, note, window, controls: [steps] })).toEqual({ left: 163, top: 73 });
  const sides = box(281, 86, 83, 22);
  expect(faultPlace({ field, note, window, controls: [steps, sides] })).toEqual({ left: 367, top: 117 });
});

test('over a field at the foot of the window, and always inside the window', () => {
  const low = box(449, 675, 84, 27);
  expect(faultPlace({ field: low, note, window, controls: [] })).toEqual({ left: 333, top: 631 });
  const everywhere = box(0, 0, 1280, 720);
  expect(faultPlace({ field: low, note, window, controls: [everywhere] })).toEqual({ left: 333, top: 631 });
});
