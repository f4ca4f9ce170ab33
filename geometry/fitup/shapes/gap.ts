import { add, scale, subtract, type Vector } from '../../core/vector';
import type { Core } from '../distance/core';

/** How two solids stand to each other. */
export interface Gap {
  /** least distance [mm]; negative where they cut into each other: how deep, or 0 where no depth is known */
  readonly distance: number;
  /** they cut, and how deep is not known: a skin or a mesh */
  readonly isCutOnly: boolean;
  /** how much less the distance could be, at most [mm]: 0 but for what turns */
  readonly slack: number;
  /** a point of each, in the frame of the first */
  readonly points: readonly [Vector, Vector];
}

export const NO_GAP: Gap = {
  distance: Infinity,
  isCutOnly: false,
  slack: 0,
  points: [
    [0, 0, 0],
    [0, 0, 0],
  ],
};

/**
 * What a search wants to know of a gap: whether it is below `cutoff`. Where it is not, a distance of `cutoff` may stand for it.
 * What an earlier one was like is where the next is looked for first; it decides only how long that takes.
 */
export interface GapSearch {
  readonly cutoff: number;
  readonly hint: GapHint;
  /** of what turns, to the last digits; else to a hundredth of a millimetre */
  readonly isFine: boolean;
}

export interface GapHint {
  /** the turns at which the gap was least [rad] */
  turns: readonly [number, number];
  /** the way along which the solids were least deep in each other, in the frame of the first */
  way: Vector | null;
}

export const noHint = (): GapHint => ({ turns: [0, 0], way: null });

/** A search that wants the gap itself. */
export const wholeGap = (): GapSearch => ({ cutoff: Infinity, hint: noHint(), isFine: true });

/** Stands for a gap that is no less than what a search cares for. */
export const beyond = (cutoff: number): Gap => ({ ...NO_GAP, distance: cutoff });

export const centreOf = (shape: Core): Vector => [shape[1], shape[2], shape[3]];

/** From the nearest points of two cores to those of their surfaces. */
export function surfacePoints(points: Float64Array, distance: number, roundA: number, roundB: number): readonly [Vector, Vector] {
  const onA: Vector = [points[0], points[1], points[2]];
  const onB: Vector = [points[3], points[4], points[5]];
  const way = scale(subtract(onB, onA), 1 / distance);
  return [add(onA, scale(way, roundA)), subtract(onB, scale(way, roundB))];
}
