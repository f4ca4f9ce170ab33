import { expect, test } from 'vitest';
import { abandon, HISTORY_LENGTH, mark, record, redo, settle, startHistory, undo } from '../../../renderer/state/history';

test('undo gives back the very object that was there, redo the one that was undone', () => {
  const [a, b, c] = [{ at: 'a' }, { at: 'b' }, { at: 'c' }];
  const history = record(record(startHistory(a), 'to b', b), 'to c', c);
  expect(history.past.map(({ name }) => name)).toEqual(['to b', 'to c']);
  const once = undo(history);
  expect(once.present).toBe(b);
  expect(undo(once).present).toBe(a);
  expect(undo(undo(once)).present).toBe(a);
  expect(redo(once).present).toBe(c);
  expect(redo(redo(once)).present).toBe(c);
});

test('a new step after an undo forgets what was undone', () => {
  const history = record(undo(record(startHistory(1), 'to 2', 2)), 'to 3', 3);
  expect(history.future).toEqual([]);
  expect(undo(history).present).toBe(1);
});

test('a drag is one step however many values it went through', () => {
  let history = mark(startHistory(0));
  for (let value = 1; value <= 9; value += 1) history = record(history, 'turn bolt', value);
  history = settle(history);
  expect(history.past).toEqual([{ name: 'turn bolt', value: 0 }]);
  expect(undo(history).present).toBe(0);
});

test('a drag that ends where it began, or is given up, is no step', () => {
  const there = record(mark(startHistory(0)), 'turn', 5);
  expect(settle(record(there, 'turn', 0)).past).toEqual([]);
  expect(abandon(there)).toMatchObject({ present: 0, past: [], mark: null });
});

test('what the hand holds is not in a step yet: nothing is undone or redone in the middle of a drag', () => {
  const before = undo(record(record(startHistory(0), 'turn', 8), 'turn', 7));
  const held = record(mark(before), 'turn', 5);
  expect(undo(held)).toBe(held);
  expect(redo(held)).toBe(held);
  expect(settle(held).past.map(({ value }) => value)).toEqual([0, 8]);
  expect(abandon(held)).toMatchObject({ present: 8, mark: null });
});

test('an equal value is no step, and old steps are forgotten in the end', () => {
  const start = startHistory('same');
  expect(record(start, 'nothing', 'same')).toBe(start);
  let history = startHistory(0);
  for (let value = 1; value <= HISTORY_LENGTH + 20; value += 1) history = record(history, String(value), value);
  expect(history.past).toHaveLength(HISTORY_LENGTH);
});
