import type { AdjusterDocument, SeenFrom, Triple } from '../../geometry/index';

const HOURS = /^(\d+(?:\.\d+)?)h$/;

/** The hours of "3h" or "10.5h", 0 up to 12; null when the text is no clock time. */
export function parseHours(text: string): number | null {
  const match = HOURS.exec(text);
  if (!match) return null;
  const hours = Number(match[1]);
  return hours <= 12 ? hours : null;
}

/** The direction in which the fitter looks at the left side of the car, in the car frame (x forward, y left, z up). */
const SIGHT: Readonly<Record<SeenFrom, Triple>> = {
  above: [0, 0, -1],
  below: [0, 0, 1],
  front: [-1, 0, 0],
  rear: [1, 0, 0],
  inboard: [0, 1, 0],
  outboard: [0, -1, 0],
};

/**
 * The clock of an adjuster in degrees, as a setup holds it, from the hour that the fitter sees on the left side.
 *
 * Looking along +axis the hour is clock/30, against it (360 − clock)/30; without `seenFrom` the fitter looks along +axis.
 * A cam bolt's file names no axis, only its slot, so its hours are those of someone looking along the bolt.
 *
 * @param hours - 0 up to 12
 * @returns degrees, 0 ≤ clock < 360 for a bushing, −180 < clock ≤ 180 for a cam; or why there is none
 */
export function clockFromHours(
  adjuster: AdjusterDocument,
  hours: number,
): { readonly ok: true; readonly degrees: number } | { readonly ok: false; readonly reason: string } {
  switch (adjuster.kind) {
    case 'offset-bushing':
    case 'clamp-eccentric': {
      const along = looksAlong(adjuster.axis, adjuster.seenFrom);
      if (along === 0)
        return { ok: false, reason: `seen from "${adjuster.seenFrom}" its axis lies square to the view: give degrees` };
      const turned = (along > 0 ? hours * 30 : 360 - hours * 30) % 360;
      return { ok: true, degrees: adjuster.kind === 'offset-bushing' ? turned : signedTurn(turned) };
    }
    case 'eccentric-bolt':
      return { ok: true, degrees: signedTurn((hours * 30) % 360) };
    case 'slide':
    case 'turnbuckle':
    case 'perch':
      return { ok: false, reason: `a ${adjuster.kind} has no clock` };
  }
}

const signedTurn = (degrees: number): number => (degrees > 180 ? degrees - 360 : degrees);

/** + when the fitter looks along the axis, − against it, 0 square to it (within a thousandth). */
function looksAlong(axis: Triple, seenFrom: SeenFrom | undefined): number {
  if (seenFrom === undefined) return 1;
  const sight = SIGHT[seenFrom];
  const along = axis[0] * sight[0] + axis[1] * sight[1] + axis[2] * sight[2];
  const size = Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1] + axis[2] * axis[2]);
  return Math.abs(along) < 1e-3 * size ? 0 : along;
}
