import { describe, expect, it } from 'vitest';
import type { Outline } from '../../../../geometry/fitup/template/section';
import {
  MOST_TILES,
  OVERLAP_MM,
  TEMPLATE_PAPERS,
  tilesOf,
  type TemplatePaper,
  type TileGrid,
} from '../../../../geometry/fitup/template/tiles';

const PAPERS = Object.keys(TEMPLATE_PAPERS) as TemplatePaper[];

/** An ellipse of so many points about a place. */
function ellipse(x: number, y: number, a: number, b: number): Outline {
  const points = Array.from({ length: 400 }, (_, i): readonly [number, number] => {
    const angle = (2 * Math.PI * i) / 400;
    return [x + a * Math.cos(angle), y + b * Math.sin(angle)];
  });
  return { points, isHole: false, area: Math.PI * a * b, length: NaN };
}

function gridOf(outlines: readonly Outline[], paper: TemplatePaper): TileGrid {
  const grid = tilesOf(outlines, paper);
  if ('fault' in grid) throw new Error(grid.message);
  return grid;
}

describe('sheets of a template', () => {
  it.each(PAPERS)('%s: every point of an outline is on a sheet, and neighbours share their crosses', (paper) => {
    const outlines = [ellipse(700, -300, 610, 420), ellipse(650, -250, 100, 120)];
    const { tiles, rows, columns } = gridOf(outlines, paper);
    for (const { points } of outlines)
      for (const [x, y] of points)
        expect(tiles.some(({ min, max }) => x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1])).toBe(true);
    let neighbours = 0;
    for (const a of tiles)
      for (const b of tiles) {
        if (Math.abs(a.row - b.row) + Math.abs(a.column - b.column) !== 1) continue;
        neighbours++;
        const shared = a.marks.filter((m) => b.marks.some((n) => Math.abs(m[0] - n[0]) < 1e-9 && Math.abs(m[1] - n[1]) < 1e-9));
        expect(shared).toHaveLength(2);
        const i = a.row === b.row ? 0 : 1;
        expect(Math.min(a.max[i], b.max[i]) - Math.max(a.min[i], b.min[i])).toBeCloseTo(OVERLAP_MM, 9);
      }
    expect(neighbours).toBeGreaterThan(8);
    expect(tiles.length).toBeLessThan(rows * columns + 1);
  });

  it('is one sheet in the middle of what fits, without crosses', () => {
    const { tiles } = gridOf([ellipse(50, 60, 80, 100)], 'A4');
    expect(tiles).toHaveLength(1);
    expect(tiles[0].marks).toEqual([]);
    expect(tiles[0].min[0] + tiles[0].max[0]).toBeCloseTo(100, 9);
  });

  it('leaves sheets out that no line is on', () => {
    const { tiles, rows, columns } = gridOf([ellipse(0, 0, 500, 600)], 'A4');
    expect(tiles.length).toBeLessThan(rows * columns);
  });

  it('prints the sheets inside a section that a point is on, hanging together with those that its line is on', () => {
    const outlines = [ellipse(0, 0, 900, 700)];
    const points = [[120, 30]] as const;
    const isOn = ({ min, max }: TileGrid['tiles'][number]): boolean =>
      points.every(([x, y]) => x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1]);
    expect(gridOf(outlines, 'A4').tiles.some(isOn)).toBe(false);
    const grid = tilesOf(outlines, 'A4', points);
    if ('fault' in grid) throw new Error(grid.message);
    expect(grid.tiles.some(isOn)).toBe(true);
    // every sheet has a neighbour to be laid on
    const reached = [grid.tiles[0]!];
    for (const tile of reached)
      for (const other of grid.tiles)
        if (!reached.includes(other) && Math.abs(tile.row - other.row) + Math.abs(tile.column - other.column) === 1)
          reached.push(other);
    expect(reached).toHaveLength(grid.tiles.length);
  });

  it('refuses more sheets than anybody glues, and says what would help', () => {
    expect(tilesOf([ellipse(0, 0, 4000, 4000)], 'A4')).toMatchObject({ fault: 'too-many-tiles' });
    expect(tilesOf([ellipse(0, 0, 1e9, 1)], 'A3')).toMatchObject({ fault: 'too-many-tiles' });
    // read as every number of the window is, with commas between thousands
    expect(tilesOf([ellipse(0, 0, 4000, 4000)], 'A4')).toMatchObject({
      message: expect.stringMatching(/of 8,\d{3} × 8,\d{3} mm/),
    });
    expect(MOST_TILES).toBeGreaterThan(gridOf([ellipse(0, 0, 700, 400)], 'A4').tiles.length);
  });
});
