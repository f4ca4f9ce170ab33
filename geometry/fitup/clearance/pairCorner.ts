import type { CarMechanism } from '../../car/mechanism';
import type { FitUpCorner } from '../corners';
import type { Envelope } from '../envelope';
import { marginOf } from '../margins';
import { piecesOf, type PartMeshes, type Pieces } from '../pieces';
import type { Field } from './fieldSearch';
import { joinedAt } from './pairs';
import { GridPlacements } from './placements';

/** One corner in one setup with its parts, ready to be searched. */
export interface ClearanceCorner extends FitUpCorner {
  readonly envelope: Envelope;
  readonly placements: GridPlacements;
  readonly made: Pieces;
}

/** A corner with the parts of the file on it, in its envelope or in one that is drawn in. */
export function withPieces(
  { document, mmPerUnit }: CarMechanism,
  corner: FitUpCorner,
  envelope: Envelope,
  meshes: PartMeshes,
): ClearanceCorner {
  const made = piecesOf(document, mmPerUnit, corner.axle, corner.side, meshes);
  return { ...corner, envelope, placements: new GridPlacements(envelope), made };
}

export interface PairField extends Field {
  readonly corner: ClearanceCorner;
  /** margin that the two have to keep [mm] */
  readonly needs: number;
}

/** A pair on one corner as a search needs it; null where one of the two is not there. */
export function fieldOf(
  { document, mmPerUnit }: CarMechanism,
  corner: ClearanceCorner,
  [one, other]: readonly [string, string],
): PairField | null {
  const { axle, side, envelope, placements, made } = corner;
  const first = made.pieces.find(({ name }) => name === one);
  const second = made.pieces.find(({ name }) => name === other);
  if (first === undefined || second === undefined) return null;
  const joined = joinedAt(document, mmPerUnit, axle, side, [first, second]);
  const needs = marginOf(first, second, document.margins, mmPerUnit);
  return { corner, side, envelope, placements, first, second, ...joined, needs };
}
