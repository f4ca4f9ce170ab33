import {
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  Group,
  LatheGeometry,
  Matrix4,
  Mesh,
  Shape,
  ShapeGeometry,
  Vector2,
  Vector3,
  type Material,
} from 'three';
import type { Point, WheelCut } from './camera';
import type { Materials } from './materials';
import type { SectionPoint, WheelSections } from './wheelSection';

const AROUND = 40;

/**
 * Half a turned body: its axis is Y here, the half kept is that of negative X, so that the cut lies in the plane X = 0.
 */
const halfLathe = (section: readonly SectionPoint[]): BufferGeometry => {
  const closed = [...section, section[0] ?? [0, 0]];
  const points = closed.map(([at, radius]) => new Vector2(radius, at));
  return new LatheGeometry(points, AROUND, Math.PI, Math.PI);
};

/** Both cut faces of a section, in the plane X = 0: one up, one down. */
const cutFaces = (section: readonly SectionPoint[]): BufferGeometry => {
  const shape = new Shape(section.map(([at, radius]) => new Vector2(at, radius)));
  const flat = new ShapeGeometry(shape);
  const place = flat.getAttribute('position');
  const index = flat.getIndex();
  const order = index ? [...index.array] : [];
  const corners: number[] = [];
  for (const sign of [1, -1]) for (const at of order) corners.push(0.4, place.getX(at), sign * place.getY(at));
  const faces = new BufferGeometry();
  faces.setAttribute('position', new BufferAttribute(new Float32Array(corners), 3));
  flat.dispose();
  return faces;
};

/** Five spokes and a hub of the wheel's disc, half of them: what is on the kept side. */
const discSection = (rimRadius: number, half: number): readonly SectionPoint[] => [
  [half * 0.35, 34],
  [half * 0.35 + 12, 34],
  [half * 0.45 + 12, 90],
  [half * 0.62 + 8, rimRadius - 26],
  [half * 0.62 - 2, rimRadius - 24],
  [half * 0.45, 90],
  [half * 0.35, 78],
];

const brakeSection = (at: number, radius: number, thickness: number): readonly SectionPoint[] => [
  [at - thickness / 2, 70],
  [at - thickness / 2, radius],
  [at + thickness / 2, radius],
  [at + thickness / 2, 70],
];

export interface BrakeDisc {
  readonly radius: number;
  readonly thickness: number;
  /** from the wheel centre along the spindle, + outboard */
  readonly at: number;
}

export interface WheelModel {
  readonly object: Group;
  /** @param spindle - unit vector, outboard @param cut - the half taken away */
  readonly place: (centre: Point, spindle: Point, cut: WheelCut) => void;
  readonly dispose: () => void;
}

const AWAY: Readonly<Record<WheelCut, Point>> = { fore: [1, 0, 0], aft: [-1, 0, 0], above: [0, 0, 1], outline: [1, 0, 0] };

/** A wheel with its tyre, cut along the plane of the axle so that the hub and joints behind it are seen. */
export const buildWheel = (sections: WheelSections, brake: BrakeDisc | null, materials: Materials): WheelModel => {
  const object = new Group();
  object.matrixAutoUpdate = false;
  const solids: BufferGeometry[] = [];
  const add = (geometry: BufferGeometry, material: Material): Mesh => {
    solids.push(geometry);
    const mesh = new Mesh(geometry, material);
    object.add(mesh);
    return mesh;
  };
  add(halfLathe(sections.tyre), materials.finish.rubber);
  add(cutFaces(sections.tyre), materials.hatched);
  add(halfLathe(sections.rim), materials.finish.alloy);
  add(cutFaces(sections.rim), materials.finish.rubber);
  const disc = discSection(sections.rimRadius, sections.width / 2);
  add(halfLathe(disc), materials.finish.alloy);
  add(cutFaces(disc), materials.hatched);
  if (brake) {
    const section = brakeSection(brake.at, brake.radius, brake.thickness);
    add(halfLathe(section), materials.finish.steel);
    add(cutFaces(section), materials.hatched);
  }
  const hub = new CylinderGeometry(33, 33, sections.width * 0.3, 24);
  hub.translate(0, sections.width * 0.05, 0);
  add(hub, materials.finish.cast);

  const [x, y, z] = [new Vector3(), new Vector3(), new Vector3()];
  const place = (centre: Point, spindle: Point, cut: WheelCut): void => {
    object.visible = cut !== 'outline';
    const away = AWAY[cut];
    y.set(spindle[0], spindle[1], spindle[2]);
    x.set(away[0], away[1], away[2])
      .addScaledVector(y, -(away[0] * y.x + away[1] * y.y + away[2] * y.z))
      .normalize();
    z.crossVectors(x, y);
    object.matrix.copy(new Matrix4().makeBasis(x, y, z)).setPosition(centre[0], centre[1], centre[2]);
    object.matrixWorldNeedsUpdate = true;
  };
  return { object, place, dispose: () => solids.forEach((geometry) => geometry.dispose()) };
};
