import type { CarDocument, Triple } from '../../../geometry/index';
import type { PartStl } from '../../compute/fitup/readPartStl';
import { formatNumber } from '../../units/format';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { mendedName } from '../renaming/renamePart';
import type { Shape } from './partEdits';

type MeshShape = Extract<Shape, { readonly kind: 'mesh' }>;

/** In what the program that wrote the STL had its numbers: the file does not say it. */
export type StlUnit = 'mm' | 'in';

const MM_PER = { mm: 1, in: 25.4 } as const;

/** The factor from the STL's numbers to the car file's. @param mm - in one unit of the car file */
export const scaleOfStl = (unit: StlUnit, mm: number): number => MM_PER[unit] / mm;

/**
 * The shape of a mesh, in the car file itself or beside it; its place stays where it replaces another.
 * @param beside - name of the file beside the car file; null: it goes into the car file
 */
export const meshShape = (stl: PartStl, scale: number, beside: string | null, before?: MeshShape): MeshShape => ({
  kind: 'mesh',
  ...(beside === null ? { data: stl.data } : { file: beside }),
  ...(scale === 1 ? {} : { scale }),
  ...(before?.place ? { place: before.place } : {}),
});

/** A name for the part of a file that nothing in the car has: "Brake duct.STL" becomes "BrakeDuct". */
export const nameOfFile = (file: string, parts: CarDocument['parts']): string => {
  const stem = mendedName(file.replace(/\.[^.]*$/, '')) ?? 'mesh';
  if (!Object.hasOwn(parts ?? {}, stem)) return stem;
  for (let number = 2; ; number += 1) if (!Object.hasOwn(parts ?? {}, `${stem}${number}`)) return `${stem}${number}`;
};

const plural = (count: number, one: string): string => `${formatNumber(count, 0)} ${one}${count === 1 ? '' : 's'}`;

/** How large a mesh is, and where: "1,204 triangles, 212.0 × 88.5 × 40.0 mm; x −20.0 … 192.0, y …". @param factor - STL to mm */
export const sizeWords = (
  { triangles, from, to }: Pick<PartStl, 'triangles' | 'from' | 'to'>,
  factor: number,
  units: ShownUnits,
) => {
  const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const size = from.map((value, axis) => shown.format(factor * ((to[axis] ?? 0) - value))).join(' × ');
  const places = (['x', 'y', 'z'] as const).map(
    (name, axis) => `${name} ${shown.format(factor * (from[axis] ?? 0))} … ${shown.format(factor * (to[axis] ?? 0))}`,
  );
  return { size: `${plural(triangles, 'triangle')}, ${withUnit(size, shown.unit)}`, place: places.join(', ') };
};

/** Whether the mesh has an inside; null where it is closed. */
export const openWords = (openEdges: number): string | null =>
  openEdges === 0
    ? null
    : `Not closed: ${plural(openEdges, 'edge')} not shared by exactly two triangles. It has no inside: distances are to its skin, and what stands within it is not told.`;

/** Largest and least of a mesh in the file's own unit, for a shape that takes its place. */
export const boxOf = ({ from, to }: PartStl): { readonly from: Triple; readonly to: Triple } => ({ from, to });
