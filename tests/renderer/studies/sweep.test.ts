import { expect, test } from 'vitest';
import { sweep, toMechanism, type Sweep } from '../../../geometry/index';
import { motionRanges } from '../../../renderer/compute/motionRanges';
import { fieldOf } from '../../../renderer/studies/question/fieldValue';
import {
  beginSweep,
  openList,
  sweepFaults,
  sweepOrder,
  sweptInputs,
  withMotion,
  type SweepForm,
} from '../../../renderer/studies/sweep/sweepForm';
import {
  curvesOf,
  failedCount,
  failureAt,
  placeColumns,
  sweepColumns,
  sweepCsv,
  sweepPlainTable,
  valueOf,
} from '../../../renderer/studies/sweep/sweepTable';
import { STANDARD_UNITS } from '../../../renderer/units/unitChoice';
import { carPath, jounce } from '../../electron/command/jounce';
import { carDocument } from '../carUnderTest';

const car = carDocument('car-23');
const ranges = motionRanges(car, 'front', null);
const begun = beginSweep(ranges);
const bytes = (text: string) => new TextEncoder().encode(text);

const answered = (form: SweepForm): { readonly made: Sweep; readonly swept: NonNullable<ReturnType<typeof sweptInputs>> } => {
  const swept = sweptInputs(form);
  const order = sweepOrder(swept, form.axles, car, 'Baseline', 'front');
  if (!swept || !order) throw new Error('the form has a fault');
  const made = sweep(toMechanism(car), order.question);
  if (!made.ok) throw new Error(made.failure.message);
  return { made: made.value, swept };
};

test('a motion between its ends; the rest stays where it is held', () => {
  const held = { ...begun.held, rack: fieldOf(4) };
  const form = { ...begun, from: fieldOf(-20), to: fieldOf(20), steps: fieldOf(5), held };
  expect(sweptInputs(form)).toMatchObject({ inputs: [-20, -10, 0, 10, 20], unit: 'mm' });
  expect(sweptInputs(form)?.positions[0]).toEqual({ travel: -20, rack: 4, roll: 0 });
  const roll = withMotion(form, 'roll', ranges);
  expect(sweptInputs(roll)).toMatchObject({ unit: 'deg' });
  expect(sweepFaults({ ...roll, from: fieldOf(60) }).from).toContain('45');
  expect(sweepFaults({ ...form, steps: fieldOf(2.5) }).steps).toContain('whole');
  expect(sweptInputs({ ...form, to: { value: null, typed: 'far' } })).toBeNull();
});

test('heave, roll and steer together, row by row', () => {
  const form = { ...begun, motion: 'combined' as const };
  const { swept } = answered(form);
  expect(swept.inputs).toEqual([1, 2, 3, 4]);
  expect(swept.positions[2]).toEqual({ travel: 20, rack: 10, roll: Math.PI / 180 });
  const wrong = { travel: { value: null, typed: 'x' }, roll: fieldOf(0), rack: fieldOf(0) };
  expect(sweepFaults({ ...form, rows: [...form.rows, wrong] }).rows).toContain('row 5');
  expect(sweepFaults({ ...form, rows: [] }).rows).toContain('no positions');
});

