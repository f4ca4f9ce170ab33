import type { ReactNode } from 'react';
import { setupNames, type AxleName, type CarDocument, type SideName } from '../../../geometry/index';
import { NumberField } from '../../look/controls/NumberField';

/** Where the car stands while it is loaded. */
export interface LoadsAsked {
  /** null: the one on the bench */
  readonly setup: string | null;
  readonly side: SideName;
  /** from where the car stands, with roll the heave [mm] */
  readonly travel: number;
  readonly rack: number;
  /** + left side up */
  readonly rollDeg: number;
}

export const AT_REST: LoadsAsked = { setup: null, side: 'left', travel: 0, rack: 0, rollDeg: 0 };

interface LoadsQuestionProps {
  readonly document: CarDocument;
  readonly axle: AxleName;
  readonly setup: string;
  readonly asked: LoadsAsked;
  readonly onChange: (asked: LoadsAsked) => void;
  readonly children?: ReactNode;
}

/** Far past any travel, so that only a slip of the hand is refused [mm]. */
const MOST = 500;
const STEP = 1;
const MOST_ROLL = 20;
const ROLL_STEP = 0.5;

/** Of which wheel, in which setup, and at which position the links are in balance. */
export const LoadsQuestion = ({ document, axle, setup, asked, onChange, children }: LoadsQuestionProps) => {
  const names = setupNames(document);
  const places = [
    { key: 'travel', words: 'travel', label: 'Travel from where the car stands' },
    ...(document[axle]?.steering ? [{ key: 'rack', words: 'rack', label: 'Rack' } as const] : []),
  ] as const;
  return (
    <div className="fitupask">
      <select
        className="pick"
        aria-label="Wheel"
        value={asked.side}
        onChange={(event) => onChange({ ...asked, side: event.target.value as SideName })}
      >
        <option value="left">{axle} left</option>
        <option value="right">{axle} right</option>
      </select>
      {names.length > 1 && (
        <>
          <span className="quiet">in</span>
          <select
            className="pick"
            aria-label="Setup that is loaded"
            value={asked.setup ?? setup}
            onChange={(event) => onChange({ ...asked, setup: event.target.value === setup ? null : event.target.value })}
          >
            {names.map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </>
      )}
      {places.map(({ key, words, label }) => (
        <span key={key} className="casefield">
          <span className="quiet" aria-hidden="true">
            {words}
          </span>
          <NumberField
            label={`${label}, mm`}
            value={asked[key]}
            unit="mm"
            measures="length"
            min={-MOST}
            max={MOST}
            decimals={1}
            onSet={(value) => onChange({ ...asked, [key]: value })}
            onStep={(steps) => onChange({ ...asked, [key]: Math.round((asked[key] + steps * STEP) * 1000) / 1000 })}
            onHome={() => onChange({ ...asked, [key]: 0 })}
          />
        </span>
      ))}
      <span className="casefield">
        <span className="quiet" aria-hidden="true">
          roll
        </span>
        <NumberField
          label="Roll, plus with the left side up, degrees"
          value={asked.rollDeg}
          unit="°"
          measures="angle"
          min={-MOST_ROLL}
          max={MOST_ROLL}
          decimals={2}
          onSet={(rollDeg) => onChange({ ...asked, rollDeg })}
          onStep={(steps) => onChange({ ...asked, rollDeg: Math.round((asked.rollDeg + steps * ROLL_STEP) * 1000) / 1000 })}
          onHome={() => onChange({ ...asked, rollDeg: 0 })}
        />
      </span>
      <span className="spread" />
      {children}
    </div>
  );
};
