import { describe, expect, test } from 'vitest';
import { STANDARD_UNITS, WHOLE_SHEET, type CarDocument } from '../../../geometry/index';
import { madeSheet } from '../../../renderer/sheet/madeSheet';
import {
  axlesOf,
  dayOf,
  NO_PICKS,
  pickedSetups,
  SHEET_PARTS,
  sheetChoices,
  withPart,
} from '../../../renderer/sheet/sheetChoices';
import { sampleNamed } from '../../samples/samples';

const hatch = sampleNamed('saltmarsh-hatch').document;

describe('choices', () => {
  test('are a whole sheet of both axles on A4 as the fitter sees it, until somebody chooses', () => {
    expect(sheetChoices({})).toEqual({ axles: 'both', clock: 'fitter', paper: 'A4', parts: WHOLE_SHEET });
  });

  test('are kept as preferences: parts as a list, an empty one too', () => {
    const parts = withPart(WHOLE_SHEET, 'boxes', false);
    expect(parts).toEqual(['drawings', 'rules', 'makes', 'curves', 'changes']);
    expect(sheetChoices({ [SHEET_PARTS]: parts.join(','), 'sheet.paper': 'Letter' })).toMatchObject({
      paper: 'Letter',
      parts: { ...WHOLE_SHEET, boxes: false },
    });
    expect(Object.values(sheetChoices({ [SHEET_PARTS]: '' }).parts)).toEqual([false, false, false, false, false, false]);
    expect(withPart(sheetChoices({ [SHEET_PARTS]: '' }).parts, 'makes', true)).toEqual(['makes']);
  });

  test('of an axle that the car lacks show what it has', () => {
    const { rear: _, ...single } = hatch;
    expect(axlesOf(hatch, 'rear')).toEqual(['rear']);
    expect(axlesOf(single as CarDocument, 'rear')).toEqual(['front']);
  });
});

describe('setups', () => {
  test('follow the bench and what the file says is on the car, until picked', () => {
    expect(pickedSetups(hatch, 'Wet', NO_PICKS)).toEqual({ setup: 'Wet', onCar: 'Trial 3' });
    expect(pickedSetups(hatch, 'Wet', { setup: 'Sprint', onCar: 'Baseline' })).toEqual({ setup: 'Sprint', onCar: 'Baseline' });
    expect(pickedSetups(hatch, 'Wet', { setup: null, onCar: '' })).toEqual({ setup: 'Wet', onCar: null });
  });

  test('that the car has no longer are not picked', () => {
    expect(pickedSetups(hatch, 'Wet', { setup: 'Gone', onCar: 'Gone' })).toEqual({ setup: 'Wet', onCar: 'Trial 3' });
    const { onCar: _, setups: __, ...bare } = hatch;
    expect(pickedSetups(bare as CarDocument, 'Gone', NO_PICKS)).toEqual({ setup: 'Baseline', onCar: null });
  });
});

test('the day is that of the place', () => {
  expect(dayOf(new Date(2026, 4, 6, 23, 59))).toBe('2026-05-06');
});

describe('the sheet made of them', () => {
  const asked = {
    document: hatch,
    setup: 'Sprint',
    onCar: 'Trial 3',
    choices: sheetChoices({}),
    units: STANDARD_UNITS,
    date: '2026-05-16',
    fileName: 'a.jounce.json',
  };

  test('is of that paper, and says what is wrong with the setup', () => {
    const made = madeSheet({ ...asked, choices: sheetChoices({ 'sheet.paper': 'Letter' }) });
    if (!made.ok) throw new Error(made.message);
    expect(made.pages.every(({ paper }) => paper.name === 'Letter')).toBe(true);
    expect([made.faults, made.missing]).toEqual([[], []]);
    const strict = { ...hatch, name: '車', limits: [{ reading: 'camber', axle: 'front', min: -1 }] } as CarDocument;
    const broken = madeSheet({ ...asked, document: strict });
    if (!broken.ok) throw new Error(broken.message);
    expect(broken.faults.length).toBe(2);
    expect(broken.missing).toEqual(['車']);
  });

  test('is not there where the setup cannot be put together, and why is said', () => {
    const document = { ...hatch, setups: { Low: { rear: { rideHeight: -400 } } } } as CarDocument;
    const made = madeSheet({ ...asked, document, setup: 'Low', onCar: null });
    expect(made.ok).toBe(false);
    if (!made.ok) expect(made.message).toContain('ground');
  });
});
