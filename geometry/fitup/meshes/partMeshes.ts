import type { CarDocument } from '../../car/document';
import type { ShapeDocument } from '../../car/fitUpDocument';
import { cross, reject, unit, type Vector } from '../../core/vector';
import type { PartMeshes } from '../pieces';
import type { MeshLibrary, MeshSurface, Triangles } from '../shapes/mesh';
import { openEdges } from './closedMesh';

/** Triangles as files have them, by the name of the part, in the files' own units. */
export type MeshFiles = Readonly<Record<string, Triangles>>;

/**
 * The meshes of a car's parts, scaled and put in place, each with its mirror image, ready to be searched once they are asked for.
 * @param mm - mm per unit of the car file: a mesh is in that unit before its `scale`
 */
export function partMeshes(document: CarDocument, mm: number, files: MeshFiles, library: MeshLibrary): PartMeshes {
  const made: [string, { readonly own: MeshSurface; readonly mirrored: MeshSurface }][] = [];
  for (const [name, { shape }] of Object.entries(document.parts ?? {})) {
    const triangles = files[name];
    if (shape.kind !== 'mesh' || triangles === undefined) continue;
    const placed = inPlace(triangles, shape, mm);
    const isClosed = openEdges(triangles) === 0;
    made.push([name, { own: surface(placed, isClosed, library), mirrored: surface(mirrored(placed), isClosed, library) }]);
  }
  return new Map(made);
}

function surface(triangles: Triangles, isClosed: boolean, library: MeshLibrary): MeshSurface {
  let search: ReturnType<MeshLibrary> | null = null;
  return {
    triangles,
    isClosed,
    // most workers look at few of the meshes
    get search() {
      return (search ??= library(triangles));
    },
  };
}

function inPlace(triangles: Triangles, shape: Extract<ShapeDocument, { kind: 'mesh' }>, mm: number): Triangles {
  const size = (shape.scale ?? 1) * mm;
  const [x, y, z] = (shape.place?.at ?? [0, 0, 0]).map((value) => value * mm);
  const first = unit(shape.place?.axes?.[0] ?? [1, 0, 0]);
  const second = unit(reject(shape.place?.axes?.[1] ?? [0, 1, 0], first));
  const third: Vector = cross(first, second);
  const out = new Float64Array(triangles.length);
  for (let i = 0; i < out.length; i += 3) {
    const [a, b, c] = [size * triangles[i], size * triangles[i + 1], size * triangles[i + 2]];
    out[i] = x + a * first[0] + b * second[0] + c * third[0];
    out[i + 1] = y + a * first[1] + b * second[1] + c * third[1];
    out[i + 2] = z + a * first[2] + b * second[2] + c * third[2];
  }
  return out;
}

/** The other hand: y turned over, and every triangle run through the other way, so that its outside stays outside. */
function mirrored(triangles: Triangles): Triangles {
  const out = new Float64Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 9) {
    for (const [to, from] of [
      [0, 0],
      [3, 6],
      [6, 3],
    ] as const) {
      out[i + to] = triangles[i + from];
      out[i + to + 1] = -triangles[i + from + 1];
      out[i + to + 2] = triangles[i + from + 2];
    }
  }
  return out;
}
