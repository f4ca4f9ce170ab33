import { VerdictShape } from '../look/controls/VerdictShape';
import { useBench } from '../shell/benchContext';
import { useFailureWords } from './useFailureWords';

/** Why the position or setting asked for has no answer, and what is still shown. Typed numbers stay as they are. */
export const Unreachable = () => {
  const words = useFailureWords();
  const shown = useBench((state) => state.shown !== null);
  if (!words) return null;
  return (
    <div className="banner" role="alert">
      <VerdictShape verdict="broken" />
      <div>
        <b>{words.title}</b>
        <p>
          {words.detail} {shown ? 'Picture and numbers stay at the last position that closed.' : 'There is no position to show.'}
        </p>
      </div>
    </div>
  );
};
