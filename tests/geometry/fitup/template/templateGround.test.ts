import { describe, expect, it } from 'vitest';
import type { FilledPart } from '../../../../geometry/fitup/keepOut/sweptSpace';
import { paperPlane } from '../../../../geometry/fitup/template/plane';
import { templateGround } from '../../../../geometry/fitup/template/templateGround';
import { fitted } from '../envelopes';

const wordsOf = (grow: number, filled: readonly FilledPart[] = []): string => {
  const plane = paperPlane([0, 600, 250, 1, 0, 0]);
  if ('fault' in plane) throw new Error(plane.message);
  const { facts, cautions } = templateGround(
    fitted('car-22'),
    {
      of: ['tyre'],
      grow,
      bound: 2,
      gap: 9,
      isFilled: false,
      outward: { least: 0, most: 2 },
      solidParts: filled,
      missing: [],
      warnings: [],
    },
    { axles: ['front'], side: 'left', setups: ['Baseline'], plane },
  );
  return [...facts, ...cautions].join(' ');
};

describe('words of a template', () => {
  it('say what the growth is for, and that a section is no solid', () => {
    const grown = wordsOf(48);
    expect(grown).toContain('centre line outside of the line');
    expect(grown).toContain('nowhere thicker than 48 mm about that centre line, margin included');
    expect(grown).not.toContain('Not grown');
    const plain = wordsOf(0);
    expect(plain).toContain('Not grown: the line is the edge of what moves; a part needs its own margin besides.');
    expect(plain).not.toContain('centre line outside');
    for (const words of [grown, plain]) {
      expect(words).toContain('normal 1, 0, 0 (car frame, mm): seen from the front.');
      expect(words).toContain('a bracket with thickness needs a template at each of its faces');
      // margin is in the growth or it is not: the caution leaves both open
      expect(words).toContain('needs its own margin, in the growth or besides');
    }
  });

  it('say what is filled, where something is', () => {
    expect(wordsOf(0)).not.toContain('Filled');
    expect(wordsOf(0, [{ name: 'tyreFront', as: 'tyre' }])).toContain(
      'Filled right through, the inside of the rim with it: tyreFront. Space in there that nothing reaches',
    );
    expect(wordsOf(0, [{ name: 'spacerRing', as: 'turning-mesh' }])).toContain('Filled from the least to the greatest radius');
  });
});
