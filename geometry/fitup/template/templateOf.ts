import type { AxleName, CarDocument, SideName } from '../../car/document';
import { dot, unit, type Vector } from '../../core/vector';
import { designPoints } from '../../points/designPoints';
import type { TemplateDrawing } from './drawing';
import { onPaper, paperArrows, seenFrom, type PaperPlane } from './plane';
import type { Outline } from './section';

/** Farther off the plane than a wheel and its links reach, a point is nothing to hold a template by [mm]. */
const NEAR_MM = 600;

/** What is on a template besides its outlines. */
export interface TemplateGround {
  readonly document: CarDocument;
  readonly axles: readonly AxleName[];
  readonly side: SideName;
  readonly plane: PaperPlane;
  /** names of the parts that are swept */
  readonly of: readonly string[];
  readonly facts: readonly string[];
  readonly cautions: readonly string[];
}

/** Outlines on a plane with the pickup points of a side at design and the bolts of its joints. */
export function templateOf(outlines: readonly Outline[], ground: TemplateGround): TemplateDrawing {
  const { document, axles, side, plane, of, facts, cautions } = ground;
  const named = axles.flatMap((axle) =>
    Object.entries(designPoints(document, axle, side)).map(([name, place]) => ({ axle, name, place })),
  );
  const label = (axle: AxleName, name: string): string => (axles.length > 1 ? `${axle} ${name}` : name);
  const isNear = ({ off }: { readonly off: number }): boolean => Math.abs(off) <= NEAR_MM;
  const points = named.map(({ axle, name, place }) => ({ name: label(axle, name), ...onPaper(plane, place) })).filter(isNear);
  const axes = named.flatMap(({ axle, name, place }) => {
    const joint = document.joints?.[name];
    if (joint === undefined || (joint.axle !== undefined && joint.axle !== axle)) return [];
    const [x, y, z] = joint.bolt;
    const way: Vector = unit([x, side === 'left' ? y : -y, z]);
    return [{ name: label(axle, name), ...onPaper(plane, place), way: [dot(way, plane.right), dot(way, plane.up)] as const }];
  });
  const far = named.length - points.length;
  const leftOff = far === 0 ? [] : [`Points more than ${NEAR_MM} mm off the plane are not drawn: ${far} of ${named.length}.`];
  return {
    car: document.name,
    of,
    side,
    seen: seenFrom(plane),
    facts: [...facts, ...leftOff],
    cautions,
    outlines,
    points,
    axes: axes.filter(isNear),
    arrows: paperArrows(plane, side),
  };
}
