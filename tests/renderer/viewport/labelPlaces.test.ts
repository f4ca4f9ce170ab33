import { describe, expect, test } from 'vitest';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { overlaps, placeLabel, placeLabels, type LabelBox, type WantedLabel } from '../../../renderer/viewport/labelPlaces';

const area: LabelBox = { x: 0, y: 0, width: 600, height: 430 };
const widthOf = (text: string): number => text.length * 6.3;

describe('one label', () => {
  test('keeps clear of others and of the edge, or is left out', () => {
    const first = placeLabel(80, [200, 150], [-60, 10], [], area);
    if (!first) throw new Error('there is room');
    const second = placeLabel(80, [200, 150], [-60, 10], [first], area);
    expect(second).not.toBeNull();
    expect(second && overlaps(first, second)).toBe(false);
    expect(placeLabel(80, [200, 150], [-60, 10], [area], area)).toBeNull();
  });
});

/** Many labels, crowded as points of a car are in a small view. */
const crowd = (seed: number): readonly WantedLabel[] => {
  const random = xoroshiro128plus(seed);
  const within = (low: number, high: number): number => uniformInt(random, low, high);
  return Array.from({ length: within(10, 120) }, () => ({
    text: 'x'.repeat(within(2, 34)),
    at: [within(-40, 640), within(-40, 470)] as const,
    reach: [within(-70, 70), within(-70, 70)] as const,
    strong: within(0, 3) === 0,
    depth: within(500, 6000),
  }));
};

describe('many labels', () => {
  test.each(Array.from({ length: 60 }, (_, seed) => seed))('never overlap, never leave the view: seed %i', (seed) => {
    const blocked: readonly LabelBox[] = [
      { x: 530, y: 10, width: 60, height: 190 },
      { x: 10, y: 10, width: 170, height: 170 },
    ];
    const placed = placeLabels(crowd(seed), widthOf, blocked, area);
    expect(placed.length).toBeGreaterThan(0);
    const boxes = [...blocked, ...placed.map(({ box }) => box)];
    boxes.forEach((box, index) => {
      for (const other of boxes.slice(index + 1)) if (!blocked.includes(other)) expect(overlaps(box, other)).toBe(false);
      expect(box.x >= 0 && box.y >= 0 && box.x + box.width <= 600 && box.y + box.height <= 430).toBe(true);
    });
  });

  test('of two that collide the strong one stays, else the nearer', () => {
    const here = { at: [300, 200] as const, reach: [0, 0] as const };
    const [kept] = placeLabels(
      [
        { ...here, text: 'far', strong: false, depth: 900 },
        { ...here, text: 'near', strong: false, depth: 100 },
      ],
      widthOf,
      [],
      area,
    );
    expect(kept?.text).toBe('near');
    const [strong] = placeLabels(
      [
        { ...here, text: 'near', strong: false, depth: 100 },
        { ...here, text: 'strong', strong: true, depth: 900 },
      ],
      widthOf,
      [],
      area,
    );
    expect(strong?.text).toBe('strong');
  });
});
