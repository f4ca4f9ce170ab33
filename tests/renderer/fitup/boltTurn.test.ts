import { describe, expect, it } from 'vitest';
import type { Vector } from '../../../geometry/index';
import { boltTurnWords } from '../../../renderer/fitup/joints/boltTurn';

const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)}°`;
const tipped = (about: 'x' | 'y', by: number): Vector => {
  const [c, s] = [Math.cos((by * Math.PI) / 180), Math.sin((by * Math.PI) / 180)];
  return about === 'x' ? [0, -s, c] : [s, 0, c];
};

describe('how a bolt is turned to be the best one', () => {
  it.each([
    ['an upright one tipped forward', [0, 0, 2], tipped('y', 3), 'turned by 3.0°, its top 3.0° forward'],
    ['and rearward', [0, 0, 2], tipped('y', -3), 'turned by 3.0°, its top 3.0° rearward'],
    [
      'and outward, turned about the x axis by the right hand rule it goes inward',
      [0, 0, 1],
      tipped('x', 4),
      'turned by 4.0°, its top 4.0° inward',
    ],
    ['given upside down: the same bolt', [0, 0, -1], tipped('x', -4), 'turned by 4.0°, its top 4.0° outward'],
    ['one along the car', [1, 0, 0], [Math.cos(0.1), -Math.sin(0.1), 0], 'turned by 5.7°, its front end 5.7° inward'],
    ['one across the car', [0, -5, 0], [0, Math.cos(0.2), Math.sin(0.2)], 'turned by 11.5°, its outer end 11.5° up'],
    ['none to turn', [0, 0, 3], [0, 0, -1], 'as it is'],
  ] as readonly (readonly [string, Vector, Vector, string])[])('%s', (_, bolt, best, words) => {
    expect(boltTurnWords(bolt, best, degrees)).toBe(words);
  });

  it('says both ways, each by itself', () => {
    const s = Math.sin(Math.PI / 36);
    const best: Vector = [s, -s, Math.sqrt(1 - 2 * s * s)];
    expect(boltTurnWords([0, 0, 1], best, degrees)).toMatch(/^turned by 7\.1°, its top 5\.0° forward and 5\.0° inward$/);
  });
});
