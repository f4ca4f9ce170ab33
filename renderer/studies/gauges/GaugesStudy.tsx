import { useId, useMemo } from 'react';
import type { AxleName, CarDocument } from '../../../geometry/index';
import { assembleSetup } from '../../compute/assembleBench';
import { motionRanges } from '../../compute/motionRanges';
import { standingRow } from '../../compute/standing';
import { KeepTable } from '../../lengths/KeepTable';
import { useUnits } from '../../look/units';
import { useBench } from '../../shell/benchContext';
import { shownQuantity } from '../../units/shownQuantity';
import { FailureBanner } from '../answers/FailureBanner';
import { KeptQuestions } from '../kept/KeptQuestions';
import { useQuestionPage } from '../kept/useQuestionPage';
import { FaultList, faultIdOf } from '../question/FaultList';
import { QuestionField } from '../question/QuestionField';
import { FloorGauge } from './FloorGauge';
import {
  FIELDS,
  GAUGE_WORDS,
  gaugeFaults,
  GAUGES,
  gaugesForms,
  type GaugeFault,
  type GaugeForm,
  type GaugeName,
  type WheelName,
} from './gaugeForm';
import { gaugePlainTable, gaugeTable, type GaugeTable } from './gaugeTable';
import './gauges.css';

/** Readings as a shop's instruments show them. */
export const GaugesStudy = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  return bench && <GaugesOf document={bench.document} setup={bench.setup} axle={axle} />;
};

interface GaugesProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
}

const GaugesOf = ({ document, setup, axle }: GaugesProps) => {
  const units = useUnits();
  const ranges = useMemo(() => motionRanges(document, axle, standingRow({ document, setup }, axle)), [document, setup, axle]);
  const forms = useMemo(() => gaugesForms(document, axle, ranges), [document, axle, ranges]);
  const page = useQuestionPage(document, axle, forms);
  const { form, change: setForm } = page;
  const faults = gaugeFaults(form);
  const isReadable = Object.keys(faults).length === 0;
  const car = assembleSetup(document, setup);
  const table = useMemo(
    () => (isReadable && form.gauge !== 'floor' && car.ok ? gaugeTable(form, car.value, axle, units) : null),
    [isReadable, form, car, axle, units],
  );
  return (
    <div className="gauges">
      <KeptQuestions document={document} page={page} />
      <GaugeSentence form={form} faults={faults} axle={axle} setup={setup} onChange={setForm} />
      {!car.ok && <FailureBanner failure={car.failure} />}
      {car.ok && form.gauge === 'floor' && <Floor form={form} document={document} setup={setup} onChange={setForm} />}
      {table && <GaugeAnswer table={table} gauge={form.gauge} axle={axle} setup={setup} />}
    </div>
  );
};

const numberIn = (values: Readonly<Record<string, unknown>> | undefined, key: string): number | null => {
  const value = values?.[key];
  return typeof value === 'number' ? value : null;
};

const Floor = ({
  form,
  document,
  setup,
  onChange,
}: Omit<GaugesProps, 'axle'> & { readonly form: GaugeForm; readonly onChange: (form: GaugeForm) => void }) => {
  const bench = useMemo(() => ({ document, setup }), [document, setup]);
  const front = document.front ? standingRow(bench, 'front') : null;
  const rear = document.rear ? standingRow(bench, 'rear') : null;
  const [frontTrack, rearTrack] = [numberIn(front?.both, 'track'), numberIn(rear?.both, 'track')];
  const [left, right] = [numberIn(front?.wholeCar, 'wheelbaseLeft'), numberIn(front?.wholeCar, 'wheelbaseRight')];
  const size = useMemo(
    () =>
      frontTrack === null || rearTrack === null || left === null || right === null
        ? null
        : { frontTrack, rearTrack, wheelbase: (left + right) / 2 },
    [frontTrack, rearTrack, left, right],
  );
  const model: Readonly<Record<WheelName, number | null>> = {
    frontLeft: numberIn(front?.left, 'camber'),
    frontRight: numberIn(front?.right, 'camber'),
    rearLeft: numberIn(rear?.left, 'camber'),
    rearRight: numberIn(rear?.right, 'camber'),
  };
  return <FloorGauge form={form} size={size} model={model} onChange={onChange} />;
};

const BEFORE = {
  spacing: 'dials apart by',
  swing: 'turned by',
  diameter: 'across',
  offset: 'strings from the centre line at',
  lip: 'rim’s edge outboard of the hub by',
} as const;

const LABELS: Readonly<Record<keyof GaugeFault, string>> = {
  from: 'From',
  to: 'To',
  by: 'Every',
  spacing: 'Distance of the dials',
  swing: 'Swing',
  diameter: 'Diameter',
  offset: 'Strings from the centre line',
  lip: 'Rim’s edge',
};

