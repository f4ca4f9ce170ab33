import type { FitUpWarning } from '../fitUpWarnings';
import type { Piece } from '../pieces';
import { openEdges } from './closedMesh';

/** Whether a part is a mesh that is not closed: it has no inside, and what stands within it is not told. */
export const isSurfaceOnly = ({ solid }: Pick<Piece, 'solid'>): boolean => solid.kind === 'mesh' && !solid.mesh.isClosed;

/** What is to be known of a part whose mesh is not closed. @param open - how many of its edges are */
export function openMeshWarning(name: string, open: number): FitUpWarning {
  const edges = open === 1 ? 'one edge' : `${open} edges`;
  return {
    code: 'mesh-open',
    path: `parts.${name}`,
    message: `The mesh of "${name}" is not closed, ${edges} of it not shared by exactly two triangles, so it has no inside: only its surface counts, and what stands within it is not told. Close it in the program that it is from, or give the part plain shapes.`,
  };
}

/** The same for all parts of some corners, each once. */
export function openMeshWarnings(pieces: Iterable<Piece>): FitUpWarning[] {
  const found = new Map<string, FitUpWarning>();
  for (const { name, solid } of pieces)
    if (solid.kind === 'mesh' && !solid.mesh.isClosed && !found.has(name))
      found.set(name, openMeshWarning(name, openEdges(solid.mesh.triangles)));
  return [...found.values()];
}
