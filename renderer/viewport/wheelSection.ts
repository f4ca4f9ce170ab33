import type { WheelDocument } from '../../geometry/index';

/** A point of a section through the spindle: offset along it (+ outboard) and radius [mm]. */
export type SectionPoint = readonly [number, number];

/** Sections of a wheel's parts, each a closed outline. Sizes that the file leaves out are sketched from the loaded radius. */
export interface WheelSections {
  readonly tyre: readonly SectionPoint[];
  readonly rim: readonly SectionPoint[];
  readonly tyreRadius: number;
  readonly rimRadius: number;
  readonly width: number;
}

const ROUND_STEPS = 6;

/** A quarter of a rounded corner from one tangent point to the other about its corner. */
const corner = (from: SectionPoint, around: SectionPoint, to: SectionPoint): SectionPoint[] =>
  Array.from({ length: ROUND_STEPS + 1 }, (_, index) => {
    const t = index / ROUND_STEPS;
    const [a, b, c] = [(1 - t) * (1 - t), 2 * t * (1 - t), t * t];
    return [a * from[0] + b * around[0] + c * to[0], a * from[1] + b * around[1] + c * to[1]];
  });

/**
 * A closed outline drawn in by a distance, corner by corner.
 * @param depth - [mm]; less than half of what is thin in the outline
 */
export const inset = (outline: readonly SectionPoint[], depth: number): readonly SectionPoint[] => {
  const at = (index: number): SectionPoint => outline[(index + outline.length) % outline.length] ?? [0, 0];
  const area = outline.reduce((sum, [x, y], index) => sum + x * at(index + 1)[1] - at(index + 1)[0] * y, 0);
  const normal = ([ax, ay]: SectionPoint, [bx, by]: SectionPoint): SectionPoint => {
    const length = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay)) * Math.sign(area) || 1;
    return [(ay - by) / length, (bx - ax) / length];
  };
  return outline.map((point, index) => {
    const [a, b] = [normal(at(index - 1), point), normal(point, at(index + 1))];
    // Sharp corners would run away to a point: there the inset stays at twice the distance.
    const shared = Math.max(0.5, 1 + a[0] * b[0] + a[1] * b[1]);
    return [point[0] + (depth * (a[0] + b[0])) / shared, point[1] + (depth * (a[1] + b[1])) / shared];
  });
};

const mirrored = (points: readonly SectionPoint[]): SectionPoint[] => [...points].reverse().map(([at, radius]) => [-at, radius]);

/** @param mm - millimetres in one unit of the file */
export const wheelSections = (wheel: WheelDocument, mm: number): WheelSections => {
  const tyreRadius = (wheel.tyreRadius ?? wheel.loadedRadius * 1.03) * mm;
  const width = (wheel.tyreWidth ?? tyreRadius * 0.66) * (wheel.tyreWidth === undefined ? 1 : mm);
  const rimRadius = wheel.rimDiameter === undefined ? tyreRadius * 0.69 : (wheel.rimDiameter / 2) * mm;
  const rimWidth = wheel.rimWidth === undefined ? width * 0.85 : wheel.rimWidth * mm;
  const shoulder = Math.min((wheel.shoulderRadius ?? width * 0.16) * (wheel.shoulderRadius === undefined ? 1 : mm), width / 3);
  const [half, rimHalf] = [width / 2, rimWidth / 2];
  const belly = rimRadius + 0.55 * (tyreRadius - rimRadius);
  const outside: SectionPoint[] = [
    [rimHalf, rimRadius],
    ...corner([rimHalf + 2, rimRadius + 10], [half, rimRadius + 14], [half, belly]),
    ...corner([half - 1, tyreRadius - 0.9 * shoulder], [half - 2, tyreRadius], [half - shoulder, tyreRadius]),
  ];
  const [wall, tread] = [Math.min(10, width * 0.06), Math.min(16, tyreRadius * 0.05)];
  const inside: SectionPoint[] = [
    [rimHalf - wall, rimRadius + 2],
    [half - wall - 3, belly],
    [half - shoulder - wall * 0.4, tyreRadius - tread - 4],
    [half - shoulder - wall * 2, tyreRadius - tread],
  ];
  // Outside from the outer bead over the tread to the inner bead, and back along the inside.
  const tyre = [...outside, ...mirrored(outside), ...mirrored(inside).reverse(), ...[...inside].reverse()];
  return { tyre, rim: rimSection(rimHalf, rimRadius), tyreRadius, rimRadius, width };
};

/** Flanges, seats and the well between them, 7 mm thick. */
const rimSection = (half: number, radius: number): readonly SectionPoint[] => {
  const thick = 7;
  const top: SectionPoint[] = [
    [-half - 4, radius + 14],
    [-half + 3, radius + 12],
    [-half + 6, radius - 1],
    [-half + 30, radius - 4],
    [-half + 42, radius - 22],
    [half - 62, radius - 22],
    [half - 42, radius - 5],
    [half - 6, radius - 1],
    [half - 3, radius + 12],
    [half + 4, radius + 14],
  ];
  const under = top.map(([at, r]): SectionPoint => [at, r - thick - (r > radius + 5 ? 6 : 0)]).reverse();
  return [...top, ...under];
};
