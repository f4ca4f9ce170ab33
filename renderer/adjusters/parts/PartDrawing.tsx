import type { ReactNode } from 'react';
import type { AdjusterDocument } from '../../../geometry/index';
import { ClampEccentricPart, EccentricBoltPart, OffsetBushingPart } from './RotaryParts';
import { PerchPart, ShimStackPart, TopPlatePart, TurnbucklePart } from './SlidingParts';

export interface PartDrawingProps {
  readonly adjuster: AdjusterDocument;
  /** in the file's unit; null: nothing set */
  readonly value: number | null;
  /** millimetres in one unit of length of the file */
  readonly mm: number;
  readonly pivotToBolt: number | undefined;
  /** whose part it is: the right one's clock is mirrored; the left one where both are alike */
  readonly side?: 'left' | 'right';
  readonly size: number;
  readonly className?: string;
}

/** A plate slides flat; a slide of one direction that is mostly upright, or one with shims, is a stack under a joint. */
const isStack = (adjuster: Extract<AdjusterDocument, { kind: 'slide' }>): boolean =>
  adjuster.shims !== undefined || (adjuster.along !== 'spindle' && Math.abs(adjuster.along[2]) > 0.7);

const drawingOf = ({ adjuster, value, mm, pivotToBolt, side = 'left' }: PartDrawingProps): ReactNode => {
  const number = value ?? 0;
  switch (adjuster.kind) {
    case 'slide':
      return isStack(adjuster) ? (
        <ShimStackPart adjuster={adjuster} value={number} mm={mm} />
      ) : (
        <TopPlatePart adjuster={adjuster} value={number} mm={mm} />
      );
    case 'eccentric-bolt':
      return <EccentricBoltPart adjuster={adjuster} value={number} mm={mm} />;
    case 'offset-bushing':
      return <OffsetBushingPart adjuster={adjuster} value={value} mm={mm} side={side} />;
    case 'clamp-eccentric':
      return <ClampEccentricPart adjuster={adjuster} value={number} mm={mm} pivotToBolt={pivotToBolt} />;
    case 'turnbuckle':
      return <TurnbucklePart adjuster={adjuster} value={number} mm={mm} />;
    case 'perch':
      return <PerchPart adjuster={adjuster} value={number} mm={mm} />;
  }
};

/** The part as the fitter sees it, standing at its setting. */
export const PartDrawing = (props: PartDrawingProps) => (
  <svg
    className={`part ${props.className ?? ''}`}
    width={props.size}
    height={props.size}
    viewBox="-3 -3 126 126"
    aria-hidden="true"
  >
    {drawingOf(props)}
  </svg>
);
