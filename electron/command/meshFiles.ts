import path from 'node:path';
import { readStl, type Fault, type MeshFiles, type Triangles } from '../../geometry/index';
import { LARGEST_FILE, readFileCapped, type LoadedCar } from './carSource';
import type { CommandFaultCode } from './codes';
import { CommandError } from './commandError';

/**
 * The triangles of all parts that are a mesh: those in the car file itself, and those in files beside it.
 * @throws CommandError with every mesh that cannot be read
 */
export async function meshesOf({ document, folder }: LoadedCar): Promise<MeshFiles> {
  const meshes: Record<string, Triangles> = {};
  const faults: Fault[] = [];
  for (const [name, { shape }] of Object.entries(document.parts ?? {})) {
    if (shape.kind !== 'mesh') continue;
    const key = shape.data === undefined ? 'file' : 'data';
    const refuse = (found: string, hint: string): void => {
      faults.push(faultOf(`parts.${name}.shape.${key}`, found, hint));
    };
    const bytes = shape.data === undefined ? await bytesOf(shape.file ?? '', folder, refuse) : Buffer.from(shape.data, 'base64');
    if (bytes === null) continue;
    const read = readStl(bytes);
    if (read.ok) meshes[name] = read.value;
    else refuse(read.failure.found, read.failure.hint);
  }
  const [first] = faults;
  if (first === undefined) return meshes;
  const message = faults.length === 1 ? 'a mesh cannot be read' : `${faults.length} meshes cannot be read`;
  throw new CommandError({ kind: 'file', message, faults });
}

async function bytesOf(
  file: string,
  folder: string | null,
  refuse: (found: string, hint: string) => void,
): Promise<Uint8Array | null> {
  if (folder === null && !path.isAbsolute(file)) {
    refuse(`"${file}", of a car that came without a folder`, 'give the car as a file, or the mesh as "data"');
    return null;
  }
  try {
    const bytes = await readFileCapped(path.resolve(folder ?? '.', file));
    if (bytes.length <= LARGEST_FILE) return bytes;
    refuse('more than 16 MiB', 'save it with fewer triangles');
  } catch (thrown) {
    if (!(thrown instanceof CommandError)) throw thrown;
    refuse(thrown.document.message, 'the file is looked for beside the car file');
  }
  return null;
}

const faultOf = (place: string, found: string, hint: string): Fault => ({
  code: 'mesh-unreadable' satisfies CommandFaultCode,
  path: place,
  line: null,
  column: null,
  found,
  expected: 'an STL file',
  hint,
});
