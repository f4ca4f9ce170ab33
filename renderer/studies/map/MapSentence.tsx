import { useId } from 'react';
import { findReading, nameOfKey, type AxleName, type CarDocument } from '../../../geometry/index';
import { useUnits } from '../../look/units';
import { shownReading } from '../../units/shownQuantity';
import { FaultList, faultIdOf } from '../question/FaultList';
import { PlacePicker } from '../question/PlacePicker';
import { QuestionField } from '../question/QuestionField';
import { ReadingSelect } from '../question/ReadingSelect';
import { SideSelect } from '../question/SideSelect';
import { ownToe } from '../question/toeChoice';
import { ToePicker } from '../question/ToePicker';
import { MOTION_WORDS, MOTIONS, withMapReading, type MapFault, type MapForm } from './mapForm';

interface SentenceProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
  readonly form: MapForm;
  readonly faults: MapFault;
  readonly isRunning: boolean;
  readonly onChange: (form: MapForm) => void;
  readonly onDraw: () => void;
}

const PartOptions = ({ document, axle }: { readonly document: CarDocument; readonly axle: AxleName }) =>
  Object.entries(document[axle]?.adjusters ?? {}).map(([name, { label, locked }]) => (
    <option key={name} value={name}>
      {(label ?? nameOfKey(name)) + (locked === undefined ? '' : ' (locked)')}
    </option>
  ));

const spokenUnit = (unit: string): string => (unit === '°' || unit === '' ? 'degrees' : unit);

/** The question of a map: a sentence with fields in it. */
export const MapSentence = ({ form, document, setup, axle, faults, isRunning, onChange, onDraw }: SentenceProps) => {
  const units = useUnits();
  const id = useId();
  const entry = findReading(form.reading);
  const second = findReading(form.second);
  const shown = entry && shownReading(entry, units);
  const shownSecond = second && shownReading(second, units);
  const toe = ownToe(document, setup, [axle]);
  const faultId = (field: keyof MapFault) => faultIdOf({ idBase: id, faults }, field);
  const hasWheel = entry?.of === 'corner' || second?.of === 'corner';
  return (
    <form
      className="ask"
      aria-label="Map"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onDraw();
      }}
    >
      <div className="sentence">
        <span>Show {axle}</span>
        <ReadingSelect
          label="Reading"
          value={form.reading}
          owners={['corner', 'axle', 'car']}
          onChange={(reading) => onChange(withMapReading(form, document, reading))}
        />
        {hasWheel && (
          <select
            className="pick"
            aria-label="Whose reading"
            value={form.wheel}
            onChange={(event) => onChange({ ...form, wheel: event.target.value as MapForm['wheel'] })}
          >
            <option value="left">left</option>
            <option value="right">right</option>
          </select>
        )}
        <span>over</span>
        <select
          className="pick reading"
          aria-label="Across"
          value={form.x}
          onChange={(event) => onChange({ ...form, x: event.target.value })}
        >
          <PartOptions document={document} axle={axle} />
        </select>
        <span>×</span>
        <select
          className="pick reading"
          aria-label="Up"
          aria-invalid={faults.axes !== undefined}
          aria-describedby={faultId('axes') ?? undefined}
          value={form.y}
          onChange={(event) => onChange({ ...form, y: event.target.value })}
        >
          <PartOptions document={document} axle={axle} />
          <optgroup label="A motion">
            {MOTIONS.filter((motion) => motion !== 'rack' || document[axle]?.steering !== undefined).map((motion) => (
              <option key={motion} value={`motion:${motion}`}>
                {MOTION_WORDS[motion]}
              </option>
            ))}
          </optgroup>
        </select>
        <SideSelect label="Wheels that are turned" side={form.side} onChange={(side) => onChange({ ...form, side })} />
        {shown && (
          <>
            <span>mark</span>
            <QuestionField
              label={`Marked value, ${spokenUnit(shown.unit)}`}
              field={form.wanted}
              shown={shown}
              faultId={faultId('wanted')}
              onChange={(wanted) => onChange({ ...form, wanted })}
            />
            <span>±</span>
            <QuestionField
              label={`Tolerance, ${spokenUnit(shown.unit)}`}
              className="tolerance"
              field={form.tolerance}
              shown={shown}
              faultId={faultId('tolerance')}
              onChange={(tolerance) => onChange({ ...form, tolerance })}
            />
          </>
        )}
        <span>where</span>
        <SecondSelect form={form} onChange={onChange} />
        {shownSecond && (
          <>
            <select
              className="pick"
              aria-label="Which side of the threshold"
              value={form.sense}
              onChange={(event) => onChange({ ...form, sense: event.target.value as MapForm['sense'] })}
            >
              <option value="above">above</option>
              <option value="below">below</option>
            </select>
            <QuestionField
              label={`Threshold, ${spokenUnit(shownSecond.unit)}`}
              field={form.threshold}
              shown={shownSecond}
              faultId={faultId('threshold')}
              onChange={(threshold) => onChange({ ...form, threshold })}
            />
          </>
        )}
        <span>at</span>
        <PlacePicker of="the map" place={form.place} onChange={(place) => onChange({ ...form, place })} />
        <ToePicker
          own={toe}
          choice={form.toe}
          faultId={faultId('toe')}
          onChange={(choice) => onChange({ ...form, toe: choice })}
        />
        <span className="spread" />
        <button type="submit" className="button primary run" disabled={isRunning}>
          Draw <span className="key">Enter</span>
        </button>
      </div>
      <FaultList idBase={id} faults={faults} />
    </form>
  );
};

const NONE = '';
const SecondSelect = ({ form, onChange }: Pick<SentenceProps, 'form' | 'onChange'>) =>
  form.second === NONE ? (
    <button type="button" className="pick" onClick={() => onChange({ ...form, second: 'rollCentreHeight' })}>
      nothing else
    </button>
  ) : (
    <span className="secondpick">
      <ReadingSelect
        label="Second reading"
        value={form.second}
        owners={['corner', 'axle', 'car']}
        onChange={(second) => onChange({ ...form, second, threshold: { value: null, typed: null } })}
      />
      <button
        type="button"
        className="button takeaway"
        aria-label="No second reading"
        title="No second reading"
        onClick={() => onChange({ ...form, second: NONE, threshold: { value: null, typed: null } })}
      >
        ×
      </button>
    </span>
  );
