import type { AdjusterDocument } from '../../geometry/index';
import { stepSetting } from '../compute/adjusterSteps';
import { clockSeen } from './clockWords';
import { dragSetting } from './dragSetting';
import { useHand } from './useHand';

interface Turning {
  readonly adjuster: AdjusterDocument;
  /** whose part is turned: the right one's clock is mirrored */
  readonly side: 'left' | 'right';
  readonly value: number | null;
  readonly locked: boolean;
  readonly onSet: (value: number) => void;
}

const senseOf = (adjuster: AdjusterDocument, side: 'left' | 'right'): 1 | -1 =>
  adjuster.kind === 'offset-bushing' && clockSeen(90, adjuster.axis, adjuster.seenFrom, side) !== 90 ? -1 : 1;

/** Turning an adjuster by its drawing, on its marks, with Shift between them. */
export const useTurning = ({ adjuster, side, value, locked, onSet }: Turning) =>
  useHand<HTMLDivElement>({
    value,
    locked,
    drag: (start, from, to, fine) => dragSetting(adjuster, start, from, to, senseOf(adjuster, side), fine),
    stepped: (steps) => stepSetting(adjuster, value, steps),
    onSet,
  });
