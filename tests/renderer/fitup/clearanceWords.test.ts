import { expect, test } from 'vitest';
import type { CarDocument, ClearanceRemedy, ClearanceRow } from '../../../geometry/index';
import { proofWords, shownClearance } from '../../../renderer/fitup/clearance/clearanceTable';
import { remedyWords } from '../../../renderer/fitup/remedyWords';
import type { ShownUnits } from '../../../renderer/units/unitChoice';

const MM: ShownUnits = { length: 'mm', angle: 'degrees', toe: 'angle', toeDiameter: null, force: 'newton' };
const ROW: ClearanceRow = {
  pair: ['tyreFront', 'archScan'],
  axle: 'front',
  side: 'left',
  clearance: 184.6,
  bound: 0.02,
  cuts: false,
  needs: 10,
  spare: 174.6,
  verdict: 'clear',
  surfaceOnly: [],
  at: { setup: 'Baseline', travel: 10, rack: 0 },
  points: [
    [0, 0, 0],
    [184.6, 0, 0],
  ],
  wouldClear: [],
};

test('what is apart from the surface of a mesh that is not closed is read as not proved, and why', () => {
  const open: ClearanceRow = { ...ROW, verdict: 'not-proved', surfaceOnly: ['archScan'] };
  const shown = (row: ClearanceRow) =>
    shownClearance({ rows: [row], envelope: [], missing: [], warnings: [] }, MM).map(({ verdictWords }) => verdictWords);
  expect(shown(open)).toEqual(['not proved, surface only']);
  expect(shown(ROW)).toEqual(['clear, 174.6 spare']);
  const words = proofWords(open, '0.02 mm');
  expect(words).not.toContain('Proved between');
  expect(words).toMatch(/^Not proved: Arch scan is a mesh that is not closed.*what stands within it is not told/);
  expect(proofWords(ROW, '0.02 mm')).toContain('Proved between the positions too');
});

test('of a remedy it is read in which setup it is, which others stay short, and whether what it leaves is proved', () => {
  const car = { front: { adjusters: {} } } as unknown as CarDocument;
  const row: ClearanceRow = { ...ROW, clearance: 7.2, spare: -2.8, verdict: 'short' };
  const setting: ClearanceRemedy = {
    by: 'adjuster',
    adjuster: 'rearBush',
    setup: 'Baseline',
    from: null,
    to: 0,
    clearance: 12.3,
    bound: 0.2,
    stillShort: [{ setup: 'Wet', clearance: 7.79 }],
    changes: {},
  };
  const { what, then } = remedyWords(car, row, setting, MM);
  expect(what).toMatch(/both wheels, in Baseline$/);
  expect(then).toBe('12.3 mm; Wet is short too, 7.8 mm, and stays so');
  const stop: ClearanceRemedy = {
    ...setting,
    by: 'rack',
    adjuster: null,
    setup: null,
    clearance: 10.32,
    bound: 0.61,
    stillShort: [],
  };
  expect(remedyWords(car, row, stop, MM).then).toBe('10.3 mm, not proved: it could be less by 0.61 mm');
});

test('a stop of the rack costs lock and nothing else: of that wheel, and of the turning circle', () => {
  const car = { front: { adjusters: {} } } as unknown as CarDocument;
  const row: ClearanceRow = { ...ROW, side: 'right', clearance: 7.2, spare: -2.8, verdict: 'short' };
  const stop: ClearanceRemedy = {
    by: 'rack',
    adjuster: null,
    setup: null,
    from: -70,
    to: -29,
    clearance: 10.3,
    bound: 0,
    stillShort: [],
    changes: { 'front.left.steerAngle': -22.87, 'front.right.steerAngle': -18.42, 'front.both.turningCircle': 12700 },
  };
  expect(remedyWords(car, row, stop, MM).price).toBe('this wheel steers 18.4° less, turning circle 12,700.0 mm larger');
  expect(remedyWords(car, { ...row, side: 'left' }, stop, { ...MM, length: 'in' }).price).toMatch(
    /^this wheel steers 22\.9° less, turning circle 500\.0* in larger$/,
  );
  const rear = {
    ...stop,
    changes: { 'rear.left.steerAngle': 3.5, 'rear.right.steerAngle': 3.1, 'rear.both.turningCircle': null },
  };
  expect(remedyWords(car, { ...row, axle: 'rear' }, rear, MM).price).toBe('this wheel steers 3.1° less');
});