interface SentenceProps {
  readonly form: GaugeForm;
  readonly faults: GaugeFault;
  readonly axle: AxleName;
  readonly setup: string;
  readonly onChange: (form: GaugeForm) => void;
}

const GaugeSentence = ({ form, faults, axle, setup, onChange }: SentenceProps) => {
  const units = useUnits();
  const id = useId();
  const length = shownQuantity({ quantity: 'length', decimals: 2 }, units);
  const angle = shownQuantity({ quantity: 'angle', decimals: 2 }, units);
  const faultId = (field: keyof GaugeFault) => faultIdOf({ idBase: id, faults }, field);
  const field = (name: keyof GaugeFault) => (
    <QuestionField
      label={`${LABELS[name]}, ${name === 'swing' ? 'degrees' : length.unit}`}
      field={form[name]}
      shown={name === 'swing' ? angle : length}
      faultId={faultId(name)}
      onChange={(value) => onChange({ ...form, [name]: value })}
    />
  );
  return (
    <form className="ask" aria-label="Gauges" onSubmit={(event) => event.preventDefault()}>
      <div className="sentence">
        <span>
          What <b>{setup}</b> shows {form.gauge === 'floor' ? '' : `at the ${axle} axle `}on
        </span>
        <select
          className="pick"
          aria-label="Instrument"
          value={form.gauge}
          onChange={(event) => onChange({ ...form, gauge: event.target.value as GaugeName })}
        >
          {GAUGES.map((name) => (
            <option key={name} value={name}>
              {GAUGE_WORDS[name]}
            </option>
          ))}
        </select>
        {FIELDS[form.gauge].map((name) => (
          <span key={name} className="gaugefield">
            {BEFORE[name]} {field(name)}
          </span>
        ))}
        {form.gauge === 'bumpSteer' && (
          <select
            className="pick"
            aria-label="Dials read"
            value={form.dials}
            onChange={(event) => onChange({ ...form, dials: event.target.value as GaugeForm['dials'] })}
          >
            <option value="mm">dials in mm</option>
            <option value="thou">dials in 0.001 in</option>
          </select>
        )}
        {form.gauge !== 'floor' && (
          <span className="gaugefield">
            jacked from {field('from')} to {field('to')} every {field('by')}
          </span>
        )}
      </div>
      <FaultList idBase={id} faults={faults} labels={LABELS} />
    </form>
  );
};

interface AnswerProps {
  readonly table: GaugeTable;
  readonly gauge: GaugeName;
  readonly axle: AxleName;
  readonly setup: string;
}

const GaugeAnswer = ({ table, gauge, axle, setup }: AnswerProps) => {
  const units = useUnits();
  const bump = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const { columns, rows, words } = table;
  const isMarked = columns.some(({ side }) => side !== null);
  return (
    <section className="answers gaugetable" aria-label="What the instrument shows">
      <div className="answershead">
        <h2>
          {GAUGE_WORDS[gauge].replace(/^a /, '').replace(/^./, (letter) => letter.toUpperCase())}, {axle}, {setup}
        </h2>
        <span className="spread" />
        <KeepTable name={GAUGE_WORDS[gauge]} table={() => gaugePlainTable(table, `bump [${bump.unit}]`, bump.toShown)} />
      </div>
      <div className="answertable" tabIndex={0} role="region" aria-label="Table of the instrument">
        <table>
          <thead>
            <tr>
              <th scope="col" className="number">
                Bump
                <br />
                <span className="unit">{bump.unit}</span>
              </th>
              {columns.map(({ head, side, unit }) => (
                <th key={`${side ?? ''}${head}`} scope="col" className={`number ${side ?? ''}`}>
                  {isMarked && side !== null ? `${side.charAt(0).toUpperCase()}${side.slice(1)}, ${head}` : head}
                  <br />
                  <span className="unit">{unit}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.bump} className={row.bump === 0 ? 'zero' : undefined}>
                <th scope="row" className="number">
                  {bump.formatChange(row.bump)}
                </th>
                {row.why === null ? (
                  columns.map(({ format, isResult, head, side }, index) => {
                    const value = row.values[index] ?? null;
                    const text = value === null ? '–' : format(value);
                    return (
                      <td key={`${side ?? ''}${head}`} className="number">
                        {isResult ? <b>{text}</b> : text}
                      </td>
                    );
                  })
                ) : (
                  <td colSpan={columns.length} className="quiet">
                    {row.why}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
        <ul className="gaugewords">
          {words.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </div>
    </section>
  );
};
