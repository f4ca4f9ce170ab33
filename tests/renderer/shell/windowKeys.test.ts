import { expect, test } from 'vitest';
import { windowCommand } from '../../../renderer/shell/windowKeys';

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
])('%o asks for %s', (pressed, command) => expect(windowCommand({ ...plain, ...pressed }, false)).toBe(command));

test('Home belongs to the field that is being typed in', () => {
  expect(windowCommand({ ...plain, key: 'Home' }, true)).toBeNull();
});
