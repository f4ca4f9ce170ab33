import { partDrawing, type PartStanding } from '../../../geometry/index';
import { Shapes } from './Shapes';

export interface PartDrawingProps extends Omit<PartStanding, 'side'> {
  /** whose part it is: the right one's clock is mirrored; the left one where both are alike */
  readonly side?: 'left' | 'right';
  readonly size: number;
  readonly className?: string;
}

/** The part as the fitter sees it, standing at its setting. */
export const PartDrawing = ({ size, className, side = 'left', ...standing }: PartDrawingProps) => (
  <svg className={`part ${className ?? ''}`} width={size} height={size} viewBox="-3 -3 126 126" aria-hidden="true">
    <Shapes of={partDrawing({ ...standing, side })} />
  </svg>
);
