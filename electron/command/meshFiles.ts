import path from 'node:path';
import { formatPath, placesOf, readStl, type Fault, type MeshFiles, type Path, type Triangles } from '../../geometry/index';
import { LARGEST_FILE, readFileCapped, type LoadedCar } from './carSource';
import type { CommandFaultCode } from './codes';
import { CommandError } from './commandError';

/**
 * The triangles of all parts that are a mesh: those in the car file itself, and those in files beside it.
 * @throws CommandError with every mesh that cannot be read
 */
export async function meshesOf(car: LoadedCar): Promise<MeshFiles> {
  const { meshes, bad } = await readMeshes(car);
  if (bad.length === 0) return meshes;
  const message = bad.length === 1 ? 'a mesh cannot be read' : `${bad.length} meshes cannot be read`;
  throw new CommandError({ kind: 'file', message, faults: faultsOf(bad, car) });
}

/** The same of those that can be read, and why others cannot. */
export async function readMeshes({
  document,
  folder,
}: LoadedCar): Promise<{ readonly meshes: MeshFiles; readonly bad: readonly BadMesh[] }> {
  const meshes: Record<string, Triangles> = {};
  const bad: BadMesh[] = [];
  for (const [name, { shape }] of Object.entries(document.parts ?? {})) {
    if (shape.kind !== 'mesh') continue;
    const key = shape.data === undefined ? 'file' : 'data';
    const refuse = (found: string, hint: string): void => {
      bad.push({ path: ['parts', name, 'shape', key], found, hint });
    };
    const bytes = shape.data === undefined ? await bytesOf(shape.file ?? '', folder, refuse) : Buffer.from(shape.data, 'base64');
    if (bytes === null) continue;
    const read = readStl(bytes);
    if (read.ok) meshes[name] = read.value;
    else refuse(read.failure.found, read.failure.hint);
  }
  return { meshes, bad };
}

interface BadMesh {
  readonly path: Path;
  readonly found: string;
  readonly hint: string;
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

function faultsOf(bad: readonly BadMesh[], { text, isExcerpt }: LoadedCar): Fault[] {
  const places = isExcerpt
    ? []
    : placesOf(
        text,
        bad.map(({ path: at }) => at),
      );
  return bad.map(({ path: at, found, hint }, i) => ({
    code: 'mesh-unreadable' satisfies CommandFaultCode,
    path: formatPath(at),
    line: places[i]?.line ?? null,
    column: places[i]?.column ?? null,
    found,
    expected: 'an STL file',
    hint,
  }));
}
