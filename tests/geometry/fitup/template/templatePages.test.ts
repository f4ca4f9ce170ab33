import DxfParser from 'dxf-parser';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../../electron/building/products.mjs';
import type { AxleName, CarDocument } from '../../../../geometry/car/document';
import { sweptSpace } from '../../../../geometry/fitup/keepOut/sweptSpace';
import { paperPlane } from '../../../../geometry/fitup/template/plane';
import { sectionOf, type SectionedMesh } from '../../../../geometry/fitup/template/section';
import { templateDxf } from '../../../../geometry/fitup/template/templateDxf';
import { templateOf } from '../../../../geometry/fitup/template/templateOf';
import { templatePages } from '../../../../geometry/fitup/template/templatePages';
import { tilesOf, type TemplatePaper } from '../../../../geometry/fitup/template/tiles';
import type { TemplateDrawing } from '../../../../geometry/fitup/template/drawing';
import { findSetup, parseCar, toMechanism } from '../../../../geometry/index';
import type { PrintedPath, PrintedSheet, PrintedText } from '../../../../geometry/sheet/printedSheet';
import { widthOf } from '../../../../geometry/sheet/typeface/typeface';
import { torus } from './solids';

const POINTS_PER_MM = 72 / 25.4;
const MARGIN = 10 * POINTS_PER_MM;

const carOf = (name: string): CarDocument => {
  const read = parseCar(readFileSync(path.join(ROOT, `samples/${name}.jounce.json`), 'utf8'));
  if (!read.ok) throw new Error('the sample has faults');
  return read.value.document;
};

interface Box {
  readonly min: readonly number[];
  readonly max: readonly number[];
}

/** What a text covers, its capitals and what hangs below its line [pt]. */
const boxOf = ({ text, x, y, size, weight }: PrintedText): Box => ({
  min: [x, y - 0.72 * size],
  max: [x + widthOf(text, size, weight), y + 0.22 * size],
});

const overlap = (a: Box, b: Box): boolean => [0, 1].every((i) => a.min[i]! < b.max[i]! && b.min[i]! < a.max[i]!);

/** Whether a straight line has a point in a box: by many points of it, and no code of the template's. */
const covers = (box: Box, from: readonly number[], to: readonly number[]): boolean =>
  Array.from({ length: 121 }, (_, i) => i / 120).some((share) =>
    [0, 1].every((i) => {
      const at = from[i]! + share * (to[i]! - from[i]!);
      return at > box.min[i]! && at < box.max[i]!;
    }),
  );

const NAMES = /, (?:on the plane|[\d.]+ mm (?:in front|behind))$/;

/** What is wrong with the words of a template's pages: one on another, one on a line that it names, one past the edge. */
function wrongs({ pages }: PrintedSheet): string[] {
  return pages.flatMap(({ width, height, marks }, page) => {
    const texts = marks.filter((mark): mark is PrintedText => mark.kind === 'text');
    // outlines have many points, leaders are the thinnest lines and end at what they name
    const lines = marks.filter(
      (mark): mark is PrintedPath => mark.kind === 'path' && mark.commands.length === 2 && mark.width > 0.13 * POINTS_PER_MM,
    );
    return texts.flatMap((text, i) => {
      const box = boxOf(text);
      const where = `page ${page} "${text.text}"`;
      const isIn =
        box.min[0]! >= MARGIN - 0.1 &&
        box.min[1]! >= MARGIN - 0.1 &&
        box.max[0]! <= width - MARGIN + 0.1 &&
        box.max[1]! <= height - MARGIN + 0.1;
      return [
        ...(isIn ? [] : [`${where} is past the edge`]),
        ...texts.slice(i + 1).flatMap((other) => (overlap(box, boxOf(other)) ? [`${where} is on "${other.text}"`] : [])),
        ...(page > 0 &&
        lines.some(({ commands: [from, to] }) => covers(box, from!.slice(1) as number[], to!.slice(1) as number[]))
          ? [`${where} is on a line`]
          : []),
      ];
    });
  });
}

function drawingOn(
  document: CarDocument,
  axles: readonly AxleName[],
  mesh: SectionedMesh,
  numbers: readonly number[],
): TemplateDrawing {
  const plane = paperPlane(numbers);
  if ('fault' in plane) throw new Error(plane.message);
  const outlines = sectionOf(mesh, plane);
  if ('missedBy' in outlines) throw new Error(`missed by ${outlines.missedBy}`);
  return templateOf(outlines, {
    document,
    axles,
    side: 'left',
    plane,
    of: PARTS,
    facts: ['Swept over Baseline.'],
    cautions: ['Prove it.'],
  });
}

