import { useMemo } from 'react';
import { findReading, setupNames, type AxleName, type CarDocument } from '../../geometry/index';
import { setupEffects } from '../compute/setupEffects';
import { useUnits } from '../look/units';
import { inSentence } from '../readings/inSentence';
import { shownReading } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import { setupDifference } from './setupDifference';

const AXLES: readonly { readonly name: AxleName; readonly label: string }[] = [
  { name: 'front', label: 'Front' },
  { name: 'rear', label: 'Rear' },
];
/** More than this is a table, not a sentence. */
const MOST_EFFECTS = 6;

interface Pair {
  readonly document: CarDocument;
  readonly name: string;
  readonly than: string;
}

const effectWords = ({ document, name, than }: Pair, axle: AxleName, units: ShownUnits): string => {
  const effects = setupEffects(document, name, document, than, axle);
  if (effects === null) return 'one of the two cannot be there';
  if (effects.length === 0) return 'nothing that matters';
  return effects
    .slice(0, MOST_EFFECTS)
    .map(({ key, name: reading, change }) => {
      const entry = findReading(key);
      if (!entry) return reading;
      const shown = shownReading(entry, units);
      return `${inSentence(reading)} ${shown.formatChange(change)}${shown.unit === '' || shown.unit === '°' ? '' : ' '}${shown.unit}`;
    })
    .join(', ');
};

export interface DifferenceListProps {
  readonly document: CarDocument;
  readonly name: string;
  readonly than: string;
  readonly onChooseThan: (name: string) => void;
}

/** What a setup does otherwise than another one: in the fitter's words, and what that does to the readings. */
export const DifferenceList = ({ document, name, than, onChooseThan }: DifferenceListProps) => {
  const units = useUnits();
  const words = useMemo(() => setupDifference(document, name, document, than, units), [document, name, than, units]);
  const others = setupNames(document).filter((other) => other !== name);
  if (others.length === 0) return <p className="quiet">The only setup: there is nothing to compare it with.</p>;
  return (
    <>
      <label className="thanchoice">
        <span className="quiet">against</span>
        <select aria-label={`What ${name} is held against`} value={than} onChange={(event) => onChooseThan(event.target.value)}>
          {others.map((other) => (
            <option key={other} value={other}>
              {other}
            </option>
          ))}
        </select>
      </label>
      {words.length === 0 ? (
        <p>Nothing differs.</p>
      ) : (
        <>
          <ul className="differences">
            {words.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <p className="effectshead">Standing, each at its own ride height, that makes, left side and axle:</p>
          <dl className="facts">
            {AXLES.filter((axle) => document[axle.name]).map((axle) => (
              <div key={axle.name}>
                <dt>{axle.label}</dt>
                <dd>{effectWords({ document, name, than }, axle.name, units)}</dd>
              </div>
            ))}
          </dl>
        </>
      )}
    </>
  );
};
