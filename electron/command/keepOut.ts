import path from 'node:path';
import { binaryStl, filledWords, KEEP_OUT_CAUTIONS, outsideWords, type KeepOut } from '../../geometry/index';
import type { Answer, Call } from './answer';
import { setupsInUse } from './clearance';
import { usageError } from './commandError';
import { envelopesInWords, warningsInWords } from './jointsTable';
import { axlesAsked } from './question';
import { UNITS } from './readings';
import { sidesAsked, sweptOf, sweptQuestion } from './swept';
import { formatFixed, formatPlain, harmless, heading, wrap, type TextStyle } from './textTable';
import { refuseUnwritable, writeWholeFile } from './wholeFile';

/** `keep-out`: writes the space that parts sweep as a closed mesh, whole or not at all. */
export async function answer(call: Call): Promise<Answer> {
  const { car, options, reads } = call;
  if (!car) throw usageError('a car is needed');
  const { out = '', force = false } = options;
  if (out === '-') throw usageError('keep-out writes a file: name one that ends in .stl');
  if (path.extname(out).toLowerCase() !== '.stl') throw usageError(`"${out}" does not end in .stl`);
  const question = sweptQuestion(options);
  const setups = setupsInUse(car, options).map(([name]) => name);
  await refuseUnwritable(out, force, reads);
  const made = await sweptOf(car, question, call);
  const bytes = binaryStl(made.mesh, `${car.document.name}: ${made.of.join(', ')}`);
  await writeWholeFile(out, bytes, force, reads);
  const { of, grow, bound, outward, gap, isFilled, volume, box, envelope, missing, warnings } = made;
  const triangles = made.mesh.triangles.length / 3;
  const document = {
    car: car.document.name,
    setups,
    axles: axlesAsked(car, options),
    sides: sidesAsked(options),
    units: UNITS,
    file: out,
    of,
    grow,
    bound,
    outward,
    gap,
    filled: isFilled,
    triangles,
    volume,
    box,
    envelope,
    missing,
    notes: [...filledWords(made.solidParts), ...KEEP_OUT_CAUTIONS],
    warnings,
  };
  return { document, words: (style) => inWords(`${car.document.name}: keep-out over ${setups.join(', ')}`, out, made, style) };
}

function inWords(title: string, out: string, made: KeepOut, style: TextStyle): string {
  const { of, grow, gap, isFilled, solidParts, volume, box, envelope, missing, warnings, mesh } = made;
  const grown = grow === 0 ? '' : `, grown by ${formatPlain(grow)} mm`;
  const [low, high] = box;
  const along = (i: 0 | 1 | 2): string => `${formatFixed(low[i], 1)} to ${formatFixed(high[i], 1)}`;
  return [
    ...wrap(title, '  ').map((line) => heading(line, style)),
    ...wrap(`  ${harmless(out)}: ${mesh.triangles.length / 3} triangles, closed, ${formatFixed(volume / 1e6, 2)} litres`, '    '),
    ...wrap(`  Swept by ${harmless(of.join(', '))}${grown}.`, '    '),
    ...wrap(
      `  Outside of it ${outsideWords(
        made,
        (mm) => `${formatFixed(mm, 2)} mm`,
        (mm) => `${formatPlain(Number(mm.toFixed(1)))} mm`,
      )}.${isFilled ? '' : ` Free space narrower than ${formatFixed(gap, 0)} mm can be filled.`}`,
      '    ',
    ),
    ...filledWords(solidParts).flatMap((sentence) => wrap(`  ${harmless(sentence)}`, '    ')),
    ...wrap(`  Car frame, mm: x ${along(0)}, y ${along(1)}, z ${along(2)}.`, '    '),
    ...envelopesInWords(envelope),
    ...missing.flatMap((one) => wrap(`left out: ${harmless(one)}`, '  ')),
    ...warningsInWords(warnings),
    '',
    ...KEEP_OUT_CAUTIONS.flatMap((caution) => wrap(caution)),
  ].join('\n');
}