const PARTS = ['tyreFront', 'rimFront', 'caliperFront', 'armFront', 'armRear', 'armBend', 'duct', 'archLiner', 'disc', 'toe'];

/** About the wheel, as wide as a tyre. */
const ringAt = ([x, y, z]: readonly [number, number, number]): SectionedMesh => {
  const { positions, triangles } = torus([0, 0, 0], 230, 110, 96, 48);
  const turned = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) turned.set([positions[i]! + x, positions[i + 2]! + y, positions[i + 1]! + z], i);
  return { positions: turned, triangles };
};

const WAYS = [
  [0, 1, 0],
  [0, -1, 0],
  [1, 0, 0],
  [0, 0, 1],
  [1, -1, 0],
  [0.4, 0.5, 0.7],
] as const;

describe('words on a template', () => {
  let hatch: CarDocument;
  let swept: SectionedMesh;
  beforeAll(() => {
    hatch = carOf('saltmarsh-hatch');
    const question = {
      axles: ['front'],
      sides: ['left'],
      setups: [['Baseline', findSetup(hatch, 'Baseline')]],
      of: ['tyreFront'],
      grow: 48,
      bound: 8,
    } as const;
    const made = sweptSpace(toMechanism(hatch), question);
    if (!('mesh' in made)) throw new Error('nothing swept');
    swept = made.mesh;
  }, 60_000);

  test.each(['A4', 'Letter', 'A3', 'Tabloid'] as const)(
    'of what a tyre sweeps are on no line of theirs, on no other words and on the page: %s',
    (paper) => {
      for (const way of WAYS) {
        const drawing = drawingOn(hatch, ['front'], swept, [0, 600, 250, ...way]);
        const grid = tilesOf(drawing.outlines, paper);
        if ('fault' in grid) throw new Error(grid.message);
        const printed = templatePages(drawing, grid, paper, '2026-05-16');
        expect(wrongs(printed)).toEqual([]);
        const all = printed.pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
        const named = all.filter((text) => NAMES.test(text)).join('\n');
        const first = all.join(' ');
        // every point is named where it lies, or said not to be on the sheets
        for (const { name } of drawing.points) expect(`${named} ${first}`).toContain(name);
      }
    },
    60_000,
  );

  test.each(['saltmarsh-hatch', 'marram-coupe', 'chalkboard'])('of both axles of %s at once do not lie on each other', (name) => {
    const car = carOf(name);
    const mm = car.units?.length === 'in' ? 25.4 : 1;
    for (const axle of ['front', 'rear'] as const) {
      const centre = car[axle]?.points['wheelCentre'];
      if (!centre) continue;
      const at = centre.map((value) => value * mm) as unknown as readonly [number, number, number];
      for (const way of WAYS)
        for (const paper of ['A4', 'Letter'] satisfies TemplatePaper[]) {
          const drawing = drawingOn(car, ['front', 'rear'], ringAt(at), [...at, ...way]);
          const grid = tilesOf(drawing.outlines, paper);
          if ('fault' in grid) throw new Error(grid.message);
          expect(wrongs(templatePages(drawing, grid, paper, '2026-05-16'))).toEqual([]);
        }
    }
  });

  test('more points than there is room for are marked, and named on the sheet of words', () => {
    const drawing = drawingOn(hatch, ['front'], swept, [0, 600, 250, 0, 1, 0]);
    const [x = 0, y = 0] = drawing.outlines[0]!.points[0]!;
    const points = Array.from({ length: 420 }, (_, i) => ({
      name: `number${i}`,
      at: [x + 3 * (i % 20) - 30, y + 3 * Math.floor(i / 20) - 30] as const,
      off: i,
    }));
    const grid = tilesOf(drawing.outlines, 'A4');
    if ('fault' in grid) throw new Error(grid.message);
    const printed = templatePages({ ...drawing, points, axes: [] }, grid, 'A4', '2026-05-16');
    expect(wrongs(printed)).toEqual([]);
    const all = printed.pages
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
      .join(' ');
    for (const { name } of points) expect(all).toContain(name);
    expect(all).toContain('Marked without their names');
  }, 60_000);

  test('a hole is dashed along its whole line, in millimetres', () => {
    const centre = hatch.front!.points['wheelCentre']!;
    const ring = ringAt(centre);
    const drawing = drawingOn(hatch, ['front'], ring, [...centre, 0, 1, 0]);
    const grid = tilesOf(drawing.outlines, 'A3');
    if ('fault' in grid) throw new Error(grid.message);
    const { pages } = templatePages(drawing, grid, 'A3', '2026-05-16');
    const dashed = pages.flatMap(({ marks }) =>
      marks.filter((mark): mark is PrintedPath => mark.kind === 'path' && mark.dash?.length === 2),
    );
    expect(dashed.length).toBeGreaterThan(0);
    for (const { dash } of dashed) expect(dash![0]! / POINTS_PER_MM).toBeCloseTo(3, 9);
    // not a line of two points for every stretch, each of which would begin its dashes anew
    expect(Math.max(...dashed.map(({ commands }) => commands.length))).toBeGreaterThan(20);
  });

  test('all that is swept is named on the sheet of words, and counted on the others where there is no room', () => {
    const drawing = drawingOn(hatch, ['front'], swept, [0, 600, 250, -1, 0, 0]);
    const grid = tilesOf(drawing.outlines, 'A4');
    if ('fault' in grid) throw new Error(grid.message);
    const [first = [], ...tiles] = templatePages(drawing, grid, 'A4', '2026-05-16').pages.map(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
    );
    expect(first.join(' ')).toContain(`keep-out of ${PARTS.join(', ')}`);
    for (const texts of tiles) {
      const title = texts.find((text) => text.includes('keep-out of'))!;
      const [, names = '', more] = /keep-out of (.*) and (\d+) more$/.exec(title) ?? [];
      expect(names.split(', ').length + Number(more)).toBe(PARTS.length);
      expect(PARTS.slice(0, 3)).toEqual(names.split(', ').slice(0, 3));
      expect(texts).toContain('Hatched: keep out. Paper seen from behind.');
    }
  });

  test('sheets that are not printed are named, with what is on them', () => {
    const drawing = drawingOn(hatch, ['front'], swept, [0, 600, 250, 0, 1, 0]);
    const grid = tilesOf(drawing.outlines, 'A4');
    if ('fault' in grid) throw new Error(grid.message);
    const [first] = templatePages(drawing, grid, 'A4', '2026-05-16').pages;
    const words = first!.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');
    const all = Array.from({ length: grid.rows * grid.columns }, (_, i) => [
      Math.floor(i / grid.columns) + 1,
      (i % grid.columns) + 1,
    ]);
    const missing = all.filter(([row, column]) => !grid.tiles.some((tile) => tile.row === row && tile.column === column));
    expect(missing.length).toBeGreaterThan(0);
    const said = /all of it to be kept out of: ([^.]*)\./.exec(words)?.[1]?.split('; ');
    // a tyre from the side: none of those in its middle is free
    expect(said).toEqual(missing.map(([row, column]) => `row ${row}, column ${column}`));
  });

  test('points of the other axle are not drawn', () => {
    const one = drawingOn(hatch, ['front'], swept, [0, 600, 250, 1, 0, 0]);
    const both = drawingOn(hatch, ['front', 'rear'], swept, [0, 600, 250, 1, 0, 0]);
    expect(both.points.map(({ name }) => name)).toEqual(one.points.map(({ name }) => `front ${name}`));
    expect(both.points.length).toBeGreaterThan(5);
    for (const { off } of [...both.points, ...both.axes]) expect(Math.abs(off)).toBeLessThanOrEqual(600);
    expect(both.facts.join(' ')).toMatch(/Points more than 600 mm off the plane are not drawn: \d+ of \d+\./);
    expect(one.facts.join(' ')).not.toContain('not drawn');
  });

  test('every sheet tells what is to be kept free, in hatching and in words, and its day', () => {
    const centre = hatch.front!.points['wheelCentre']!;
    const drawing = drawingOn(hatch, ['front'], ringAt(centre), [...centre, 0, 1, 0]);
    const grid = tilesOf(
      drawing.outlines,
      'A4',
      drawing.points.map(({ at }) => at),
    );
    if ('fault' in grid) throw new Error(grid.message);
    const { pages } = templatePages(drawing, grid, 'A4', '2026-05-16');
    // the ring as it was made, by no code of the template's: between 120 and 340 mm from its middle
    const isHeld = (x: number, y: number, spare: number): boolean => Math.abs(Math.hypot(x, y) - 230) < 110 - spare;
    pages.slice(1).forEach(({ marks }, i) => {
      const { min, max } = grid.tiles[i]!;
      const texts = marks.filter((mark): mark is PrintedText => mark.kind === 'text');
      expect(texts.some(({ text }) => text.startsWith('Hatched: keep out.'))).toBe(true);
      expect(texts.some(({ text }) => text.includes('2026-05-16'))).toBe(true);
      const hatching = marks.filter(
        (mark): mark is PrintedPath => mark.kind === 'path' && Math.abs(mark.width / POINTS_PER_MM - 0.1) < 1e-9,
      );
      const strokes = hatching.flatMap(({ commands }) =>
        commands.flatMap((command, k) => {
          const next = commands[k + 1];
          return command[0] === 'M' && next ? [[command.slice(1) as number[], next.slice(1) as number[]] as const] : [];
        }),
      );
      const inSection = ([x = 0, y = 0]: readonly number[]) =>
        [x / POINTS_PER_MM - 10 + min[0], max[1] + 10 - y / POINTS_PER_MM] as const;
      for (const stroke of strokes) {
        for (const end of stroke) expect(isHeld(...inSection(end), -1)).toBe(true);
        for (const text of texts) expect(covers(boxOf(text), ...stroke), text.text).toBe(false);
      }
      // wherever a sheet has room for two lines of hatching it has one
      let deep = false;
      for (let x = min[0] + 10; x < max[0] - 10; x += 4)
        for (let y = min[1] + 10; y < max[1] - 10; y += 4) deep ||= isHeld(x, y, 14);
      if (deep) expect(strokes.length).toBeGreaterThan(0);
    });
    const first = pages[0]!.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');
    expect(first).toContain('Hatched: keep out.');
    expect(first).toContain('2026-05-16');
  });

  test('in DXF the hatching is lines of a layer of its own, beside all names', () => {
    const drawing = drawingOn(hatch, ['front'], swept, [0, 600, 250, 0, 0, 1]);
    const entities = new DxfParser().parseSync(templateDxf(drawing, '2026-05-16'))?.entities ?? [];
    const lines = entities.filter(({ layer }) => layer === 'HATCH') as unknown as {
      type: string;
      vertices: { x: number; y: number }[];
    }[];
    expect(lines.length).toBeGreaterThan(20);
    expect(new Set(lines.map(({ type }) => type))).toEqual(new Set(['LINE']));
    const texts = entities.filter(({ type }) => type === 'TEXT') as unknown as {
      text: string;
      textHeight: number;
      startPoint: { x: number; y: number };
    }[];
    for (const { text, textHeight: high, startPoint: at } of texts) {
      const box = { min: [at.x, at.y], max: [at.x + 0.9 * high * text.length, at.y + high] };
      for (const { vertices } of lines)
        expect(covers(box, [vertices[0]!.x, vertices[0]!.y], [vertices[1]!.x, vertices[1]!.y]), text).toBe(false);
    }
    const words = texts.map(({ text }) => text).join(' ');
    expect(words).toContain('Hatched: keep out.');
    expect(words).toContain('2026-05-16');
  });

  test('in DXF do not lie on each other either, nor on a bolt’s axis', () => {
    const drawing = drawingOn(hatch, ['front', 'rear'], swept, [0, 600, 250, 0, 0, 1]);
    const entities = new DxfParser().parseSync(templateDxf(drawing, '2026-05-16'))?.entities ?? [];
    const texts = entities.filter(({ type, layer }) => type === 'TEXT' && layer !== 'WORDS') as unknown as {
      text: string;
      textHeight: number;
      startPoint: { x: number; y: number };
    }[];
    // letters of the format's own typeface are no wider than high
    const boxes = texts.map(({ text, textHeight: high, startPoint: { x, y } }) => ({
      min: [x, y],
      max: [x + 0.9 * high * text.length, y + high],
    }));
    expect(boxes.length).toBeGreaterThan(drawing.points.length);
    const axes = entities.filter(({ type, layer }) => type === 'LINE' && (layer === 'BOLTS' || layer === 'BARS')) as unknown as {
      vertices: { x: number; y: number }[];
    }[];
    boxes.forEach((box, i) => {
      boxes
        .slice(i + 1)
        .forEach((other, k) => expect(overlap(box, other), `${texts[i]!.text}, ${texts[i + 1 + k]!.text}`).toBe(false));
      for (const { vertices } of axes)
        expect(covers(box, [vertices[0]!.x, vertices[0]!.y], [vertices[1]!.x, vertices[1]!.y]), texts[i]!.text).toBe(false);
    });
  });
});
