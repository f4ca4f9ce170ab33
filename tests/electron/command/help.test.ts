import { describe, expect, test } from 'vitest';
import { helpOn } from '../../../electron/command/help';

describe('help', () => {
  test.each([
    ['front.left.camber', 'camber'],
    ['right.camber', 'camber'],
    ['rear.both.rollCentreHeight', 'rollCentreHeight'],
    ['wholeCar.rake', 'rake'],
    ['front.left.wheelCentre.x', 'wheelCentre'],
    ['left.frontViewInstantCentre.z', 'frontViewInstantCentre'],
  ])('%s is explained as %s', (dotted, key) => {
    expect(helpOn(dotted)).toBe(helpOn(key));
  });

  test.each([
    'front.both.camber',
    'front.wholeCar.rake',
    'left.camber.x',
    'left.frontViewInstantCentre.x',
    'camber.left',
    'left.',
  ])('%s is no name of a reading', (dotted) => {
    expect(() => helpOn(dotted)).toThrow('there is no help on');
  });

  test('a slip in a dotted name is guessed at', () => {
    expect(() => helpOn('front.left.cambr')).toThrow('camber');
  });

  test('what says nothing to a verb is not in its help', () => {
    expect(helpOn('schema')).not.toMatch(/--(setup|set) /);
    expect(helpOn('batch')).toMatch(/--setup NAME/);
  });
});
