import { formatSigned, nameOfKey, type AxleName, type CarDocument, type Triple } from '../../geometry/index';
import type { FoundAnswer } from './answeredSetup';

/** Hundredths of a millimetre, and about as fine in inches. */
const DECIMALS = { mm: 2, in: 4 } as const;
/** What is nearer than this is the same place [the file's unit]. */
const SAME = 1e-9;

const isMoved = (by: Triple): boolean => by.some((size) => Math.abs(size) > SAME);
const mirrored = ([x, y, z]: Triple): Triple => [x, -y, z];
const between = (from: Triple, to: Triple): Triple => [to[0] - from[0], to[1] - from[1], to[2] - from[2]];

/** "X 0.00, Y +1.50, Z 0.00 mm" */
const stretchWords = (by: Triple, unit: 'mm' | 'in'): string =>
  `${(['X', 'Y', 'Z'] as const).map((axis, index) => `${axis} ${formatSigned(by[index], DECIMALS[unit])}`).join(', ')} ${unit}`;

function lineOf(document: CarDocument, axle: AxleName, name: string, points: FoundAnswer['points']): readonly string[] {
  const [described, moved] = [document[axle], points?.[axle]];
  const left = described?.points[name];
  if (!described || !moved || !left) return [];
  const leftTo = moved.points[name] ?? left;
  const right = described.right?.points?.[name] ?? mirrored(left);
  const rightTo = moved.right?.points?.[name] ?? described.right?.points?.[name] ?? mirrored(leftTo);
  const unit = document.units?.length === 'in' ? 'in' : 'mm';
  const [byLeft, byRight] = [between(left, leftTo), between(right, rightTo)];
  const isTwin = between(byRight, mirrored(byLeft)).every((size) => Math.abs(size) <= SAME);
  const say = (side: string, by: Triple): string[] =>
    isMoved(by)
      ? [
          `To do, and no adjuster does it: move point ${nameOfKey(name).toLowerCase()}, ${axle} ${side}, by ${stretchWords(by, unit)}` +
            ' (X forward, Y left, Z up). A change of the drawing, which all setups of this car have.',
        ]
      : [];
  return isTwin ? say('left, and right as its mirror image', byLeft) : [...say('left', byLeft), ...say('right', byRight)];
}

/**
 * What of an answer is work on the metal: a line for each point of the drawing that it moves, fit for the notes of a setup.
 * @param document - the car before the points are moved
 */
export const movedPointLines = (document: CarDocument, points: FoundAnswer['points']): readonly string[] =>
  (['front', 'rear'] as const).flatMap((axle) => {
    const names = new Set([...Object.keys(points?.[axle]?.points ?? {}), ...Object.keys(points?.[axle]?.right?.points ?? {})]);
    return [...names].flatMap((name) => lineOf(document, axle, name, points));
  });
