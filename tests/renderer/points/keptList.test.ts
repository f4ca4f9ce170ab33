import { describe, expect, test } from 'vitest';
import { afterTaking, NO_LIST, questionOf, withQuestion } from '../../../renderer/points/coordinates/keptList';
import { EMPTY_QUESTION } from '../../../renderer/points/coordinates/question';

const LIST = {
  ...EMPTY_QUESTION,
  text: 'LCA frt bush,9.2,-13.8,11.5',
  unit: 'in' as const,
  shift: ['-10', '0', '-20'] as const,
  names: { 'LCA frt bush': 'armFront' },
};

describe('what was said of a list', () => {
  const kept = withQuestion(NO_LIST, 'front', LIST);

  test('which point a row is, is said of one axle; how the list was measured, of both', () => {
    const rear = questionOf(kept, 'rear');
    expect(rear.names).toEqual({});
    expect(rear).toMatchObject({ text: LIST.text, unit: 'in', shift: LIST.shift });
    const both = withQuestion(kept, 'rear', { ...rear, names: { 'LCA frt bush': null } });
    expect(questionOf(both, 'front')).toEqual(LIST);
    expect(questionOf(both, 'rear').names).toEqual({ 'LCA frt bush': null });
  });

  test('another list is named anew on both axles', () => {
    const other = withQuestion(kept, 'rear', { ...questionOf(kept, 'rear'), text: 'other,1,2,3' });
    expect(questionOf(other, 'front').names).toEqual({});
  });

  test('after a list was taken its frame stays for the next one, and that is known until it is said anew', () => {
    const next = afterTaking(kept);
    expect(questionOf(next, 'rear')).toEqual({ ...EMPTY_QUESTION, unit: 'in', shift: LIST.shift });
    expect(next.isShiftKept).toBe(true);
    const pasted = withQuestion(next, 'rear', { ...questionOf(next, 'rear'), text: 'a,1,2,3' });
    expect(pasted.isShiftKept).toBe(true);
    expect(withQuestion(pasted, 'rear', { ...questionOf(pasted, 'rear'), shift: ['', '', ''] }).isShiftKept).toBe(false);
    expect(afterTaking(NO_LIST).isShiftKept).toBe(false);
  });
});
