import {
  AXIS_WORDS,
  POINT_UNITS,
  type AxisWord,
  type CarDocument,
  type AxleName,
  type FrameAxes,
  type PointUnit,
} from '../../../geometry/index';
import { formatNumber } from '../../units/format';
import type { ListAnswer, ListQuestion } from './question';

interface ListOptionsProps {
  readonly car: CarDocument;
  readonly axle: AxleName;
  readonly question: ListQuestion;
  readonly answer: ListAnswer;
  readonly onAsk: (part: Partial<ListQuestion>) => void;
}

const SIDE_WORDS = { left: 'the left side', right: 'the right side', both: 'both sides' } as const;
const SIDES_OF = {
  left: [
    ['each', 'right as it is'],
    ['mirror', 'right mirrors it'],
  ],
  right: [
    ['each', 'kept as the right’s own'],
    ['mirror', 'mirrored to the left'],
  ],
  both: [
    ['each', 'each side kept'],
    ['average', 'averaged'],
  ],
} as const;

/** Unit, axes, side and datum of a list. */
export const ListOptions = ({ car, axle, question, answer, onAsk }: ListOptionsProps) => {
  const setAxis = (index: number, word: AxisWord) =>
    onAsk({ axes: question.axes.map((old, i) => (i === index ? word : old)) as unknown as FrameAxes });
  const names = Object.keys(car[axle]?.points ?? {});
  const datum = answer.brought?.datum ?? null;
  const switchDatum = (name: string) =>
    onAsk({ datum: question.datum.includes(name) ? question.datum.filter((one) => one !== name) : [...question.datum, name] });
  return (
    <div className="listoptions">
      <div className="optionrow">
        <label>
          Unit
          <select
            aria-label="Unit of the list"
            value={answer.unit ?? ''}
            onChange={(event) => onAsk({ unit: event.target.value as PointUnit })}
          >
            {answer.unit === null && <option value="">choose</option>}
            {POINT_UNITS.map((unit) => (
              <option key={unit}>{unit}</option>
            ))}
          </select>
        </label>
        {(['X', 'Y', 'Z'] as const).map((axis, index) => (
          <label key={axis}>
            {axis} is
            <select
              aria-label={`${axis} is`}
              value={question.axes[index]}
              onChange={(event) => setAxis(index, event.target.value as AxisWord)}
            >
              {AXIS_WORDS.map((word) => (
                <option key={word}>{word}</option>
              ))}
            </select>
          </label>
        ))}
      </div>
      <p className="quiet">
        {answer.handed === null ? 'Two axes run along the same line.' : `${answer.handed === 'right' ? 'Right' : 'Left'}-handed.`}
      </p>
      <div className="optionrow">
        <label>
          Measured on
          <select
            aria-label="Measured on"
            value={question.side}
            onChange={(event) => onAsk({ side: event.target.value as ListQuestion['side'], sides: 'each' })}
          >
            {Object.entries(SIDE_WORDS).map(([side, label]) => (
              <option key={side} value={side}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <label>
          and
          <select
            aria-label="and"
            value={question.sides}
            onChange={(event) => onAsk({ sides: event.target.value as ListQuestion['sides'] })}
          >
            {SIDES_OF[question.side].map(([value, label]) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </label>
      </div>
      <fieldset className="datum">
        <legend>Move to the car by named points</legend>
        <p className="quiet">
          {question.datum.length === 0
            ? 'None: the list is in the car’s frame. Or tick three or more points whose places on the car are known.'
            : datum
              ? `Fitted: rms ${formatNumber(datum.rms, 2)} mm.`
              : `${question.datum.length} ticked.`}
        </p>
        <div className="datumpoints">
          {names.map((name) => {
            const miss = datum?.points.find((point) => point.name === name)?.miss;
            return (
              <label key={name}>
                <input type="checkbox" checked={question.datum.includes(name)} onChange={() => switchDatum(name)} />
                {name}
                {miss !== undefined && <span className="miss">{formatNumber(miss, 2)} mm off</span>}
              </label>
            );
          })}
        </div>
      </fieldset>
    </div>
  );
};
