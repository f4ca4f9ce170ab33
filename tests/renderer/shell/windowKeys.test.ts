import { expect, test } from 'vitest';
import { selectsWindow, windowCommand } from '../../../renderer/shell/windowKeys';

const plain = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };

test.each([
  [{ key: 'z', ctrlKey: true }, 'undo'],
  [{ key: 'Z', ctrlKey: true, shiftKey: true }, 'redo'],
  [{ key: 'z', metaKey: true }, 'undo'],
  [{ key: 'y', ctrlKey: true }, 'redo'],
  [{ key: 'o', ctrlKey: true }, 'open'],
  [{ key: 'Home' }, 'zero'],
  [{ key: 'z' }, null],
  [{ key: 'a', ctrlKey: true }, null],
])('%o asks for %s', (pressed, command) => expect(windowCommand({ ...plain, ...pressed }, 'no')).toBe(command));

test('Ctrl A selects what is in a field, never the whole window', () => {
  const pressed = { ...plain, key: 'a', ctrlKey: true };
  expect(selectsWindow(pressed, 'no')).toBe(true);
  expect(selectsWindow(pressed, 'control')).toBe(false);
  expect(selectsWindow(pressed, 'draft')).toBe(false);
  expect(selectsWindow({ ...plain, key: 'a' }, 'no')).toBe(false);
});

test('Home belongs to the field that has the focus', () => {
  expect(windowCommand({ ...plain, key: 'Home' }, 'control')).toBeNull();
});

test('undo is the car’s in a field that holds what was taken, the field’s own while text is typed', () => {
  for (const pressed of [{ key: 'z' }, { key: 'Z', shiftKey: true }, { key: 'y' }]) {
    expect(windowCommand({ ...plain, ctrlKey: true, ...pressed }, 'control')).not.toBeNull();
    expect(windowCommand({ ...plain, ctrlKey: true, ...pressed }, 'draft')).toBeNull();
  }
  expect(windowCommand({ ...plain, key: 'o', ctrlKey: true }, 'draft')).toBe('open');
});
