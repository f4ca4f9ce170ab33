import { useMemo } from 'react';
import type { AxleName, SideName } from '../../geometry/index';
import { VerdictShape } from '../look/controls/VerdictShape';
import { useUnits } from '../look/units';
import { useBench, useWindow } from '../shell/benchContext';
import { undoStep } from '../state/actions/editSetup';
import { shownQuantity, withUnit } from '../units/shownQuantity';
import { farLimit, farPoints, stepThatMoved } from './farMoved';
import './farNotice.css';

interface FarNoticeProps {
  readonly axle: AxleName;
  readonly side: SideName;
  /** of this point alone; of every point of the side where left out */
  readonly point?: string;
}

/** As many points are named; of a whole car that was put elsewhere they are counted. */
const NAMED = 3;

/** Says which points went farther than pickup points go. They are taken all the same, and the step can be undone here. */
export const FarNotice = ({ axle, side, point }: FarNoticeProps) => {
  const { store } = useWindow();
  const units = useUnits();
  const history = useBench((state) => state.history);
  const file = useBench((state) => state.file);
  const far = useMemo(() => farPoints({ history, file }, axle, side), [history, file, axle, side]);
  const told = point === undefined ? far : far.filter(({ line }) => line.name === point);
  const [first] = told;
  if (!first) return null;
  const length = shownQuantity({ quantity: 'length', decimals: 0 }, units);
  const words = (mm: number): string => withUnit(length.format(mm), length.unit);
  const { mm, from } = farLimit({ file });
  const step = stepThatMoved({ history, file }, axle, side);
  const what =
    told.length === 1
      ? `${first.line.name} is ${words(first.distance)} from ${from}`
      : told.length <= NAMED
        ? `${told.map(({ line, distance }) => `${line.name} (${words(distance)})`).join(', ')} are far from ${from}`
        : `${told.length} points are more than ${words(mm)} from ${from}`;
  return (
    <p className={`farnotice${point === undefined ? '' : ' short'}`} role="status">
      <VerdictShape verdict="close" />
      <span>
        <b>{what}</b>
        {point === undefined &&
          `: farther than the ${words(mm)} that a pickup point goes. It is taken as it stands; is it a slipped point, a sign or a unit?`}
      </span>
      {step !== null && (
        <button type="button" className="button" onClick={() => undoStep(store)}>
          Undo: {step}
        </button>
      )}
    </p>
  );
};
