import type { AdjusterDocument, SideName } from '../car/document';
import { clampEccentric, eccentricBolt, offsetBushing } from './rotaryParts';
import type { Shape } from './shape';
import { perch, slide, turnbuckle } from './slidingParts';

/** Side of the square that a part is drawn in. */
export const PART_SIZE = 120;

/** A part standing at a setting. */
export interface PartStanding {
  readonly adjuster: AdjusterDocument;
  /** in the file's unit; null: nothing set */
  readonly value: number | null;
  /** millimetres in one unit of length of the file */
  readonly mm: number;
  /** of a clamp eccentric: distance of its two bolts in the file's unit */
  readonly pivotToBolt: number | undefined;
  /** whose part it is: the right one's clock is mirrored */
  readonly side: SideName;
}

/** The part as the fitter sees it, standing at its setting, in a square of `PART_SIZE`. */
export const partDrawing = ({ adjuster, value, mm, pivotToBolt, side }: PartStanding): readonly Shape[] => {
  const number = value ?? 0;
  switch (adjuster.kind) {
    case 'slide':
      return slide(adjuster, number, mm);
    case 'eccentric-bolt':
      return eccentricBolt(adjuster, number, mm);
    case 'offset-bushing':
      return offsetBushing(adjuster, value, mm, side);
    case 'clamp-eccentric':
      return clampEccentric(adjuster, number, mm, pivotToBolt);
    case 'turnbuckle':
      return turnbuckle(adjuster, number, mm);
    case 'perch':
      return perch(adjuster, number, mm);
  }
};
