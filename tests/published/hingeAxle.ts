import type { AxleDocument, Triple, Vector } from '../../geometry/index';
import { add, scale, unit } from '../../geometry/core/vector';
import type { Line } from './turn';

/** Outer ends of the five rods, from the wheel centre [mm]: nothing special about them. */
const OUTER: readonly Vector[] = [
  [50, -70, -120],
  [-100, -90, -80],
  [20, -110, 150],
  [-120, -100, 100],
  [120, -50, 30],
];
/** Where along the line the inner ends sit [mm]. */
const INNER = [-260, -130, 0, 130, 260];

export const HINGE_RODS = ['one', 'two', 'three', 'four', 'five'] as const;

interface HingeAxle {
  readonly line: Line;
  readonly wheelCentre: Triple;
  readonly loadedRadius?: number;
  /** degrees */
  readonly camber?: number;
  /** more points, and whatever else the axle has */
  readonly points?: Readonly<Record<string, Triple>>;
}

/**
 * An axle whose five rods all have their inner ends on one line: the knuckle turns about it exactly, at any travel, so that
 * every reading has a closed form.
 * @see K. H. Hunt, Kinematic Geometry of Mechanisms, 1978, special linear complex; from memory
 */
export function hingeAxle(
  { line, wheelCentre, loadedRadius = 300, camber = 0, points = {} }: HingeAxle,
  rest: Partial<AxleDocument> = {},
): AxleDocument {
  const direction = unit(line.direction);
  const ends = HINGE_RODS.flatMap((name, i) => [
    [`${name}Body`, add(line.point, scale(direction, INNER[i]))] as const,
    [`${name}Knuckle`, add(wheelCentre, OUTER[i])] as const,
  ]);
  return {
    layout: 'multi-link',
    points: { wheelCentre, ...Object.fromEntries(ends), ...points },
    rods: Object.fromEntries(HINGE_RODS.map((name) => [name, [`${name}Body`, `${name}Knuckle`] as const])),
    wheel: { camber, toe: 0, loadedRadius },
    ...rest,
  };
}
