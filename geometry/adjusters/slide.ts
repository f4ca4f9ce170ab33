import { scale, type Vector } from '../core/vector';
import type { AdjusterOf } from './adjustment';

/** A slide moves its point by `setting` [mm] along its unit vector; a spacer along the spindle of its own corner. */
export const slideShift = (slide: AdjusterOf<'slide'>, setting: number, spindle: Vector): Vector =>
  scale(slide.along === 'spindle' ? spindle : slide.along, setting);
