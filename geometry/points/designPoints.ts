import type { AxleDocument, AxleName, CarDocument, SideName } from '../car/document';
import { MM_PER_INCH } from '../car/toMechanism';
import { mirror, scale, type Vector } from '../core/vector';

/** Millimetres in one unit of length of the file. */
export const mmPerUnitOf = (document: CarDocument): number => (document.units?.length === 'in' ? MM_PER_INCH : 1);

/** A point of one side at design, in car coordinates [mm], as the file gives it or as the mirror image of the left one. */
export function designPoint(axle: AxleDocument, side: SideName, name: string, mmPerUnit: number): Vector | null {
  const own = side === 'right' ? axle.right?.points?.[name] : undefined;
  if (own) return scale(own, mmPerUnit);
  const left = axle.points[name];
  if (!left) return null;
  return side === 'left' ? scale(left, mmPerUnit) : mirror(scale(left, mmPerUnit));
}

/** Points of one side by name, in the order of the file. */
export function designPoints(document: CarDocument, axle: AxleName, side: SideName): Readonly<Record<string, Vector>> {
  const of = document[axle];
  if (!of) return {};
  const mmPerUnit = mmPerUnitOf(document);
  return Object.fromEntries(
    Object.keys(of.points).map((name) => [name, designPoint(of, side, name, mmPerUnit) ?? ([0, 0, 0] as const)]),
  );
}
