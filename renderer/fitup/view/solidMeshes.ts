import {
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  CapsuleGeometry,
  CylinderGeometry,
  LatheGeometry,
  Matrix4,
  Quaternion,
  SphereGeometry,
  Vector2,
  Vector3,
} from 'three';
import { mergeGeometries } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import type { DrawnShape, Vector } from '../../../geometry/index';

const ROUND = 48;
const UP = new Vector3(0, 1, 0);
const vector = (v: Vector): Vector3 => new Vector3(v[0], v[1], v[2]);

/** Turns the library's own Y axis to a direction, and moves its middle to a point. */
const alongAxis = (geometry: BufferGeometry, middle: Vector3, way: Vector3): BufferGeometry => {
  const turn = new Quaternion().setFromUnitVectors(UP, way.clone().normalize());
  return geometry.applyMatrix4(new Matrix4().compose(middle, turn, new Vector3(1, 1, 1)));
};

/** A surface of revolution, each stretch of its profile with normals of its own: its edges are edges. */
const turned = ({ at, axis, profile, isSkin }: Extract<DrawnShape, { kind: 'turned' }>): BufferGeometry => {
  const line = isSkin ? profile : [...profile, ...profile.slice(0, 1)];
  const stretches = line.slice(1).map(([along, radius], index) => {
    const [before, out] = line[index] ?? [along, radius];
    return new LatheGeometry([new Vector2(Math.max(0, out), before), new Vector2(Math.max(0, radius), along)], ROUND);
  });
  const whole = mergeGeometries(stretches);
  stretches.forEach((one) => one.dispose());
  return alongAxis(whole, vector(at), vector(axis));
};

/** A solid as triangles, in the car's frame [mm]. */
export const geometryOf = (shape: DrawnShape): BufferGeometry => {
  switch (shape.kind) {
    case 'sphere':
      return new SphereGeometry(shape.radius, ROUND, ROUND / 2).translate(...shape.at);
    case 'capsule':
    case 'cylinder': {
      const [from, to] = [vector(shape.from), vector(shape.to)];
      const way = to.clone().sub(from);
      const made =
        shape.kind === 'capsule'
          ? new CapsuleGeometry(shape.radius, way.length(), 10, ROUND)
          : new CylinderGeometry(shape.radius, shape.radius, way.length(), ROUND);
      return alongAxis(made, from.add(to).multiplyScalar(0.5), way);
    }
    case 'box': {
      const [a, b, c] = shape.halves.map((half) => vector(half).multiplyScalar(2)) as [Vector3, Vector3, Vector3];
      return new BoxGeometry(1, 1, 1).applyMatrix4(new Matrix4().makeBasis(a, b, c).setPosition(vector(shape.centre)));
    }
    case 'turned':
      return turned(shape);
    case 'mesh': {
      const geometry = new BufferGeometry();
      geometry.setAttribute('position', new BufferAttribute(Float32Array.from(shape.triangles), 3));
      geometry.computeVertexNormals();
      return geometry;
    }
  }
};
