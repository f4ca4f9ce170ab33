import { expect, test } from 'vitest';
import { motionRanges } from '../../../renderer/compute/motionRanges';
import { beginGauges, bumpsOf, gaugeFaults, GAUGES, type GaugeForm } from '../../../renderer/studies/gauges/gaugeForm';
import { gaugePlainTable, gaugeTable } from '../../../renderer/studies/gauges/gaugeTable';
import { fieldOf } from '../../../renderer/studies/question/fieldValue';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { numberOf, readAt, sampleNamed, standing } from '../../samples/samples';

const hatch = sampleNamed('saltmarsh-hatch');
const car = standing(hatch, 'Baseline');
const begun = beginGauges(hatch.document, 'front', motionRanges(hatch.document, 'front', null));
const form: GaugeForm = { ...begun, from: fieldOf(-20), to: fieldOf(25), by: fieldOf(10) };

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const toeAt = (bump: number): number => radians(numberOf(readAt(car, 'front', { travel: bump }), 'left', 'toe'));

test('bumps are both ends, and between them whole steps with zero among them; the steps begun with end where the ends are', () => {
  expect(bumpsOf(form)).toEqual([-20, -10, 0, 10, 20, 25]);
  expect(bumpsOf({ ...form, from: fieldOf(-25), to: fieldOf(20) })).toEqual([-25, -20, -10, 0, 10, 20]);
  expect(bumpsOf({ ...form, from: fieldOf(5), to: fieldOf(5) })).toEqual([5]);
  const bumps = bumpsOf(begun);
  const steps = bumps.slice(1).map((bump, index) => bump - (bumps[index] ?? NaN));
  expect(new Set(steps)).toEqual(new Set([begun.by.value]));
  expect(gaugeFaults({ ...form, by: fieldOf(0) }).by).toContain('more than 0');
  expect(gaugeFaults({ ...form, to: fieldOf(-40) }).to).toContain('over where it begins');
  expect(gaugeFaults({ ...form, by: fieldOf(0.01) }).by).toContain('200');
  expect(gaugeFaults({ ...form, spacing: { value: null, typed: 'wide' } }).spacing).toContain('wide');
  expect(gaugeFaults({ ...form, gauge: 'swing', swing: fieldOf(60) }).swing).toContain('45');
  expect(gaugeFaults({ ...form, gauge: 'floor', from: { value: null, typed: '' } })).toEqual({});
});

test('a bump-steer gauge in mm and in thousandths of an inch', () => {
  const inMm = gaugeTable(form, car, 'front', STANDARD_UNITS);
  const difference = inMm.rows[4]?.values[2] ?? NaN;
  expect(difference).toBeCloseTo(254 * (Math.tan(toeAt(20)) - Math.tan(toeAt(0))), 9);
  const inThou = gaugeTable({ ...form, dials: 'thou' }, car, 'front', STANDARD_UNITS);
  const column = inThou.columns[2];
  expect(column?.unit).toBe('0.001 in');
  expect(column?.toShown(difference)).toBeCloseTo(difference / 0.0254, 9);
  const { heads, rows } = gaugePlainTable(inThou, 'bump [mm]', (bump) => bump);
  expect(heads[3]).toBe('left rear − front [0.001 in]');
  expect(rows[4]?.[3]).toBeCloseTo(difference / 0.0254, 9);
});

test('toe at the rim, strings and a plumb line are lengths across their diameter', () => {
  const across = { ...form, diameter: fieldOf(400) };
  const rim = gaugeTable({ ...across, gauge: 'rim' }, car, 'front', STANDARD_UNITS).rows[3]?.values ?? [];
  expect(rim[0]).toBeCloseTo(400 * Math.sin(toeAt(10)), 9);
  expect(rim[2]).toBeCloseTo((rim[0] ?? NaN) + (rim[1] ?? NaN), 12);
  const strings = gaugeTable({ ...across, gauge: 'strings' }, car, 'front', STANDARD_UNITS).rows[3]?.values ?? [];
  expect(strings[2]).toBeCloseTo(rim[0] ?? NaN, 9);
  const camber = gaugeTable({ ...across, gauge: 'camber' }, car, 'front', STANDARD_UNITS).rows[2]?.values ?? [];
  const read = numberOf(readAt(car, 'front'), 'left', 'camber');
  expect(camber[0]).toBeCloseTo(read, 12);
  expect(camber[1]).toBeCloseTo(400 * Math.sin(radians(read)), 9);
});

test('caster by swing at any angle beside that of the axis; an axle without steering says so', () => {
  const { rows, columns } = gaugeTable({ ...form, gauge: 'swing' }, car, 'front', STANDARD_UNITS);
  const [, , bySwing, caster, difference] = rows[2]?.values ?? [];
  const row = readAt(car, 'front');
  expect(bySwing).toBeCloseTo(numberOf(row, 'left', 'casterBySwing'), 9);
  expect(caster).toBeCloseTo(numberOf(row, 'left', 'caster'), 9);
  expect(difference).toBeCloseTo((bySwing ?? NaN) - (caster ?? NaN), 12);
  expect(columns).toHaveLength(10);
  const rear = gaugeTable({ ...form, gauge: 'swing' }, car, 'rear', STANDARD_UNITS);
  expect(rear.rows[0]?.why).toBe('this axle is not steered');
});

test('every instrument has its reasons where the car cannot be', () => {
  const far: GaugeForm = { ...form, from: fieldOf(-900), to: fieldOf(0), by: fieldOf(900) };
  for (const gauge of GAUGES) {
    const { rows } = gaugeTable({ ...far, gauge }, car, 'front', STANDARD_UNITS);
    expect(
      rows.map(({ why }) => why !== null),
      gauge,
    ).toEqual([true, false]);
  }
});
