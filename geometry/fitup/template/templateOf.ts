import type { AxleName, CarDocument, SideName } from '../../car/document';
import { dot, unit, type Vector } from '../../core/vector';
import { designPoints } from '../../points/designPoints';
import type { TemplateDrawing } from './drawing';
import { onPaper, paperArrows, type PaperPlane } from './plane';
import type { Outline } from './section';

/** What is on a template besides its outlines. */
export interface TemplateGround {
  readonly document: CarDocument;
  readonly axles: readonly AxleName[];
  readonly side: SideName;
  readonly plane: PaperPlane;
  readonly title: string;
  readonly facts: readonly string[];
  readonly cautions: readonly string[];
}

/** Outlines on a plane with the pickup points of a side at design and the bolts of its joints. */
export function templateOf(outlines: readonly Outline[], ground: TemplateGround): TemplateDrawing {
  const { document, axles, side, plane, title, facts, cautions } = ground;
  const named = axles.flatMap((axle) =>
    Object.entries(designPoints(document, axle, side)).map(([name, place]) => ({ axle, name, place })),
  );
  const label = (axle: AxleName, name: string): string => (axles.length > 1 ? `${axle} ${name}` : name);
  const points = named.map(({ axle, name, place }) => ({ name: label(axle, name), ...onPaper(plane, place) }));
  const axes = named.flatMap(({ axle, name, place }) => {
    const joint = document.joints?.[name];
    if (joint === undefined || (joint.axle !== undefined && joint.axle !== axle)) return [];
    const [x, y, z] = joint.bolt;
    const way: Vector = unit([x, side === 'left' ? y : -y, z]);
    return [{ name: label(axle, name), ...onPaper(plane, place), way: [dot(way, plane.right), dot(way, plane.up)] as const }];
  });
  return { title, side, facts, cautions, outlines, points, axes, arrows: paperArrows(plane, side) };
}
