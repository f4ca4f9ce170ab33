import type { Piece } from './pieces';

/**
 * Margins that are asked for where the file gives none [mm]: suggestions, common practice, no source. They are the example's
 * of the car file's own page and are there to be changed.
 */
export const SUGGESTED_MARGINS: Readonly<Record<string, number>> = { default: 8, tyreSide: 10, tyreTread: 15, caliperRim: 3 };

/** What a shape picks where its part names no kind. */
const KIND_OF_SHAPE: Readonly<Record<string, string>> = { tyre: 'tyreTread', rim: 'caliperRim' };

/**
 * The margin that two pieces have to keep [mm]: the larger of their own; else the larger of those that their kinds pick; else
 * the default.
 * @param margins - of the file, in its own unit
 * @param mm - mm per unit of the file
 */
export function marginOf(a: Piece, b: Piece, margins: Readonly<Record<string, number>> | undefined, mm: number): number {
  const own = [a.margin, b.margin].filter((margin) => margin !== null);
  if (own.length > 0) return Math.max(...own);
  const byKind = [a, b].map((piece) => marginOfKind(kindOf(piece), margins, mm)).filter((margin) => margin !== null);
  if (byKind.length > 0) return Math.max(...byKind);
  return marginOfKind('default', margins, mm)!;
}

const kindOf = ({ kind, part }: Piece): string | null =>
  kind ?? (part === null ? null : (KIND_OF_SHAPE[part.shape.kind] ?? null));

function marginOfKind(kind: string | null, margins: Readonly<Record<string, number>> | undefined, mm: number): number | null {
  if (kind === null) return null;
  const given = margins?.[kind];
  return given === undefined ? (SUGGESTED_MARGINS[kind] ?? null) : given * mm;
}
