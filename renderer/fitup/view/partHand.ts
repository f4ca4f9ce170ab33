import { Box3, Raycaster, Vector2, type Camera, type Mesh } from 'three';
import type { Vector } from '../../../geometry/index';
import { eyeAxes, type Eye, type Point } from '../../viewport/camera';
import { alongAxis, inPlane, isAtEye, toCar } from '../../viewport/dragTarget';
import type { GroundFrame } from '../../viewport/groundFrame';
import { turnedToGround } from '../../viewport/overlayContent';
import type { OverlayItem } from '../../viewport/overlayTypes';
import type { Pane } from '../../viewport/pane';
import { AXES } from '../../viewport/pointItems';
import type { AxisName } from '../../viewport/pointDrag';
import { along } from '../../viewport/points';
import { nearestAxis } from './partMove';

/** A part in the hand: where the pointer would have it, as a move from where it stands, in the car's frame [mm]. */
export interface PartGrip {
  /** the arm that was taken hold of; null: the part itself */
  readonly axis: AxisName | null;
  /** @param axis - the car's axis that the part stays on; null: anywhere in the plane of the picture */
  readonly to: (x: number, y: number, axis: AxisName | null) => Vector;
}

/** The part that can be moved in the picture. */
export interface PartHand {
  /** takes the part that these are of; an empty list lets go */
  readonly hold: (meshes: readonly Mesh[]) => void;
  /** draws it moved by so much, in the car's frame [mm] */
  readonly shift: (moved: Vector) => void;
  readonly isShifted: () => boolean;
  readonly grip: (x: number, y: number, camera: Camera) => PartGrip | null;
  /** the arms that it is dragged by, in the ground's frame */
  readonly items: () => readonly OverlayItem[];
  /** the car's axis that lies nearest to the right of the picture, or up it */
  readonly axisTo: (eye: Eye, way: 'right' | 'up') => { readonly axis: 0 | 1 | 2; readonly sense: 1 | -1 };
}

/** [px] */
const ARM = 64;
const REACH = 14;

const NONE: Vector = [0, 0, 0];

export const buildPartHand = (pane: Pane, frameNow: () => GroundFrame): PartHand => {
  let held: readonly Mesh[] = [];
  let centre: Vector = NONE;
  let moved: Vector = NONE;
  const caster = new Raycaster();

  const at = (): Point => frameNow().toGround([centre[0] + moved[0], centre[1] + moved[1], centre[2] + moved[2]]);
  const isInView = (point: Point): boolean => {
    const seen = pane.project(point);
    const { width, height } = pane.box();
    return seen !== null && seen[0] >= 0 && seen[0] <= width && seen[1] >= 0 && seen[1] <= height;
  };
  const arms = (): readonly { readonly name: AxisName; readonly end: Point }[] => {
    if (held.length === 0) return [];
    const from = at();
    const frame = frameNow();
    return AXES.flatMap(({ name, direction }) => {
      const way = turnedToGround(frame, direction);
      if (isAtEye(way, pane.away())) return [];
      const size = ARM * pane.mmPerPixel(from);
      const end = along(from, way, size);
      // of a part at the edge of the picture an arm out of it could not be taken hold of
      return [{ name, end: isInView(end) ? end : along(from, way, -size) }];
    });
  };
  const shift = (by: Vector): void => {
    moved = by;
    for (const mesh of held) {
      mesh.matrix.makeTranslation(...by);
      mesh.matrixWorldNeedsUpdate = true;
    }
  };

  return {
    hold: (meshes) => {
      shift(NONE);
      held = meshes;
      const box = new Box3();
      for (const { geometry } of meshes) {
        geometry.computeBoundingBox();
        if (geometry.boundingBox) box.union(geometry.boundingBox);
      }
      centre = box.isEmpty() ? NONE : [(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2, (box.min.z + box.max.z) / 2];
    },
    shift,
    isShifted: () => moved.some((value) => value !== 0),
    grip: (x, y, camera) => {
      if (held.length === 0) return null;
      const isNear = (end: Point): boolean => {
        const seen = pane.project(end);
        return seen !== null && Math.abs(seen[0] - x) <= REACH && Math.abs(seen[1] - y) <= REACH;
      };
      const arm = arms().find(({ end }) => isNear(end)) ?? null;
      const { width, height } = pane.box();
      caster.setFromCamera(new Vector2((2 * x) / width - 1, 1 - (2 * y) / height), camera);
      if (arm === null && caster.intersectObjects([...held], false).length === 0) return null;
      const start = at();
      const hand = pane.onPlane(x, y, start);
      const frame = frameNow();
      const before = moved;
      return {
        axis: arm?.name ?? null,
        to: (px, py, axis) => {
          const now = pane.onPlane(px, py, start);
          const wanted: Point = [now[0] - hand[0], now[1] - hand[1], now[2] - hand[2]];
          const line = AXES.find(({ name }) => name === axis);
          const target = line ? onAxis(pane, frame, start, line.direction, wanted) : free(pane, frame, start, wanted);
          const [to, from] = [toCar(frame, target), toCar(frame, start)];
          return [before[0] + to[0] - from[0], before[1] + to[1] - from[1], before[2] + to[2] - from[2]];
        },
      };
    },
    items: () => {
      const from = at();
      return arms().flatMap(({ name, end }): OverlayItem[] => [
        { kind: 'line', className: 'arm', points: [from, end] },
        { kind: 'mark', className: 'armend', shape: 'square', at: end },
        { kind: 'label', text: name.toUpperCase(), at: end, reach: [0, -15], strong: true },
      ]);
    },
    axisTo: (eye, way) => {
      const [right, up] = eyeAxes(eye);
      const frame = frameNow();
      const [x, y, z] = AXES.map(({ direction }) => turnedToGround(frame, direction)) as [Vector, Vector, Vector];
      const across = nearestAxis(right, [x, y, z]);
      if (way === 'right') return across;
      // never the same one for both: what is left of the three
      const rest = [x, y, z].map((axis, i) => (i === across.axis ? NONE : axis)) as [Vector, Vector, Vector];
      return nearestAxis(up, rest);
    },
  };
};

const free = (pane: Pane, frame: GroundFrame, start: Point, wanted: Point): Point => {
  const axes = AXES.map(({ direction }) => turnedToGround(frame, direction));
  const [dx, dy, dz] = inPlane(wanted, axes, pane.away());
  return [start[0] + dx, start[1] + dy, start[2] + dz];
};

/** The place on one of the car's axes through the start that looks nearest to where the hand is. */
const onAxis = (pane: Pane, frame: GroundFrame, start: Point, axis: Point, wanted: Point): Point => {
  const direction = turnedToGround(frame, axis);
  if (isAtEye(direction, pane.away())) return start;
  const [from, beside, place] = [
    pane.project(start),
    pane.project(along(start, direction, 1)),
    pane.project([start[0] + wanted[0], start[1] + wanted[1], start[2] + wanted[2]]),
  ];
  return from && beside && place ? alongAxis(start, direction, [from, beside], [place[0], place[1]]) : start;
};