test('a recorded list by the rules of the command line, faults with their lines', async () => {
  const text = 'travelLeft,travelRight,rack\n10,-5,3\n-900,0,0\n0,0,0\n';
  const list = openList('lap.csv', bytes(text));
  expect(list.ok).toBe(true);
  const form: SweepForm = { ...begun, motion: 'list', axles: 'both', list };
  const { made, swept } = answered(form);
  expect(failureAt(made, 1)).toMatch(/^front: .+; rear: /);
  expect(failedCount(made, 3)).toBe(1);
  const { stdout } = await jounce(['sweep', carPath(23), '--list', '-', '--csv', '-'], { stdin: text });
  expect(sweepCsv(made, swept, false)).toBe(stdout);
  expect(openList('bad.csv', bytes('travelLeft,travelRight,rack\n1,x,3\n1,2,3\n'))).toMatchObject({
    ok: false,
    message: expect.stringContaining('bad.csv is no list of positions: 1 fault'),
    faults: [{ line: 2, column: 3 }],
  });
  const european = openList('lap.csv', bytes(text.replaceAll(',', ';').replace('10', '10,0')));
  expect(european).toMatchObject({ ok: true, readAs: 'semicolons between the fields, decimal commas' });
  expect(european.ok && list.ok && european.positions).toEqual(list.ok && list.positions);
  expect(openList('roll.csv', bytes('travelLeft,travelRight,rack,roll\n1,2,0,1\n'))).toMatchObject({
    ok: false,
    message: expect.stringContaining('row 1'),
  });
});

test('columns of both wheels, curves with gaps, and the table that is copied', () => {
  const form = { ...begun, from: fieldOf(-900), to: fieldOf(900), steps: fieldOf(3) };
  const { made, swept } = answered(form);
  const columns = sweepColumns(['camber', 'track', 'rake'], ['front'], STANDARD_UNITS);
  expect(columns.map(({ owner }) => owner)).toEqual(['left', 'right', 'both', 'wholeCar']);
  const [camber] = columns;
  if (!camber) throw new Error('there is a column');
  expect(valueOf(made, camber, 0)).toBeNull();
  expect(valueOf(made, camber, 1)).toBeTypeOf('number');
  const [front] = made.axles;
  if (!front) throw new Error('the front axle was asked for');
  const { curves, inputs } = curvesOf(front, made.wholeCar, swept.inputs);
  expect([...inputs]).toEqual([-900, 0, 900]);
  const line = curves.get('camber')?.left;
  expect(line?.values[0]).toBeNaN();
  expect(line?.why(0)).toBe(failureAt(made, 0));
  expect(line?.values[1]).toBe(valueOf(made, camber, 1));
  const { heads, rows } = sweepPlainTable(made, swept.inputs, 'bump [mm]', columns, (value) => value);
  expect(heads.slice(0, 3)).toEqual(['bump [mm]', 'Camber, front left [°]', 'Camber, front right [°]']);
  expect(rows[0]?.at(-1)).toBe(failureAt(made, 0));
});

test('rows of a list say where they put the car: apart where left and right differ, rack and roll where they are not always zero', () => {
  const namesOf = (form: SweepForm) => {
    const { swept } = answered(form);
    return placeColumns(swept, STANDARD_UNITS).map(({ name, shown, values }) => [name, shown.unit, ...values]);
  };
  const combined = { ...begun, motion: 'combined' as const };
  expect(namesOf(combined)).toEqual([
    ['travel', 'mm', 0, 10, 20, 30],
    ['rack', 'mm', 0, 5, 10, 15],
    ['roll', '°', 0, 0.5, 1, 1.5].map((one) => (typeof one === 'number' ? expect.closeTo(one, 12) : one)),
  ]);
  const list = openList('lap.csv', bytes('travelLeft,travelRight,rack\n10,-5,0\n0,0,0\n'));
  const recorded: SweepForm = { ...begun, motion: 'list', list };
  expect(namesOf(recorded)).toEqual([
    ['travel left', 'mm', 10, 0],
    ['travel right', 'mm', -5, 0],
  ]);
  expect(namesOf(begun)).toEqual([]);
  const { made, swept } = answered(recorded);
  const places = placeColumns(swept, { ...STANDARD_UNITS, length: 'in' });
  const { heads, rows } = sweepPlainTable(made, swept.inputs, 'row', [], (value) => value, places);
  expect(heads.slice(0, 3)).toEqual(['row', 'travel left [in]', 'travel right [in]']);
  expect(rows[0]?.slice(0, 3)).toEqual([1, expect.closeTo(10 / 25.4, 12), expect.closeTo(-5 / 25.4, 12)]);
});
