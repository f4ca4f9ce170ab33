import { BufferAttribute, BufferGeometry, Mesh, Vector3, type Material } from 'three';
import type { Point } from './camera';

const PER_TURN = 22;
const ROUND = 9;

export interface Coil {
  readonly object: Mesh;
  readonly place: (lower: Point, upper: Point) => void;
}

/**
 * A helical spring between its seats. The wire keeps its thickness while the coils close, so its surface is laid anew
 * into the same buffers at every position.
 * @param radius - of the coil's middle line [mm]
 * @param wire - radius of the wire [mm]
 */
export const buildCoil = (material: Material, radius: number, wire: number, turns: number): Coil => {
  const rings = Math.round(turns * PER_TURN) + 1;
  const count = rings * (ROUND + 1);
  const position = new BufferAttribute(new Float32Array(3 * count), 3);
  const normal = new BufferAttribute(new Float32Array(3 * count), 3);
  const faces: number[] = [];
  for (let ring = 0; ring + 1 < rings; ring += 1)
    for (let side = 0; side < ROUND; side += 1) {
      const at = ring * (ROUND + 1) + side;
      faces.push(at, at + ROUND + 1, at + 1, at + 1, at + ROUND + 1, at + ROUND + 2);
    }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', position);
  geometry.setAttribute('normal', normal);
  geometry.setIndex(faces);
  const object = new Mesh(geometry, material);
  object.frustumCulled = false;

  const [axis, across, beside] = [new Vector3(), new Vector3(), new Vector3()];
  const place = (lower: Point, upper: Point): void => {
    axis.set(upper[0] - lower[0], upper[1] - lower[1], upper[2] - lower[2]);
    const height = Math.max(axis.length() - 2 * wire, 4 * wire);
    axis.normalize();
    across.crossVectors(Math.abs(axis.x) > 0.9 ? new Vector3(0, 1, 0) : new Vector3(1, 0, 0), axis).normalize();
    beside.crossVectors(axis, across);
    for (let ring = 0; ring < rings; ring += 1) {
      const share = ring / (rings - 1);
      const angle = 2 * Math.PI * turns * share;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      // The end coils lie flat on their seats.
      const rise = wire + height * flatEnds(share, turns);
      for (let side = 0; side <= ROUND; side += 1) {
        const round = (2 * Math.PI * side) / ROUND;
        const [out, along] = [Math.cos(round), Math.sin(round)];
        const reach = radius + wire * out;
        const index = ring * (ROUND + 1) + side;
        const put = (target: BufferAttribute, flat: number, up: number, from: Point) =>
          target.setXYZ(
            index,
            from[0] + (across.x * c + beside.x * s) * flat + axis.x * up,
            from[1] + (across.y * c + beside.y * s) * flat + axis.y * up,
            from[2] + (across.z * c + beside.z * s) * flat + axis.z * up,
          );
        put(position, reach, rise + wire * along, lower);
        put(normal, out, along, [0, 0, 0]);
      }
    }
    position.needsUpdate = true;
    normal.needsUpdate = true;
  };
  return { object, place };
};

/** Share of the height at a share of the wire: the first and last half turn climb little. */
const flatEnds = (share: number, turns: number): number => {
  const end = 0.5 / turns;
  const low = 0.12 * end;
  if (share < end) return (low * share) / end;
  if (share > 1 - end) return 1 - (low * (1 - share)) / end;
  return low + ((1 - 2 * low) * (share - end)) / (1 - 2 * end);
};
