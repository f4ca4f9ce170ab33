import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import type { MeshSearch, Triangles, Vector } from '../index';

/**
 * Makes a mesh ready to be searched through a hierarchy of bounding boxes. The library's boxes are in single precision and widened for
 * it; distances are worked out from the triangles themselves.
 */
export function searchMesh(triangles: Triangles): MeshSearch {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(triangles, 3));
  const boxes = new MeshBVH(geometry, { targetLeafSize: 4 });
  const order = geometry.index!.array;
  // the library sorts the triangles: the first corner still tells which it was
  const startOf = (index: number): number => Math.floor(order[3 * index] / 3) * 9;
  return {
    nearest: (least, measure, worst) => {
      let best = worst;
      let found = -1;
      boxes.shapecast({
        boundsTraverseOrder: ({ min, max }) => least([min.x, min.y, min.z], [max.x, max.y, max.z]),
        intersectsBounds: (_box, _isLeaf, score) => (score ?? -Infinity) < best,
        intersectsRange: (offset, count) => {
          for (let i = offset; i < offset + count; i++) {
            const start = startOf(i);
            const distance = measure(triangles, start);
            if (distance >= best) continue;
            best = distance;
            found = start;
          }
          return false;
        },
      });
      return found;
    },
    holds: (point) => RAYS.filter((way) => isOdd(boxes, point, way)).length * 2 > RAYS.length,
  };
}

/** Directions along no axis and no diagonal of anything that is drawn: a ray along an edge would count it twice. */
const RAYS: readonly Vector[] = [
  [0.8017, 0.2673, 0.5345],
  [-0.3123, 0.9119, 0.2665],
  [0.1741, -0.4377, 0.8821],
];

function isOdd(boxes: MeshBVH, [x, y, z]: Vector, way: Vector): boolean {
  const ray = new Ray(new Vector3(x, y, z), new Vector3(...way).normalize());
  return boxes.raycast(ray, DoubleSide).length % 2 === 1;
}
