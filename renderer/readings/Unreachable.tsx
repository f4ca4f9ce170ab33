import { VerdictShape } from '../look/controls/VerdictShape';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { formatNumber } from '../units/format';
import { failureSentences } from './failureSentences';
import { movedWords } from './positionWords';

/** Why the position or setting asked for has no answer, and what is still shown. Typed numbers stay as they are. */
export const Unreachable = () => {
  const failure = useBench((state) => (state.answer && !state.answer.ok ? state.answer.failure : null));
  const shown = useBench((state) => state.shown !== null);
  const position = useBench((state) => state.position);
  const units = useUnits();
  if (!failure) return null;
  const { title, detail } = failureSentences(failure, movedWords(position, units), (mm) => formatNumber(mm, mm < 1 ? 2 : 1));
  return (
    <div className="banner" role="alert">
      <VerdictShape verdict="broken" />
      <div>
        <b>{title}</b>
        <p>
          {detail} {shown ? 'Picture and numbers stay at the last position that closed.' : 'There is no position to show.'}
        </p>
      </div>
    </div>
  );
};
