import { BufferAttribute, BufferGeometry, Mesh, Vector3, type Material } from 'three';
import type { Point } from './camera';

const FORWARD = new Vector3(1, 0, 0);
const SIDEWAYS = new Vector3(0, 1, 0);
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

  // What does not change with the length: where each ring stands round the axis and up it, and each point round the wire.
  const around = Array.from({ length: rings }, (_, ring) => {
    const share = ring / (rings - 1);
    const angle = 2 * Math.PI * turns * share;
    // The end coils lie flat on their seats.
    return { cos: Math.cos(angle), sin: Math.sin(angle), share: flatEnds(share, turns) };
  });
  const section = Array.from({ length: ROUND + 1 }, (_, side) => {
    const round = (2 * Math.PI * side) / ROUND;
    return { out: Math.cos(round), up: Math.sin(round) };
  });
  const [places, normals] = [position.array, normal.array];
  const [axis, across, beside] = [new Vector3(), new Vector3(), new Vector3()];
  /** Two thousand points at every position of a drag: written straight into the buffers. */
  const place = (lower: Point, upper: Point): void => {
    axis.set(upper[0] - lower[0], upper[1] - lower[1], upper[2] - lower[2]);
    const height = Math.max(axis.length() - 2 * wire, 4 * wire);
    axis.normalize();
    across.crossVectors(Math.abs(axis.x) > 0.9 ? SIDEWAYS : FORWARD, axis).normalize();
    beside.crossVectors(axis, across);
    let at = 0;
    for (const { cos, sin, share } of around) {
      const flatX = across.x * cos + beside.x * sin;
      const flatY = across.y * cos + beside.y * sin;
      const flatZ = across.z * cos + beside.z * sin;
      const rise = wire + height * share;
      for (const { out, up } of section) {
        const reach = radius + wire * out;
        const climb = rise + wire * up;
        places[at] = lower[0] + flatX * reach + axis.x * climb;
        places[at + 1] = lower[1] + flatY * reach + axis.y * climb;
        places[at + 2] = lower[2] + flatZ * reach + axis.z * climb;
        normals[at] = flatX * out + axis.x * up;
        normals[at + 1] = flatY * out + axis.y * up;
        normals[at + 2] = flatZ * out + axis.z * up;
        at += 3;
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
