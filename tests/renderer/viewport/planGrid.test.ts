import { expect, test } from 'vitest';
import { groundFrame } from '../../../renderer/viewport/groundFrame';
import { planGrid } from '../../../renderer/viewport/planGrid';

const standing = groundFrame({ point: [0, 0, -12], normal: [0, 0, 1] });
const corners = [
  [0, 90, -20],
  [0, 90, 410],
  [0, 810, 410],
  [0, 810, -20],
] as const;
const textsAt = (lines: ReturnType<typeof planGrid>, edge: 'left' | 'bottom') =>
  lines.filter((line) => line.edge === edge).map(({ text }) => text);

test('lines of whole coordinates of the car, each with its number, where the ground’s frame has them', () => {
  const lines = planGrid({ view: 'front', frame: standing, corners, mmPerPixel: 2, mmPerUnit: 1 });
  expect(textsAt(lines, 'bottom')).toEqual(['100', '200', '300', '400', '500', '600', '700', '800']);
  expect(textsAt(lines, 'left')).toEqual(['0', '100', '200', '300', '400']);
  const [first] = lines;
  expect(first?.points).toEqual([standing.toGround([0, 100, -20]), standing.toGround([0, 100, 410])]);
});

test('nearer they are finer, in inches they are of inches, and from above X runs up the view', () => {
  const near = planGrid({ view: 'front', frame: standing, corners, mmPerPixel: 0.1, mmPerUnit: 1 });
  expect(textsAt(near, 'left').slice(0, 4)).toEqual(['−20', '−15', '−10', '−5']);
  const inches = planGrid({ view: 'front', frame: standing, corners, mmPerPixel: 2, mmPerUnit: 25.4 });
  expect(textsAt(inches, 'left')).toEqual(['0', '5', '10', '15']);
  expect(inches.find(({ text, edge }) => text === '5' && edge === 'left')?.points[0]).toEqual(standing.toGround([0, 90, 127]));
  const above = corners.map(([, y, z]) => [z, y, 0] as const);
  const top = planGrid({ view: 'top', frame: standing, corners: above, mmPerPixel: 2, mmPerUnit: 1 });
  expect(textsAt(top, 'left')).toEqual(['0', '100', '200', '300', '400']);
  expect(planGrid({ view: 'front', frame: standing, corners, mmPerPixel: NaN, mmPerUnit: 1 })).toEqual([]);
});
