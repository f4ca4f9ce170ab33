import type { Vector } from '../../../geometry/index';
import { cross, dot, unit } from './directions';

/** Less than this is no turn that a hand can make [rad]. */
const NO_TURN = 0.0005;

/** What the ends of a bolt along each axis of the car are called on the left, as the file gives it: x forward, y outward, z up. */
const ENDS = ['front end', 'outer end', 'top'] as const;
const WAYS = [
  ['forward', 'rearward'],
  ['outward', 'inward'],
  ['up', 'down'],
] as const;

/**
 * How a bolt is turned to be the best one, as a fitter says it: how far, and which way the end of it goes that has a plain name.
 * @param bolt - direction as the file gives it
 * @param best - unit vector; it and its opposite are the same bolt
 * @param degrees - an angle in words, from rad; 0 or more
 */
export function boltTurnWords(bolt: Vector, best: Vector, degrees: (angle: number) => string): string {
  const from = unit(bolt);
  const main = from.reduce((most, value, i) => (Math.abs(value) > Math.abs(from[most]!) ? i : most), 0);
  const named: Vector = from[main]! < 0 ? [-from[0], -from[1], -from[2]] : from;
  const to: Vector = dot(named, best) < 0 ? [-best[0], -best[1], -best[2]] : best;
  const off = cross(named, to);
  const turn = Math.atan2(Math.sqrt(dot(off, off)), dot(named, to));
  if (turn < NO_TURN) return 'as it is';
  const ways = ([0, 1, 2] as const)
    .filter((i) => i !== main)
    .map((i) => ({ i, by: Math.asin(Math.min(1, Math.max(-1, to[i] - named[i]))) }))
    .filter(({ by }) => Math.abs(by) >= NO_TURN)
    .map(({ i, by }) => `${degrees(Math.abs(by))} ${WAYS[i][by > 0 ? 0 : 1]}`);
  return `turned by ${degrees(turn)}, its ${ENDS[main]} ${ways.join(' and ')}`;
}
