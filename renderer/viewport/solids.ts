import {
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  type Group,
  type Matrix4,
  Mesh,
  SphereGeometry,
  Vector3,
  type Material,
} from 'three';
import type { Point } from './camera';

/**
 * Solids that stand between points of the linkage. Each is built once at unit size and moved by its matrix:
 * nothing is made anew while the car moves.
 */
export interface Tube {
  readonly object: Mesh;
  readonly place: (from: Point, to: Point) => void;
}

const SIDES = 20;
const UP = new Vector3(0, 0, 1);

const vector = (point: Point): Vector3 => new Vector3(point[0], point[1], point[2]);

/** Shared unit shapes: along Z from 0 to 1, radius 1 at the foot and `top` at the head. */
const cones = new Map<number, CylinderGeometry>();
const unitCone = (top: number): CylinderGeometry => {
  const known = cones.get(top);
  if (known) return known;
  const geometry = new CylinderGeometry(top, 1, 1, SIDES);
  geometry.rotateX(Math.PI / 2);
  geometry.translate(0, 0, 0.5);
  cones.set(top, geometry);
  return geometry;
};
const unitBall = new SphereGeometry(1, SIDES, 12);
const unitBox = new BoxGeometry(1, 1, 1);

const still = <Solid extends Mesh | Group>(object: Solid): Solid => {
  object.matrixAutoUpdate = false;
  return object;
};

const FORWARD = new Vector3(1, 0, 0);
const basis = { x: new Vector3(), y: new Vector3(), z: new Vector3() };
/** Used while a solid is placed, and by one at a time: a hundred of them move with every position. */
const scratch = { from: new Vector3(), along: new Vector3() };

const setTo = (vector: Vector3, point: Point): Vector3 => vector.set(point[0], point[1], point[2]);

/** The matrix whose Z runs along `axis` with length `length`, X and Y `radius` long, at `at`. */
const alongAxis = (matrix: Matrix4, at: Vector3, axis: Vector3, radius: number, length: number): void => {
  basis.z.copy(axis).normalize();
  basis.x.crossVectors(Math.abs(basis.z.z) > 0.9 ? FORWARD : UP, basis.z).normalize();
  basis.y.crossVectors(basis.z, basis.x);
  matrix.makeBasis(basis.x.multiplyScalar(radius), basis.y.multiplyScalar(radius), basis.z.multiplyScalar(length));
  matrix.setPosition(at);
};

const placed = (object: Mesh): void => {
  object.matrixWorldNeedsUpdate = true;
};

/** A round bar between two points. @param taper - head radius ÷ foot radius */
export const buildTube = (material: Material, radius: number, taper = 1): Tube => {
  const object = still(new Mesh(unitCone(taper), material));
  return {
    object,
    place: (from, to) => {
      const a = setTo(scratch.from, from);
      const axis = setTo(scratch.along, to).sub(a);
      const length = axis.length();
      object.visible = length > 1e-6;
      if (!object.visible) return;
      alongAxis(object.matrix, a, axis, radius, length);
      placed(object);
    },
  };
};

export interface Ball {
  readonly object: Mesh;
  readonly place: (at: Point) => void;
}

export const buildBall = (material: Material, radius: number): Ball => {
  const object = still(new Mesh(unitBall, material));
  return {
    object,
    place: (at) => {
      object.matrix.makeScale(radius, radius, radius).setPosition(at[0], at[1], at[2]);
      placed(object);
    },
  };
};

export interface Disc {
  readonly object: Mesh;
  readonly place: (at: Point, axis: Point) => void;
}

/** A short cylinder about a point, square to an axis: bushings, flanges, washers. */
export const buildDisc = (material: Material, radius: number, thickness: number): Disc => {
  const object = still(new Mesh(unitCone(1), material));
  return {
    object,
    place: (at, axis) => {
      const direction = setTo(scratch.along, axis).normalize();
      const foot = setTo(scratch.from, at).addScaledVector(direction, -thickness / 2);
      alongAxis(object.matrix, foot, direction, radius, thickness);
      placed(object);
    },
  };
};

/** A block of the body, square to the car. */
export const buildBlock = (material: Material, size: Point): Ball => {
  const object = still(new Mesh(unitBox, material));
  return {
    object,
    place: (at) => {
      object.matrix.makeScale(size[0], size[1], size[2]).setPosition(at[0], at[1], at[2]);
      placed(object);
    },
  };
};

/** Corners of the unit prism: (0,0), (1,0), (0,1), half a unit above and below. */
const unitPrism = (() => {
  const corners: Point[] = [
    [0, 0, 0.5],
    [1, 0, 0.5],
    [0, 1, 0.5],
    [0, 0, -0.5],
    [1, 0, -0.5],
    [0, 1, -0.5],
  ];
  const faces = [0, 1, 2, 3, 5, 4, 0, 3, 1, 1, 3, 4, 1, 4, 2, 2, 4, 5, 2, 5, 0, 0, 5, 3];
  const geometry = new BufferGeometry();
  geometry.setAttribute(
    'position',
    new BufferAttribute(new Float32Array(faces.flatMap((index) => corners[index] ?? [0, 0, 0])), 3),
  );
  geometry.computeVertexNormals();
  return geometry;
})();

export interface Plate {
  readonly object: Mesh;
  readonly place: (a: Point, b: Point, c: Point) => void;
}

/** A flat plate of even thickness over the triangle of three points. */
export const buildPlate = (material: Material, thickness: number): Plate => {
  const object = still(new Mesh(unitPrism, material));
  return {
    object,
    place: (a, b, c) => {
      const origin = vector(a);
      const [x, y] = [vector(b).sub(origin), vector(c).sub(origin)];
      const normal = x.clone().cross(y);
      object.visible = normal.length() > 1e-6;
      if (!object.visible) return;
      object.matrix.makeBasis(x, y, normal.normalize().multiplyScalar(thickness)).setPosition(origin);
      placed(object);
    },
  };
};
