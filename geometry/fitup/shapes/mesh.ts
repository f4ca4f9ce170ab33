import type { Vector } from '../../core/vector';

/** Triangles of a mesh, nine coordinates each [mm], in the frame of the part that they belong to. */
export type Triangles = Float64Array;

/** What has been found out about a mesh when it was read. */
export interface MeshSurface {
  readonly triangles: Triangles;
  /** every edge is run through once each way: the mesh has an inside */
  readonly isClosed: boolean;
  readonly search: MeshSearch;
}

/**
 * A mesh that is made ready to be searched, by a library that is handed in.
 * Nothing in `geometry/` knows which one it is.
 */
export interface MeshSearch {
  /**
   * Looks for the triangle that is nearest by a measure.
   * @param least - a lower bound of the measure for anything within a box, given by its two corners [mm]
   * @param measure - the measure of the triangle whose corners start at `at` in `triangles`
   * @param best - only what is less counts
   * @returns start of the triangle, or −1
   */
  nearest(
    least: (min: Vector, max: Vector) => number,
    measure: (triangles: Triangles, at: number) => number,
    best: number,
  ): number;
  /** Whether a point is inside; without meaning where the mesh is not closed. */
  holds(point: Vector): boolean;
}

/** Makes meshes ready to be searched. */
export type MeshLibrary = (triangles: Triangles) => MeshSearch;
