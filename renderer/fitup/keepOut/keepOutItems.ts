import { filledWords, outsideWords, type DrawnPart, type KeepOut, type Vector } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import type { TemplateSide } from '../../compute/fitup/fitUpOrder';
import { formatNumber } from '../../units/format';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import type { OverlayItem } from '../../viewport/overlayTypes';
import { lengthRead } from './templateWords';

/** Under what name the space is drawn: a part of the file cannot have it. */
export const SWEPT = 'space that is swept';

/** The closed mesh as a solid that the picture draws. */
export const sweptPart = ({ mesh: { positions, triangles } }: Pick<KeepOut, 'mesh'>): DrawnPart => {
  const corners = new Float64Array(3 * triangles.length);
  triangles.forEach((corner, index) => corners.set(positions.subarray(3 * corner, 3 * corner + 3), 3 * index));
  return { name: SWEPT, carrier: 'body', shapeKind: 'mesh', shapes: [{ kind: 'mesh', triangles: corners }], ways: null };
};

/** Cubic millimetres of a litre. */
const LITRE = 1e6;

/** What was made, line by line: the words of the command line, in the units that are read. */
export const keepOutWords = (made: KeepOut, units: ShownUnits): readonly (readonly [string, string])[] => {
  const { of, grow, gap, isFilled, solidParts, box, volume, mesh } = made;
  const [tenths, hundredths] = [1, 2].map((decimals) => shownQuantity({ quantity: 'length', decimals }, units));
  const length = lengthRead(units);
  const fine = (value: number): string => withUnit(hundredths?.format(value) ?? '', hundredths?.unit ?? '');
  const [low, high] = box;
  const places = (['x', 'y', 'z'] as const).map(
    (name, axis) => `${name} ${tenths?.format(low[axis] ?? 0)} … ${tenths?.format(high[axis] ?? 0)}`,
  );
  const filled = [
    ...(isFilled ? [] : [`Free space narrower than ${length(gap)} can be filled.`]),
    ...filledWords(solidParts, nameOfKey),
  ];
  return [
    ['Swept by', `${of.map(nameOfKey).join(', ')}${grow === 0 ? '' : `, grown by ${length(grow)}`}`],
    ['Mesh', `${formatNumber(mesh.triangles.length / 3, 0)} triangles, closed, ${formatNumber(volume / LITRE, 2)} litres`],
    ['Outside of it', outsideWords(made, fine, length)],
    ...(filled.length === 0 ? [] : [['Filled', filled.join(' ')] as const]),
    ['In the car', `${places.join(', ')}, ${tenths?.unit ?? ''} in the car’s frame`],
  ];
};

/** Room around a section where its plane is drawn [mm]. */
const AROUND_MM = 40;

/** Where the plane of a template lies in the car, and the outlines in it. */
export const planeItems = (sides: readonly TemplateSide[]): readonly OverlayItem[] =>
  sides.flatMap((one): OverlayItem[] => {
    if (!('drawing' in one)) return [];
    const { point, right, up } = one.plane;
    const inCar = ([x, y]: readonly [number, number]): Vector => [
      point[0] + x * right[0] + y * up[0],
      point[1] + x * right[1] + y * up[1],
      point[2] + x * right[2] + y * up[2],
    ];
    const all = one.drawing.outlines.flatMap(({ points }) => points);
    const end = (i: 0 | 1, sense: 1 | -1): number =>
      sense * all.reduce((most, at) => Math.max(most, sense * at[i]), -Infinity) + sense * AROUND_MM;
    const [left, bottom, far, top] = [end(0, -1), end(1, -1), end(0, 1), end(1, 1)];
    const frame = (
      [
        [left, bottom],
        [far, bottom],
        [far, top],
        [left, top],
        [left, bottom],
      ] as const
    ).map(inCar);
    return [
      { kind: 'line', className: 'templateplane', points: frame },
      ...one.drawing.outlines.map(({ points }): OverlayItem => ({
        kind: 'line',
        className: 'templatecut',
        points: [...points, ...points.slice(0, 1)].map(inCar),
      })),
    ];
  });
