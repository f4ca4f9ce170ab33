import { findReading } from '../../geometry/index';
import { useUnits } from '../look/units';
import { inSentence } from '../readings/inSentence';
import { shownReading, withUnit } from '../units/shownQuantity';
import { useNextStep } from './useNextStep';

const NAMED = 3;

/** What one more step of what is held does, by what counts most; or that there is none. */
export const NextStepWords = () => {
  const units = useUnits();
  const next = useNextStep();
  if (!next) return null;
  if (next.kind === 'end') return <>End of the range.</>;
  if (next.kind === 'unreachable') return <>Next step: the linkage does not close there.</>;
  const words = next.effects.slice(0, NAMED).map(({ key, name, change }) => {
    const entry = findReading(key);
    const reading = entry && shownReading(entry, units);
    return { key, text: `${inSentence(name)} ${reading ? withUnit(reading.formatChange(change), reading.unit) : ''}` };
  });
  if (words.length === 0) return <>Next step: nothing that counts changes here.</>;
  return (
    <>
      Next step:{' '}
      {words.map(({ key, text }, index) => (
        <span key={key}>
          {index > 0 && ', '}
          <b>{text}</b>
        </span>
      ))}
    </>
  );
};
