import {
  AXIS_WORDS,
  POINT_UNITS,
  type AxisWord,
  type CarDocument,
  type AxleName,
  type FrameAxes,
  type PointUnit,
} from '../../../geometry/index';
import { VerdictShape } from '../../look/controls/VerdictShape';
import { useUnits } from '../../look/units';
import { shownQuantity } from '../../units/shownQuantity';
import type { ListAnswer, ListQuestion } from './question';

interface ListOptionsProps {
  readonly car: CarDocument;
  readonly axle: AxleName;
  readonly question: ListQuestion;
  readonly answer: ListAnswer;
  readonly isShiftKept: boolean;
  /** whether a point of the car stands where a new car begins with it: nobody has measured it */
  readonly isTypical: (point: string) => boolean;
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
export const ListOptions = ({ car, axle, question, answer, isShiftKept, isTypical, onAsk }: ListOptionsProps) => {
  const length = shownQuantity({ quantity: 'length', decimals: 2 }, useUnits());
  const setAxis = (index: number, word: AxisWord) =>
    onAsk({ axes: answer.axes.map((old, i) => (i === index ? word : old)) as unknown as FrameAxes });
  const setShift = (index: number, text: string) =>
    onAsk({ shift: question.shift.map((old, i) => (i === index ? text : old)) as unknown as ListQuestion['shift'] });
  const names = Object.keys(car[axle]?.points ?? {});
  const datum = answer.brought?.datum ?? null;
  const guessed = question.datum.filter(isTypical);
  const switchDatum = (name: string) =>
    onAsk({ datum: question.datum.includes(name) ? question.datum.filter((one) => one !== name) : [...question.datum, name] });
  const setRow = (name: string, row: string) => {
    const { [name]: _before, ...rest } = question.datumRows;
    onAsk({ datumRows: row === '' ? rest : { ...rest, [name]: row } });
  };
  /** The row that is a point already, by its name or by hand. */
  const rowOf = (name: string): string | undefined => answer.rows.find(({ point }) => point === name)?.name;
  const rowNames = [...new Set(answer.list.rows.map(({ name }) => name))];
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
              value={answer.axes[index]}
              onChange={(event) => setAxis(index, event.target.value as AxisWord)}
            >
              {AXIS_WORDS.map((word) => (
                <option key={word}>{word}</option>
              ))}
            </select>
          </label>
        ))}
      </div>
      <div className="optionrow">
        {(['X', 'Y', 'Z'] as const).map((axis, index) => (
          <label key={axis}>
            Add to {axis}
            {answer.unit === null ? '' : `, ${answer.unit}`}
            <input
              type="text"
              inputMode="decimal"
              autoComplete="off"
              aria-label={`Add to ${axis}`}
              placeholder="0"
              value={question.shift[index]}
              onChange={(event) => setShift(index, event.target.value)}
            />
          </label>
        ))}
      </div>
      <p className="quiet">
        {answer.handed === null ? 'Two axes run along the same line.' : `${answer.handed === 'right' ? 'Right' : 'Left'}-handed.`}{' '}
        {isShiftKept && <b>What is added is that of the list before. </b>}
        What is added is in the list’s own unit and axes{question.datum.length > 0 ? '; named points take it away again' : ''}.
      </p>
      <div className="optionrow">
        <label>
          Measured on
          <select
            aria-label="Measured on"
            value={answer.side}
            onChange={(event) => onAsk({ side: event.target.value as ListAnswer['side'], sides: null })}
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
            value={answer.sides}
            onChange={(event) => onAsk({ sides: event.target.value as ListQuestion['sides'] })}
          >
            {SIDES_OF[answer.side].map(([value, label]) => (
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
            ? 'None: the list is in the car’s frame, but for what is added above. Or tick three or more points whose places on the car are known; a row with another name is chosen beside the tick.'
            : datum
              ? `Fitted: rms ${length.format(datum.rms)} ${length.unit}.${datum.points.length === 3 ? ' Three points would fit a mirrored list as well; a fourth, off their plane, tells.' : ''}`
              : `${question.datum.length} ticked.`}
        </p>
        {guessed.length > 0 && (
          <p className="previewwarning">
            <span className="chip close">
              <VerdictShape verdict="close" />
              look
            </span>{' '}
            {guessed.join(', ')}: still typical on this car. Give the place that is known first, in the table of points; the list
            would be moved onto a guess.
          </p>
        )}
        <div className="datumpoints">
          {names.map((name) => {
            const miss = datum?.points.find((point) => point.name === name)?.miss;
            return (
              <div key={name} className="datumpoint">
                <label>
                  <input type="checkbox" checked={question.datum.includes(name)} onChange={() => switchDatum(name)} />
                  {name}
                  {miss !== undefined && (
                    <span className="miss">
                      {length.format(miss)} {length.unit} off
                    </span>
                  )}
                </label>
                {question.datum.includes(name) && (
                  <select
                    aria-label={`${name} in the list`}
                    value={question.datumRows[name] ?? ''}
                    onChange={(event) => setRow(name, event.target.value)}
                  >
                    <option value="">{rowOf(name) ?? 'which row?'}</option>
                    {rowNames.map((row) => (
                      <option key={row}>{row}</option>
                    ))}
                  </select>
                )}
              </div>
            );
          })}
        </div>
      </fieldset>
    </div>
  );
};
