import { describe, expect, test } from 'vitest';
import { designPoints, type Vector } from '../../../geometry/index';
import { asOnSide } from '../../../renderer/points/coordinates/asOnSide';
import { answerList, EMPTY_QUESTION, nameRow, type ListQuestion } from '../../../renderer/points/coordinates/question';
import { carDocument } from '../carUnderTest';

const CAR = carDocument('car-21');
const SIDES = [designPoints(CAR, 'front', 'left'), designPoints(CAR, 'front', 'right')] as const;
const NAMES = Object.keys(SIDES[0]);

/** The car as somebody else wrote it down: names of their own for both sides, from another origin. */
const listOf = (from: Vector): string =>
  NAMES.flatMap((name, k) =>
    SIDES.map((points, side) => {
      const [x = 0, y = 0, z = 0] = points[name] ?? [];
      return [`${side === 0 ? 'L' : 'R'} bolt ${k}`, x + from[0], y + from[1], z + from[2]].join(';');
    }),
  ).join('\n');

const ask = (part: Partial<ListQuestion>): ListQuestion => ({ ...EMPTY_QUESTION, unit: 'mm', side: 'both', ...part });
const answer = (question: ListQuestion) => answerList(CAR, 'front', question);
/** Every row of the left named by hand; those of the right follow. */
const byHand = (question: ListQuestion): ListQuestion =>
  NAMES.reduce((before, name, k) => ({ ...before, names: nameRow(before, answer(before).rows, `L bolt ${k}`, name) }), question);
const DATUM = ['armFront', 'armRear', 'strutTop', 'wheelCentre'];

