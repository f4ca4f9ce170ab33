import path from 'node:path';
import {
  filledWords,
  KEEP_OUT_CAUTIONS,
  paperPlane,
  sectionOf,
  templateDxf,
  templateOf,
  templateGround,
  templatePages,
  tilesOf,
  titleOf,
  type PaperPlane,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { setupsInUse } from './clearance';
import { usageError } from './commandError';
import { parseNumber } from './options';
import { axlesAsked } from './question';
import { UNITS } from './readings';
import { dayOf } from './sheet';
import { sweptOf, sweptQuestion } from './swept';
import { formatFixed, harmless, heading, wrap } from './textTable';
import { refuseUnwritable, writeWholeFile } from './wholeFile';

/** `template`: writes the section of swept space with a plane at true scale, whole or not at all. */
export async function answer(call: Call): Promise<Answer> {
  const { car, options, reads } = call;
  if (!car) throw usageError('a car is needed');
  const { out = '', force = false, side = 'left', sheets: paper = 'A4' } = options;
  if (side === 'both') throw usageError('--side: a template is of one side, left or right');
  const kind = kindOf(out);
  if (kind === 'dxf' && options.sheets !== undefined)
    throw usageError('--paper: a DXF has no paper, it is at true scale in one piece; leave --paper out');
  const plane = planeOf(options.plane);
  const question = sweptQuestion(options);
  const date = dayOf(options.date);
  const setups = setupsInUse(car, options).map(([name]) => name);
  await refuseUnwritable(out, force, reads);
  const made = await sweptOf(car, question, { ...call, options: { ...options, side } });
  const outlines = sectionOf(made.mesh, plane);
  if ('missedBy' in outlines)
    throw usageError(
      `--plane: all that is swept lies ${formatFixed(Math.abs(outlines.missedBy), 1)} mm or more ${outlines.missedBy > 0 ? 'in front of' : 'behind'} the plane`,
    );
  const { of, grow, bound, outward, gap, isFilled } = made;
  const ground = templateGround(car.document, made, { axles: axlesAsked(car, options), side, setups, plane });
  const drawing = templateOf(outlines, ground);
  const { facts } = drawing;
  let count: number | null = null;
  if (kind === 'dxf') await writeWholeFile(out, templateDxf(drawing, date), force, reads);
  else {
    const grid = tilesOf(
      outlines,
      paper,
      drawing.points.map(({ at }) => at),
    );
    if ('fault' in grid) throw usageError(grid.message);
    count = grid.tiles.length;
    const { sheetPdf } = await import('../../geometry/pdf/sheetPdf');
    await writeWholeFile(out, await sheetPdf(templatePages(drawing, grid, paper, date)), force, reads);
  }
  const document = {
    car: car.document.name,
    setups,
    side,
    units: UNITS,
    file: out,
    kind,
    paper: kind === 'pdf' ? paper : null,
    tiles: count,
    of,
    grow,
    bound,
    outward,
    gap,
    filled: isFilled,
    plane: { point: plane.point, normal: plane.normal, right: plane.right, up: plane.up },
    outlines: outlines.map(({ isHole, area, length, points }) => ({ hole: isHole, area, length, points: points.length })),
    missing: made.missing,
    notes: [...filledWords(made.solidParts), ...KEEP_OUT_CAUTIONS],
    warnings: made.warnings,
  };
  const what =
    count === null ? 'DXF, a unit a millimetre' : `a sheet of words and ${count} of ${paper}: print at 100 %, measure both bars`;
  return {
    document,
    words: (style) =>
      [
        ...wrap(titleOf(drawing), '  ').map((line) => heading(line, style)),
        ...wrap(`  ${harmless(out)}: ${what}`, '    '),
        ...facts.flatMap((fact) => wrap(`  ${fact}`, '    ')),
        ...made.missing.flatMap((one) => wrap(`left out: ${harmless(one)}`, '  ')),
        '',
        ...KEEP_OUT_CAUTIONS.flatMap((caution) => wrap(caution)),
      ].join('\n'),
  };
}

function kindOf(out: string): 'pdf' | 'dxf' {
  if (out === '-') throw usageError('template writes a file: name one that ends in .pdf or .dxf');
  const ending = path.extname(out).toLowerCase();
  if (ending === '.pdf') return 'pdf';
  if (ending === '.dxf') return 'dxf';
  throw usageError(`"${out}" ends neither in .pdf nor in .dxf`);
}

function planeOf(given: string | undefined): PaperPlane {
  if (given === undefined) throw usageError('--plane is needed: a point on it in mm and its normal, px,py,pz,nx,ny,nz');
  const plane = paperPlane(given.split(',').map((part) => parseNumber(part) ?? NaN));
  if ('fault' in plane) throw usageError(`--plane: "${given}": ${plane.message}`);
  return plane;
}
