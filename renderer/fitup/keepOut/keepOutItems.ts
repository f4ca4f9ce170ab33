import type { DrawnPart, KeepOut } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import { formatNumber } from '../../units/format';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';

/** Under what name the space is drawn: a part of the file cannot have it. */
export const SWEPT = 'space that is swept';

/** The closed mesh as a solid that the picture draws. */
export const sweptPart = ({ mesh: { positions, triangles } }: Pick<KeepOut, 'mesh'>): DrawnPart => {
  const corners = new Float64Array(3 * triangles.length);
  triangles.forEach((corner, index) => corners.set(positions.subarray(3 * corner, 3 * corner + 3), 3 * index));
  return { name: SWEPT, carrier: 'body', shapeKind: 'mesh', shapes: [{ kind: 'mesh', triangles: corners }] };
};

/** Cubic millimetres of a litre. */
const LITRE = 1e6;

/** What was made, line by line: the words of the command line, in the units that are read. */
export const keepOutWords = (made: KeepOut, units: ShownUnits): readonly (readonly [string, string])[] => {
  const { of, grow, outward, bound, gap, box, volume, mesh } = made;
  const [tenths, hundredths] = [1, 2].map((decimals) => shownQuantity({ quantity: 'length', decimals }, units));
  const length = (value: number): string => withUnit(tenths?.format(value) ?? '', tenths?.unit ?? '');
  const fine = (value: number): string => withUnit(hundredths?.format(value) ?? '', hundredths?.unit ?? '');
  const [low, high] = box;
  const places = (['x', 'y', 'z'] as const).map(
    (name, axis) => `${name} ${tenths?.format(low[axis] ?? 0)} … ${tenths?.format(high[axis] ?? 0)}`,
  );
  return [
    ['Swept by', `${of.map(nameOfKey).join(', ')}${grow === 0 ? '' : `, grown by ${length(grow)}`}`],
    ['Mesh', `${formatNumber(mesh.triangles.length / 3, 0)} triangles, closed, ${formatNumber(volume / LITRE, 2)} litres`],
    [
      'Outside of it',
      `by ${fine(outward.least)} to ${fine(outward.most)} at every corner and in the middle of every triangle; ${length(bound)} is the most`,
    ],
    ['Filled', `free space narrower than ${length(gap)} can be filled`],
    ['In the car', `${places.join(', ')}, ${tenths?.unit ?? ''} in the car’s frame`],
  ];
};
