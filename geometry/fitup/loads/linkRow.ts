import type { Vector } from '../../core/vector';
import type { Buckling } from './buckling';

/**
 * What a row is of. `rod`: straight, pulled or pushed at its ends. `leg`: of a strut's lower arm on which nothing bears. `beam`: a
 * rod that carries a spring, damper or bar link. `arm`: two rods with one outer point that carry something, one body.
 * `joint`: what several links together put on the knuckle at a point that they share. `held`: the wheel, where the file
 * names nothing that carries it.
 */
export type LinkKind =
  'rod' | 'leg' | 'beam' | 'arm' | 'trailingArm' | 'strut' | 'spring' | 'damper' | 'barLink' | 'bar' | 'joint' | 'held';

/** One end of a link: what the link puts on the part that it is joined to there. */
export interface LinkEnd {
  /** name of the point */
  readonly point: string;
  /** the part that takes it: `body`, `knuckle`, `ground`, or another row's link */
  readonly on: string;
  /** [mm] */
  readonly at: Vector;
  /** [N] */
  readonly force: Vector;
  /** [N·mm]; null where the joint is a ball, which holds none */
  readonly moment: Vector | null;
}

export interface Bending {
  /** greatest bending moment, without its sense [N·mm] */
  readonly moment: number;
  /** where it is [mm] */
  readonly at: Vector;
  /** in words, where the place has a name */
  readonly place: string;
}

/** What one link carries in one case. */
export interface LinkRow {
  readonly link: string;
  readonly kind: LinkKind;
  /** along the line of its ends, tension + [N]; of a beam the larger of the two sides of what bears on it; null: it has no one line */
  readonly axial: number | null;
  readonly ends: readonly LinkEnd[];
  readonly bending: Bending | null;
  readonly buckling: Buckling | null;
  /** "bending" or "buckling" -> why it is null */
  readonly why: Readonly<Record<string, string>>;
}

/** An end at a ball, which holds no moment. */
export const ball = (point: string, on: string, at: Vector, force: Vector): LinkEnd => ({ point, on, at, force, moment: null });
