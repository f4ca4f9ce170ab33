import { useId, useRef, type ChangeEvent } from 'react';
import type { AxleName, CarDocument } from '../../../geometry/index';
import type { MotionRanges } from '../../compute/motionRanges';
import { useUnits } from '../../look/units';
import { shownQuantity } from '../../units/shownQuantity';
import { PlacePicker } from '../question/PlacePicker';
import { QuestionField } from '../question/QuestionField';
import { ReadingsPicker } from '../question/ReadingsPicker';
import { openList, SWEEP_MOTIONS, SWEEP_WORDS, withMotion, type SweepFault, type SweepForm, type SweepMotion } from './sweepForm';

interface SentenceProps {
  readonly form: SweepForm;
  readonly faults: SweepFault;
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
  readonly ranges: MotionRanges;
  readonly onChange: (form: SweepForm) => void;
}

const COUNT = { unit: '', toShown: (value: number) => value, fromShown: (value: number) => value, format: String };

/** The question of a sweep: a sentence with fields in it. */
export const SweepSentence = ({ form, faults, document, setup, axle, ranges, onChange }: SentenceProps) => {
  const units = useUnits();
  const id = useId();
  const faultId = (field: keyof SweepFault): string | null => (faults[field] === undefined ? null : `${id}-${field}`);
  const isRoll = form.motion === 'roll';
  const shown = shownQuantity({ quantity: isRoll ? 'angle' : 'length', decimals: 1 }, units);
  const spoken = isRoll ? 'degrees' : shown.unit;
  const isMotion = form.motion !== 'combined' && form.motion !== 'list';
  const hasBoth = document.front !== undefined && document.rear !== undefined;
  return (
    <form className="ask" aria-label="Sweep" onSubmit={(event) => event.preventDefault()}>
      <div className="sentence">
        <span>Readings of</span>
        <select
          className="pick"
          aria-label="Axles"
          value={form.axles}
          onChange={(event) => onChange({ ...form, axles: event.target.value as SweepForm['axles'] })}
        >
          <option value="one">the {axle} axle</option>
          {hasBoth && <option value="both">both axles and the car</option>}
        </select>
        <span>
          of <b>{setup}</b> over
        </span>
        <select
          className="pick"
          aria-label="Motion"
          value={form.motion}
          onChange={(event) => onChange(withMotion(form, event.target.value as SweepMotion, ranges))}
        >
          {SWEEP_MOTIONS.filter((motion) => motion !== 'steer' || ranges.rack !== null).map((motion) => (
            <option key={motion} value={motion}>
              {SWEEP_WORDS[motion]}
            </option>
          ))}
        </select>
        {isMotion && (
          <>
            <span>from</span>
            <QuestionField
              label={`From, ${spoken}`}
              field={form.from}
              shown={shown}
              faultId={faultId('from')}
              onChange={(from) => onChange({ ...form, from })}
            />
            <span>to</span>
            <QuestionField
              label={`To, ${spoken}`}
              field={form.to}
              shown={shown}
              faultId={faultId('to')}
              onChange={(to) => onChange({ ...form, to })}
            />
            <span>in</span>
            <QuestionField
              label="Positions"
              className="tolerance"
              field={form.steps}
              shown={COUNT}
              faultId={faultId('steps')}
              onChange={(steps) => onChange({ ...form, steps })}
            />
            <span>positions, the rest at</span>
            <PlacePicker of="what is not swept" place={form.held} onChange={(held) => onChange({ ...form, held })} />
          </>
        )}
        {form.motion === 'list' && <OpenList form={form} onChange={onChange} />}
        <span>showing</span>
        <ReadingsPicker
          label="columns and curves"
          owners={['corner', 'axle', 'car']}
          chosen={form.readings}
          onChange={(readings) => onChange({ ...form, readings })}
        />
      </div>
      {(Object.keys(faults) as (keyof SweepFault)[]).map((field) => (
        <p key={field} id={`${id}-${field}`} className="qfault" role="alert">
          {LABELS[field]}: {faults[field]}.
        </p>
      ))}
    </form>
  );
};

const LABELS: Readonly<Record<keyof SweepFault, string>> = {
  from: 'From',
  to: 'To',
  steps: 'Positions',
  held: 'The rest',
  rows: 'Positions',
};

const OpenList = ({ form, onChange }: Pick<SentenceProps, 'form' | 'onChange'>) => {
  const opener = useRef<HTMLInputElement>(null);
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    event.target.value = '';
    if (file) onChange({ ...form, list: openList(file.name, new Uint8Array(await file.arrayBuffer())) });
  };
  return (
    <>
      <button type="button" className="button" onClick={() => opener.current?.click()}>
        Open a CSV…
      </button>
      <input
        ref={opener}
        type="file"
        hidden
        accept=".csv,text/csv,text/plain"
        aria-label="List of positions"
        onChange={(event) => void take(event)}
      />
      {form.list && (
        <span className="quiet">
          {form.list.name}
          {form.list.ok && form.list.readAs !== null && `, read with ${form.list.readAs}`}
        </span>
      )}
    </>
  );
};
