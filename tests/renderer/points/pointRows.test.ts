import { describe, expect, test } from 'vitest';
import { designPoints, readPoints, STANDARD_UNITS } from '../../../geometry/index';
import { shownQuantity } from '../../../renderer/units/shownQuantity';
import { answerList, EMPTY_QUESTION, type ListQuestion } from '../../../renderer/points/coordinates/question';
import { placedFor } from '../../../renderer/points/placedFor';
import { apartWords, movers, pointLines, pointsAsText, roleOf } from '../../../renderer/points/pointRows';
import { moveTo } from '../../../renderer/state/actions/lookAt';
import { carDocument, openedBench } from '../carUnderTest';

const car = carDocument('car-23');
const front = car.front;
const rear = car.rear;
if (!front || !rear) throw new Error('both axles');

describe('the table of points', () => {
  test('says what every point joins and what moves it', () => {
    expect(roleOf(front, 'strutTop')).toBe('strut top bearing');
    for (const [rod, [inner, outer]] of Object.entries(rear.rods ?? {})) {
      expect(roleOf(rear, inner)).toBe(`${rod} to body`);
      expect(roleOf(rear, outer)).toBe(`${rod} to knuckle`);
    }
    expect(roleOf({ ...rear, points: { ...rear.points, spare: [0, 0, 0] } }, 'spare')).toBe('not used');
    const moved = Object.values(front.adjusters ?? {}).find((adjuster) => adjuster.kind === 'slide');
    expect(moved && 'moves' in moved && movers(front, String(moved.moves)).length).toBeGreaterThan(0);
  });

  test('left as the file has it, right mirrored or its own, with what differs from the saved car', () => {
    const own = { ...front, right: { points: { armFront: [1, -300, 200] as const } } };
    const saved = { ...front, points: { ...front.points, armFront: [0, 0, 0] as const } };
    const [left] = pointLines(own, 'left', saved);
    const at = front.points['armFront'] ?? [0, 0, 0];
    expect(left).toMatchObject({ name: 'armFront', at, own: true });
    expect(left?.moved).toBeCloseTo(Math.sqrt(at[0] * at[0] + at[1] * at[1] + at[2] * at[2]), 9);
    expect(left?.apart).toEqual([1 - at[0], 300 - at[1], 200 - at[2]]);
    expect(pointLines(own, 'right', undefined)[0]).toMatchObject({ at: [1, -300, 200], moved: null });
    expect(pointLines(front, 'right', undefined)[1]?.at[1]).toBeLessThan(0);
    const [inches] = [pointLines(own, 'right', undefined).slice(0, 1)];
    expect(pointsAsText(inches, 25.4, 'mm')).toBe('Point\tX [mm]\tY [mm]\tZ [mm]\narmFront\t25.4\t-7620\t5080');
    expect(pointsAsText(inches, 25.4, 'in')).toBe('Point\tX [in]\tY [in]\tZ [in]\narmFront\t1\t-300\t200');
    const back = readPoints(pointsAsText(inches, 25.4, 'in'));
    expect(back).toMatchObject({ headerUnit: 'in', faults: [], rows: [{ name: 'armFront', read: [1, -300, 200] }] });
  });

  test('a right side of its own says where it differs, in the unit shown, and nothing of where it does not', () => {
    const words = (length: 'mm' | 'in', apart: readonly [number, number, number]) =>
      apartWords(apart, shownQuantity({ quantity: 'length', decimals: 2 }, { ...STANDARD_UNITS, length }));
    expect(words('mm', [0, 1.5, -0.501])).toBe('Y\u00a0+1.50 · Z\u00a0−0.50');
    expect(words('in', [25.4, 0, 0])).toBe('X\u00a0+1.0000');
    expect(words('mm', [0, 0.0004, 0])).toBe('same');
  });

  test('out: every point of both sides where the view shows it, beside design', () => {
    const store = openedBench('car-23');
    moveTo(store, { travel: 20 });
    const placed = placedFor(store.getState());
    const wheel = placed.find(({ name, side }) => name === 'wheelCentre' && side === 'left');
    expect(placed).toHaveLength(2 * Object.keys(front.points).length);
    expect(wheel?.change[2]).toBeGreaterThan(1);
    expect(wheel?.design).toEqual(front.points['wheelCentre']);
  });
});

describe('a list that is read in', () => {
  const text = Object.entries(designPoints(car, 'front', 'left'))
    .map(([name, [x, y, z]]) => [name, -x, -y, z].join(';'))
    .join('\n');
  const ask = (part: Partial<ListQuestion>) => answerList(car, 'front', { ...EMPTY_QUESTION, text, ...part });

  test('asks for the unit, then shows every point; nothing stands in the way', () => {
    expect(ask({}).obstacles[0]?.text).toContain('In what unit');
    const answer = ask({ unit: 'mm', axes: ['back', 'right', 'up'] });
    expect(answer).toMatchObject({ obstacles: [], handed: 'right' });
    expect(answer.brought?.points.every(({ shift }) => shift === 0)).toBe(true);
    expect(answerList(car, 'front', EMPTY_QUESTION).obstacles).toEqual([]);
  });

  test('says what stands in the way: rows, names, axes, reference points', () => {
    expect(ask({ text: 'a;1;2' }).obstacles[0]?.text).toContain('Line 1, column 1');
    expect(ask({ text: 'tieRod_out;1;2;3', unit: 'mm' }).obstacles[0]).toMatchObject({
      name: 'tieRod_out',
      suggestion: 'tieRodEnd',
    });
    expect(ask({ text: 'tieRod_out;1;2;3', unit: 'mm', names: { tieRod_out: null } }).obstacles).toEqual([]);
    expect(ask({ unit: 'mm', axes: ['back', 'up', 'down'] }).obstacles[0]?.text).toContain('same line');
    expect(ask({ unit: 'mm', datum: ['armFront', 'armRear'] }).obstacles[0]?.text).toContain('too few');
    expect(
      ask({ unit: 'mm', axes: ['back', 'right', 'up'], datum: ['armFront', 'armRear', 'strutTop', 'wheelCentre'] }).brought?.datum
        ?.rms,
    ).toBeLessThan(1e-9);
  });
});
