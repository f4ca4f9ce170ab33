import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import type { TemplateDrawing } from '../../../../geometry/fitup/template/drawing';
import { paperArrows, paperPlane } from '../../../../geometry/fitup/template/plane';
import { sectionOf } from '../../../../geometry/fitup/template/section';
import { templateDxf } from '../../../../geometry/fitup/template/templateDxf';
import { torus } from './solids';

function drawingOf(): TemplateDrawing {
  const plane = paperPlane([10, 0, 5, 0, 0.05, 1]);
  if ('fault' in plane) throw new Error(plane.message);
  const outlines = sectionOf(torus([0, 0, 0], 300, 100), plane);
  if ('missedBy' in outlines) throw new Error('missed');
  return {
    car: 'Größe 1\n0\nEOF ^ 😀',
    of: ['tyre'],
    seen: 'seen from above',
    side: 'left',
    facts: ['sweeps'],
    cautions: [],
    outlines,
    points: [{ name: 'ballJoint', at: [-12.25, 1e-7], off: -3 }],
    axes: [{ name: 'armRear', at: [40, 50], way: [0.6, 0.8], off: 12.34 }],
    arrows: paperArrows(plane, 'left'),
  };
}

describe('template as DXF', () => {
  const drawing = drawingOf();
  const written = templateDxf(drawing, '2026-05-16');
  const read = new DxfParser().parseSync(written);
  const entities = read?.entities ?? [];
  interface Corners {
    readonly vertices: readonly { readonly x: number; readonly y: number }[];
    readonly shape: boolean;
  }

  it('is read back by a library with the same outlines, closed, on their layers', () => {
    expect(read?.header.$ACADVER).toBe('AC1009');
    const lines = entities.filter(({ type }) => type === 'POLYLINE');
    expect(lines.map(({ layer }) => layer)).toEqual(drawing.outlines.map(({ isHole }) => (isHole ? 'HOLE' : 'OUTLINE')));
    expect(new Set(lines.map(({ layer }) => layer)).size).toBe(2);
    lines.forEach((line, i) => {
      const { vertices, shape } = line as unknown as Corners;
      expect(shape).toBe(true);
      expect(vertices).toHaveLength(drawing.outlines[i].points.length);
      vertices.forEach(({ x, y }, k) => {
        const [wantedX, wantedY] = drawing.outlines[i].points[k];
        expect(Math.abs(x - wantedX) + Math.abs(y - wantedY)).toBeLessThan(1e-6);
      });
    });
    expect(Object.keys(read?.tables.layer.layers ?? {})).toEqual(expect.arrayContaining(['OUTLINE', 'HOLE', 'POINTS', 'BOLTS']));
  });

  it('has points, axes, two bars of 100 mm and words, whatever is in them', () => {
    const points = entities.filter(({ type }) => type === 'POINT') as unknown as { position: { x: number; y: number } }[];
    expect(points.map(({ position }) => [position.x, position.y])).toEqual([
      [-12.25, 1e-7],
      [40, 50],
    ]);
    const bars = entities.filter(({ type, layer }) => type === 'LINE' && layer === 'BARS') as unknown as Corners[];
    for (const { vertices } of bars)
      expect(Math.abs(vertices[1].x - vertices[0].x) + Math.abs(vertices[1].y - vertices[0].y)).toBeCloseTo(100, 9);
    expect(bars).toHaveLength(2);
    const words = (entities.filter(({ type }) => type === 'TEXT') as unknown as { text: string }[]).map(({ text }) => text);
    expect(words).toContain('ballJoint, 3.0 mm behind');
    expect(words).toContain('armRear bolt, 12.3 mm in front');
    expect(words).toContain('UP points out of the paper, towards you');
    expect(words.some((said) => said.startsWith('Gr\\U+00F6\\U+00DFe 1 0 EOF'))).toBe(true);
  });

  it('is plain ASCII with the line ends of the format', () => {
    expect(/^[\x20-\x7e\r\n]*$/.test(written)).toBe(true);
    expect(written.endsWith('0\r\nEOF\r\n')).toBe(true);
    expect(written.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
  });
});