describe('a list with names of its own', () => {
  test('is named on one side, and the other side follows; what was said before stays', () => {
    const named = byHand(ask({ text: listOf([0, 0, 0]), names: { 'R bolt 0': null } }));
    expect(named.names['R bolt 0']).toBeNull();
    expect(named.names['R bolt 1']).toBe(NAMES[1]);
    expect(answer(named).brought?.points).toHaveLength(2 * NAMES.length - 1);
  });

  test('is moved by rows that were named by hand', () => {
    const { brought, obstacles } = answer({ ...byHand(ask({ text: listOf([500, 40, -120]) })), datum: DATUM });
    expect(obstacles).toEqual([]);
    brought?.points.forEach(({ shift }) => expect(shift).toBeLessThan(1e-9));
  });

  test('or by rows chosen beside the ticks, and its rows stay in sight while some are missing', () => {
    const question = ask({ text: listOf([500, 0, -120]), side: 'left', datum: DATUM });
    const missing = answer(question);
    expect(missing.brought).toBeNull();
    expect(missing.rows).toHaveLength(2 * NAMES.length);
    expect(missing.obstacles[0]?.text).toMatch(/^Which rows of the list are armFront, armRear, strutTop, wheelCentre\?/);
    const datumRows = Object.fromEntries(DATUM.map((name) => [name, `L bolt ${NAMES.indexOf(name)}`]));
    expect(answer({ ...question, datumRows }).brought?.datum?.rms).toBeLessThan(1e-9);
    expect(answer({ ...question, datum: ['armFront'], datumRows }).rows).toHaveLength(2 * NAMES.length);
  });

  test('keeps its rows where two of them are one point', () => {
    const twice = answer(ask({ text: 'a;1;2;3\nb;4;5;6', side: 'left', names: { a: 'armFront', b: 'armFront' } }));
    expect(twice.rows.map(({ point }) => point)).toEqual(['armFront', 'armFront']);
    expect(twice.obstacles[0]?.text).toContain('lines 1 and 2');
  });

  test('comes to the origin of the car by what is added to it, as it is typed', () => {
    const question = byHand(ask({ text: listOf([500, 0, -120]) }));
    const moved = answer({ ...question, shift: ['−500', '', '120,0 mm'] });
    expect(moved.obstacles).toEqual([]);
    moved.brought?.points.forEach(({ shift }) => expect(shift).toBeLessThan(1e-9));
    const wrong = answer({ ...question, shift: ['', 'left', ''] });
    expect(wrong.obstacles[0]?.text).toBe('What is added to Y is no length.');
    expect(wrong.rows).toHaveLength(2 * NAMES.length);
  });

  test('is in the unit that its header says, else in that of a car that was begun, else it is asked for', () => {
    const text = 'armFront;1;2;3';
    expect(answerList(CAR, 'front', ask({ text, unit: null })).obstacles[0]?.text).toContain('In what unit');
    expect(answerList(CAR, 'front', ask({ text, unit: null }), 'in').unit).toBe('in');
    const headed = ask({ text: `name;x [cm];y [cm];z [cm]\n${text}`, unit: null });
    expect(answerList(CAR, 'front', headed, 'in').unit).toBe('cm');
  });

  test('is of the sides and in the axes that it says itself, until it is told otherwise', () => {
    const own = (part: Partial<ListQuestion>) => answer({ ...EMPTY_QUESTION, unit: 'mm', ...part });
    const text = listOf([0, 0, 0]);
    expect(own({ text }).side).toBe('both');
    expect(own({ text, side: 'left' }).side).toBe('left');
    expect(own({ text: 'R bolt 1;1;2;3\nright bolt 2;1;2;3' }).side).toBe('right');
    expect(own({ text: 'R bolt 1;1;2;3\nbolt 2;1;2;3' }).side).toBe('left');
    expect(own({ text: 'side;name;x;y;z\nleft;a;1;2;3\nright;a;1;-2;3' }).side).toBe('both');
    expect(own({ text: '' }).side).toBe('left');
    const headed = `Point;X back;Y right;Z up\nL pin;-15;-360;212`;
    const named = { 'L pin': 'armFront' };
    expect(own({ text: headed, names: named })).toMatchObject({ axes: ['back', 'right', 'up'], handed: 'right' });
    expect(own({ text: headed, names: named }).brought?.points[0]?.at).toEqual([15, 360, 212]);
    expect(own({ text: headed, axes: ['forward', 'right', 'up'] }).handed).toBe('left');
  });

  test('with names of its own alone, all of them are said at once and can be left out at once', () => {
    const question = ask({ text: 'peg one;1;2;3\npeg two;4;5;6\nballJont;8;9;1', side: 'left' });
    const { obstacles } = answer(question);
    expect(obstacles.map(({ suggestion }) => suggestion)).toEqual(['ballJoint', null]);
    expect(obstacles[1]).toMatchObject({ name: null, rows: ['peg one', 'peg two'] });
    expect(obstacles[1]?.text).toMatch(/^2 rows have names of their own/);
    const rest = answer({ ...question, names: { 'peg one': null, 'peg two': null, ballJont: 'ballJoint' } });
    expect(rest.obstacles).toEqual([]);
    expect(rest.brought?.points.map(({ point }) => point)).toEqual(['ballJoint']);
  });

  test('is told by the words of its names where they fit one point best, and by no more than these', () => {
    const text = [
      'L LCA front bush',
      'L LCA rear bush',
      'L lower BJ',
      'L strut top mount',
      'L tie rod inner',
      'L outer tie rod end',
      'L hub centre',
      'L upper strut bolt',
      'L exhaust hanger',
      'R LCA front bush',
    ]
      .map((name, k) => `${name};${k};${100 + k};200`)
      .join('\n');
    const [obstacle] = answer(ask({ text, side: 'both' })).obstacles;
    expect(obstacle?.likely).toEqual({
      'L LCA front bush': 'armFront',
      'L LCA rear bush': 'armRear',
      'L lower BJ': 'ballJoint',
      'L strut top mount': 'strutTop',
      'L tie rod inner': 'rackEnd',
      'L outer tie rod end': 'tieRodEnd',
      'L hub centre': 'wheelCentre',
      'L upper strut bolt': 'clampUpper',
      'R LCA front bush': 'armFront',
    });
  });

  test.each([
    ['says only where', ['L front lower']],
    ['could be two points', ['L LCA bush', 'L tie rod']],
    ['is as good as another row of its side', ['L LCA front bush', 'L LCA front sleeve']],
    ['contradicts itself with every point', ['L hub bolt front']],
  ])('is left to the person where it %s', (_, names) => {
    const text = [...names, 'L zzz'].map((name, k) => `${name};${k};100;200`).join('\n');
    expect(answer(ask({ text, side: 'left' })).obstacles.map(({ likely }) => likely ?? {})).not.toContainEqual(
      expect.objectContaining({ [names[0] ?? '']: expect.anything() }),
    );
    expect(answer(ask({ text, side: 'left' })).obstacles.length).toBeGreaterThan(0);
  });

  test('of the right side mirrors to the left where nothing was measured yet, and stays its own on a car that was', () => {
    const list = ask({ text: 'armFront;15;-362;212', side: null, axes: null });
    const onNewCar = answerList(CAR, 'front', { ...list, side: 'right' }, null, true);
    expect(onNewCar.sides).toBe('mirror');
    expect(onNewCar.brought?.points.map(({ side, at }) => [side, at[1]])).toContainEqual(['left', 362]);
    expect(answerList(CAR, 'front', { ...list, side: 'right' }, null, false).sides).toBe('each');
    // what the person says goes before
    expect(answerList(CAR, 'front', { ...list, side: 'right', sides: 'each' }, null, true).sides).toBe('each');
  });

  test('averaged: each row is shown as its own side has the mean', () => {
    const text = 'name;side;x;y;z\narmFront;left;15;362;212\narmFront;right;15;-363;214';
    const [point] = answer(ask({ text, sides: 'average' })).brought?.points ?? [];
    if (!point) throw new Error('it is averaged');
    expect(point).toMatchObject({ side: 'left', at: [15, 362.5, 213] });
    expect(asOnSide(point, 'left')).toBe(point);
    const right = asOnSide(point, 'right');
    expect(right.at).toEqual([15, -362.5, 213]);
    expect(right.replaces?.[1]).toBe(-(point.replaces?.[1] ?? 0));
    expect(right.change?.[1]).toBeCloseTo((right.at[1] ?? 0) - (right.replaces?.[1] ?? 0), 9);
  });
});
