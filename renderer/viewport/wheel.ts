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
import { toRadians } from '../../geometry/index';
import type { Point, WheelCut } from './camera';
import type { Materials } from './materials';
import { inset, type SectionPoint, type WheelSections } from './wheelSection';

const AROUND = 40;
/** Breadth of the edge round a cut face [mm]. */
const CUT_EDGE = 2;

/**
 * Half a turned body: its axis is Y here, the half kept is that of negative X, so that the cut lies in the plane X = 0.
 */
const halfLathe = (section: readonly SectionPoint[]): BufferGeometry => {
  const closed = [...section, section[0] ?? [0, 0]];
  const points = closed.map(([at, radius]) => new Vector2(radius, at));
  return new LatheGeometry(points, AROUND, Math.PI, Math.PI);
};

/** Both cut faces of a section, in the plane X = 0: one up, one down. @param proud - of that plane, towards the eye [mm] */
const cutFaces = (section: readonly SectionPoint[], proud: number): BufferGeometry => {
  const shape = new Shape(section.map(([at, radius]) => new Vector2(at, radius)));
  const flat = new ShapeGeometry(shape);
  const place = flat.getAttribute('position');
  const index = flat.getIndex();
  const order = index ? [...index.array] : [];
  const corners: number[] = [];
  for (const sign of [1, -1]) for (const at of order) corners.push(proud, place.getX(at), sign * place.getY(at));
  const faces = new BufferGeometry();
  faces.setAttribute('position', new BufferAttribute(new Float32Array(corners), 3));
  flat.dispose();
  return faces;
};

/** The middle of the wheel's disc, which is bolted to the hub. @param half - of the tyre's width */
const middleSection = (half: number): readonly SectionPoint[] => [
  [half * 0.35, 34],
  [half * 0.35 + 14, 34],
  [half * 0.45 + 14, 86],
  [half * 0.45, 90],
  [half * 0.35, 78],
];

/** Five spokes stand so that the cut takes two of them away and leaves three whole [rad from the middle of the kept half]. */
const SPOKES = [-72, 0, 72].map((degrees) => toRadians(degrees));
/** Half widths of a spoke at the middle and at the rim, and its thickness [mm]. */
const SPOKE = { inner: 28, outer: 42, thick: 16 } as const;

/** The spokes of the kept half, from the middle of the disc to the rim. */
const spokes = (rimRadius: number, half: number): BufferGeometry => {
  const corners: number[] = [];
  for (const angle of SPOKES) {
    const [s, c] = [Math.sin(angle), Math.cos(angle)];
    const corner = (radius: number, aside: number, at: number): Point => [-radius * c - aside * s, at, radius * s - aside * c];
    const end = (radius: number, wide: number, at: number): readonly Point[] => [
      corner(radius, -wide, at),
      corner(radius, wide, at),
      corner(radius, wide, at + SPOKE.thick),
      corner(radius, -wide, at + SPOKE.thick),
    ];
    const box = [...end(78, SPOKE.inner, half * 0.43), ...end(rimRadius - 14, SPOKE.outer, half * 0.62 - 4)];
    for (const [p, q, r, t] of BOX_SIDES)
      for (const index of [p, q, r, p, r, t]) corners.push(...(box[index] ?? ([0, 0, 0] as const)));
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(corners), 3));
  geometry.computeVertexNormals();
  return geometry;
};
/** Sides of a box whose ends are corners 0–3 and 4–7. */
const BOX_SIDES = [
  [0, 1, 5, 4],
  [1, 2, 6, 5],
  [2, 3, 7, 6],
  [3, 0, 4, 7],
] as const;

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
  /** A turned part, its cut faces hatched within an edge of ink. */
  const addCut = (section: readonly SectionPoint[], finish: Material): void => {
    add(halfLathe(section), finish);
    add(cutFaces(section, 0.4), materials.edge);
    add(cutFaces(inset(section, CUT_EDGE), 1.2), materials.hatched);
  };
  addCut(sections.tyre, materials.finish.rubber);
  // The rim is as thin as its edges would be: it is cut in ink alone.
  add(halfLathe(sections.rim), materials.finish.alloy);
  add(cutFaces(sections.rim, 0.8), materials.edge);
  addCut(middleSection(sections.width / 2), materials.finish.alloy);
  add(spokes(sections.rimRadius, sections.width / 2), materials.finish.alloy);
  if (brake) addCut(brakeSection(brake.at, brake.radius, brake.thickness), materials.finish.steel);
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
