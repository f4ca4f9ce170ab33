import { randomUUID } from 'node:crypto';
import path from 'node:path';
import type { HandedName } from '../../renderer/files/fileService';

/**
 * The files that the window may name. It knows an opaque id of each and no path; an id that was not handed out means nothing.
 */
export class HandedFiles {
  private readonly places = new Map<string, string>();
  private readonly ids = new Map<string, string>();

  /**
   * Hands out a file: the same id for the same path.
   * @param id - one that was handed out for it before, if any
   */
  hand(place: string, id: string = randomUUID()): HandedName {
    const resolved = path.resolve(place);
    const known = this.ids.get(resolved) ?? id;
    this.ids.set(resolved, known);
    this.places.set(known, resolved);
    return { id: known, name: path.basename(resolved), folder: path.dirname(resolved) };
  }

  /** The path behind an id; null when it was never handed out. */
  placeOf(id: string): string | null {
    return this.places.get(id) ?? null;
  }
}
