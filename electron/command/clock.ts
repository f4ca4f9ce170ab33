import { SIGHT, type AdjusterDocument, type SeenFrom, type Triple } from '../../geometry/index';

const HOURS = /^(\d+(?:\.\d+)?)h$/;

/** The hours of "3h" or "10.5h", 0 up to 12; null when the text is no clock time. */
export function parseHours(text: string): number | null {
  const match = HOURS.exec(text);
  if (!match) return null;
  const hours = Number(match[1]);
  return hours <= 12 ? hours : null;
}

/** What lies to the right of a fitter who looks so; from above and below it depends on where one stands. */
const RIGHT_HAND: Readonly<Partial<Record<SeenFrom, Triple>>> = {
  front: [0, 1, 0],
  rear: [0, -1, 0],
  inboard: [1, 0, 0],
  outboard: [-1, 0, 0],
};

type Clock = { readonly ok: true; readonly degrees: number } | { readonly ok: false; readonly reason: string };

/**
 * The clock of an adjuster in degrees, as a setup holds it, from the hour that the fitter sees on the left side.
 *
 * Looking along +axis the hour is clock/30, against it (360 − clock)/30; without `seenFrom` the fitter looks along +axis.
 * The file of a cam bolt names a slot and no axis: there the fitter sees the bolt's centre go to his right at 3, so the hour is
 * clock/30 where the slot points to his right. Without `seenFrom` that is taken for granted.
 *
 * @param hours - 0 up to 12
 * @returns degrees, 0 ≤ clock < 360 for a bushing, −180 < clock ≤ 180 for a cam; or why there is none
 */
export function clockFromHours(adjuster: AdjusterDocument, hours: number): Clock {
  switch (adjuster.kind) {
    case 'offset-bushing':
      return clockSeen(hours, adjuster.axis, adjuster.seenFrom, SIGHT);
    case 'clamp-eccentric':
      return signed(clockSeen(hours, adjuster.axis, adjuster.seenFrom, SIGHT));
    case 'eccentric-bolt':
      return signed(clockSeen(hours, adjuster.slot, adjuster.seenFrom, RIGHT_HAND));
    case 'slide':
    case 'turnbuckle':
    case 'perch':
      return { ok: false, reason: `a ${adjuster.kind} has no clock` };
  }
}

/** @param views - the direction that the part's own has to agree with for the clock to run forward, by where it is seen from */
function clockSeen(
  hours: number,
  direction: Triple,
  seenFrom: SeenFrom | undefined,
  views: Readonly<Partial<Record<SeenFrom, Triple>>>,
): Clock {
  const forward = (hours * 30) % 360;
  if (seenFrom === undefined) return { ok: true, degrees: forward };
  const view = views[seenFrom];
  const agreement = view === undefined ? 0 : agreementOf(direction, view);
  if (agreement === 0) return { ok: false, reason: `which way its clock runs cannot be told from "${seenFrom}": give degrees` };
  return { ok: true, degrees: agreement > 0 ? forward : (360 - forward) % 360 };
}

/** A cam turns to either side of 12: past half a turn its clock is negative. */
const signed = (clock: Clock): Clock => (clock.ok && clock.degrees > 180 ? { ok: true, degrees: clock.degrees - 360 } : clock);

/** + when two directions agree, − when they oppose each other, 0 when they are square (within a thousandth). */
function agreementOf(direction: Triple, view: Triple): number {
  const along = direction[0] * view[0] + direction[1] * view[1] + direction[2] * view[2];
  const size = Math.sqrt(direction[0] * direction[0] + direction[1] * direction[1] + direction[2] * direction[2]);
  return Math.abs(along) < 1e-3 * size ? 0 : along;
}
