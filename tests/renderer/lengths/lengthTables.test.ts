import { expect, test } from 'vitest';
import { readPoints } from '../../../geometry/index';
import { csvOf } from '../../../renderer/curves/curveCsv';
import { lengthRows, lengthTable, placeRows, placeTable } from '../../../renderer/lengths/lengthTables';
import { carDocument, openedBench } from '../carUnderTest';

const axle = carDocument('car-23').front;
const placed = openedBench('car-23').getState().shown?.row.placed;
if (!axle || !placed) throw new Error('the car stands');

test('lengths go out in the unit that is shown, and their heads say it', () => {
  const rows = lengthRows(placed, placed);
  const [mm, inches] = [lengthTable(rows, 'Baseline', 'mm'), lengthTable(rows, 'Baseline', 'in')];
  expect(inches.heads).toEqual(['part', 'left [in]', 'right [in]', 'left less Baseline [in]', 'right less Baseline [in]']);
  expect(lengthTable(rows, null, 'mm').heads).toEqual(['part', 'left [mm]', 'right [mm]']);
  expect(rows.length).toBeGreaterThan(3);
  mm.rows.forEach(([name, ...values], row) => {
    expect(inches.rows[row]?.[0]).toBe(name);
    values.forEach((value, k) => {
      const other = inches.rows[row]?.[k + 1];
      if (value === null) expect(other).toBe(null);
      else expect(Number(other) * 25.4).toBeCloseTo(Number(value), 9);
    });
  });
});

test('so do points, and the list can be read in again', () => {
  const rows = placeRows(axle, placed, 'left', 1);
  const list = readPoints(csvOf([placeTable(rows, 'left', 'in').heads, ...placeTable(rows, 'left', 'in').rows]));
  expect(list).toMatchObject({ faults: [], headerUnit: 'in' });
  expect(list.rows.map(({ name }) => name)).toEqual(rows.map(({ name }) => name));
  list.rows.forEach(({ read }, row) => read.forEach((value, k) => expect(value * 25.4).toBeCloseTo(rows[row]?.now[k] ?? NaN, 9)));
});
