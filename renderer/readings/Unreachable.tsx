import { VerdictShape } from '../look/controls/VerdictShape';
import { useBench } from '../shell/benchContext';
import { formatNumber, formatSigned } from '../units/format';
import { failureSentences } from './failureSentences';

/** Why the position or setting asked for has no answer, and what is still shown. Typed numbers stay as they are. */
export const Unreachable = () => {
  const failure = useBench((state) => (state.answer && !state.answer.ok ? state.answer.failure : null));
  const shown = useBench((state) => state.shown !== null);
  const { travel, rollDeg, rack } = useBench((state) => state.position);
  if (!failure) return null;
  const asked = [
    travel !== 0 ? `bump ${formatSigned(travel, 1)} mm` : null,
    rollDeg !== 0 ? `roll ${formatSigned(rollDeg, 2)}°` : null,
    rack !== 0 ? `rack ${formatSigned(rack, 1)} mm` : null,
  ].filter((part) => part !== null);
  const { title, detail } = failureSentences(failure, asked.join(', '), (mm) => formatNumber(mm, mm < 1 ? 2 : 1));
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
