import { readStl, type CarDocument, type MeshFiles, type Triangles } from '../../../geometry/index';
import { memoLast } from '../memoLast';

/** The triangles of the parts that are a mesh, and what cannot be read, in words. */
export interface PartMeshFiles {
  readonly meshes: MeshFiles;
  readonly faults: readonly string[];
}

/** A mesh is read once while it stays, whatever else is changed of the parts: a large one takes half a second. */
const KEPT = 12;
const readData = memoLast((data: string) => readStl(bytesOf(data)), KEPT);

const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));

/**
 * Reads the meshes that are in the car file itself. One in a file beside it is said to be left out: the window was given the car file
 * alone.
 */
export const partMeshFiles = (parts: CarDocument['parts']): PartMeshFiles => {
  const meshes: Record<string, Triangles> = {};
  const faults: string[] = [];
  for (const [name, { shape }] of Object.entries(parts ?? {})) {
    if (shape.kind !== 'mesh') continue;
    if (shape.data === undefined) {
      faults.push(
        `“${name}” is a mesh in the file ${shape.file ?? ''} beside the car file. The window was not given that file, so the part is left out here; the command line looks at it.`,
      );
      continue;
    }
    const read = readData(shape.data);
    if (read.ok) meshes[name] = read.value;
    else faults.push(`“${name}” is left out: its mesh cannot be read. Found ${read.failure.found}; ${read.failure.hint}.`);
  }
  return { meshes, faults };
};
