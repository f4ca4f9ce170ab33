import { useMemo, type DragEvent } from 'react';
import type { AxleName, CarDocument, Sweep } from '../../../geometry/index';
import type { CurveOver } from '../../compute/curves';
import { motionRanges } from '../../compute/motionRanges';
import { standingRow } from '../../compute/standing';
import { KeepTable } from '../../lengths/KeepTable';
import { saveFile } from '../../look/saveFile';
import { useUnits } from '../../look/units';
import { useBench } from '../../shell/benchContext';
import { formatNumber } from '../../units/format';
import { shownQuantity, type ShownQuantity } from '../../units/shownQuantity';
import { FailureBanner } from '../answers/FailureBanner';
import { shortName } from '../answers/sideEffects';
import { CompareCurve } from '../compare/CompareCurve';
import { KeptQuestions } from '../kept/KeptQuestions';
import { useQuestionPage } from '../kept/useQuestionPage';
import { timeTaken, useTellRun } from '../lastRun';
import { RunProgress } from '../RunProgress';
import { useFollowed } from '../useFollowed';
import { CombinedRows } from './CombinedRows';
import {
  axlesAsked,
  openList,
  sweepFaults,
  sweepForms,
  sweepOrder,
  sweptInputs,
  type OpenedList,
  type SweepForm,
  type SweptInputs,
} from './sweepForm';
import { SweepSentence } from './SweepSentence';
import {
  curvesOf,
  failedCount,
  failureAt,
  placeColumns,
  sweepColumns,
  sweepCsv,
  sweepPlainTable,
  valueOf,
  type PlaceColumn,
  type SweepColumn,
} from './sweepTable';
import '../compare/compare.css';
import './sweep.css';

/** Readings over a motion, or over a list of positions. */
export const SweepStudy = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  return bench && <SweepOf document={bench.document} setup={bench.setup} axle={axle} />;
};

interface SweepProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
}

/** Rows that a table in the window has; a longer sweep is whole in its files. */
const MOST_ROWS = 400;
/** Curves of one axle. */
const MOST_CURVES = 4;

const SweepOf = ({ document, setup, axle }: SweepProps) => {
  const tellRun = useTellRun();
  const ranges = useMemo(() => motionRanges(document, axle, standingRow({ document, setup }, axle)), [document, setup, axle]);
  const forms = useMemo(() => sweepForms(axle, ranges), [axle, ranges]);
  const page = useQuestionPage(document, axle, forms);
  const { form, change: setForm } = page;
  const faults = sweepFaults(form);
  const { motion, from, to, steps, held, rows, list, axles } = form;
  const swept = useMemo(
    () => sweptInputs({ motion, from, to, steps, held, rows, list, axles, readings: [] }),
    [motion, from, to, steps, held, rows, list, axles],
  );
  const asked = useMemo(() => {
    const order = sweepOrder(swept, axles, document, setup, axle);
    return order && swept && { order, swept };
  }, [swept, axles, document, setup, axle]);
  const { state, last, cancel } = useFollowed(null, asked?.order ?? null, ({ order, took }) =>
    tellRun([
      `${formatNumber(order.question.positions.length, 0)} positions,`,
      order.question.axles.length > 1 ? 'both axles and the car' : `${order.question.axles.join()} axle, both wheels`,
      timeTaken(took),
    ]),
  );
  const takeDropped = (event: DragEvent) => {
    const file = event.dataTransfer.files[0];
    // a car file is opened by the window
    if (!file || file.name.toLowerCase().endsWith('.json')) return;
    event.preventDefault();
    void file
      .arrayBuffer()
      .then((bytes) => setForm((now) => ({ ...now, motion: 'list', list: openList(file.name, new Uint8Array(bytes)) })));
  };
  const isAnswered = asked !== null && last !== null && last.order === asked.order;
  return (
    <div className="sweepstudy" onDragOver={(event) => event.preventDefault()} onDrop={takeDropped}>
      <KeptQuestions document={document} page={page} />
      <SweepSentence
        form={form}
        faults={faults}
        document={document}
        setup={setup}
        axle={axle}
        ranges={ranges}
        onChange={setForm}
      />
      <RunProgress state={state} onCancel={cancel} />
      {state.kind === 'failed' && <FailureBanner failure={state.failure} />}
      {motion === 'list' && <ListState list={list} />}
      {motion === 'combined' && <CombinedRows rows={rows} onChange={(next) => setForm({ ...form, rows: next })} />}
      {isAnswered && (
        <SweepView sweep={last.answer} swept={asked.swept} form={form} document={document} setup={setup} axle={axle} />
      )}
    </div>
  );
};

const ListState = ({ list }: { readonly list: OpenedList | null }) => {
  if (list === null)
    return (
      <p className="empty">
        A lap from the car’s own potentiometers: a CSV with the header <code>travelLeft,travelRight,rack</code> or{' '}
        <code>travelLeft,travelRight,rack,roll</code>; travel and rack in mm, travel from where the car stands, roll in degrees.
        Open it, or drop it here.
      </p>
    );
  if (list.ok) return null;
  return (
    <div className="verdict broken listfaults" role="alert">
      <b>{list.message}</b>
      {list.faults.length > 0 && (
        <ul>
          {list.faults.map(({ line, column, found, expected }, index) => (
            <li key={index}>
              line {line}
              {column === null ? '' : `:${column}`}: found {found}, expected {expected}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
};

interface ViewProps extends SweepProps {
  readonly sweep: Sweep;
  readonly swept: SweptInputs;
  readonly form: SweepForm;
}

const NAMES = { bump: 'bump', roll: 'roll', steer: 'rack', combined: 'row', list: 'row' } as const;
const PLAIN: ShownQuantity = shownQuantity(
  { quantity: 'ratio', decimals: 0 },
  { length: 'mm', angle: 'degrees', toe: 'angle', force: 'newton', toeDiameter: null },
);

const SweepView = ({ sweep, swept, form, document, setup, axle }: ViewProps) => {
  const units = useUnits();
  const axles = axlesAsked(form.axles, document, axle);
  const columns = useMemo(
    () => sweepColumns(form.readings, axlesAsked(form.axles, document, axle), units),
    [form.readings, form.axles, document, axle, units],
  );
  const input = useMemo(
    () =>
      swept.unit === '1'
        ? PLAIN
        : shownQuantity({ quantity: swept.unit === 'deg' ? 'angle' : 'length', decimals: swept.unit === 'deg' ? 2 : 1 }, units),
    [swept.unit, units],
  );
  const places = useMemo(() => placeColumns(swept, units), [swept, units]);
  const name = NAMES[form.motion];
  const head = input.unit === '' ? name : `${name} [${input.unit}]`;
  const failed = failedCount(sweep, swept.inputs.length);
  const isOne = form.axles === 'one';
  return (
    <>
      <section className="answers sweeptable" aria-label="Readings over the positions">
        <div className="answershead">
          <h2>
            {formatNumber(swept.inputs.length, 0)} positions, {setup}
          </h2>
          {failed > 0 && <span className="quiet">{formatNumber(failed, 0)} cannot be reached: each says why</span>}
          {swept.inputs.length > MOST_ROWS && (
            <span className="quiet">the first {formatNumber(MOST_ROWS, 0)} are listed; curves and files have all</span>
          )}
          <span className="spread" />
          <KeepTable
            name={`sweep over ${name}`}
            setup={setup}
            table={() => sweepPlainTable(sweep, swept.inputs, head, columns, input.toShown, places)}
          />
          <button
            type="button"
            className="button"
            title="As the command line writes it: mm and degrees, every reading"
            onClick={() =>
              saveFile(
                `${document.name} ${setup} ${isOne ? `${axle} ` : ''}sweep.csv`,
                new Blob([sweepCsv(sweep, swept, isOne)], { type: 'text/csv' }),
              )
            }
          >
            CSV of all readings
          </button>
        </div>
        <div className="answertable" tabIndex={0} role="region" aria-label="Table of the sweep">
          <SweepTable
            sweep={sweep}
            swept={swept}
            columns={columns}
            places={places}
            input={input}
            name={name}
            hasAxles={axles.length > 1}
          />
        </div>
      </section>
      <SweepCurves sweep={sweep} swept={swept} form={form} document={document} setup={setup} input={input} name={name} />
    </>
  );
};

interface TableProps {
  readonly sweep: Sweep;
  readonly swept: SweptInputs;
  readonly columns: readonly SweepColumn[];
  /** where the rows of a list put the car */
  readonly places: readonly PlaceColumn[];
  readonly input: ShownQuantity;
  readonly name: string;
  readonly hasAxles: boolean;
}

const SweepTable = ({ sweep, swept, columns, places, input, name, hasAxles }: TableProps) => (
  <table>
    <thead>
      <tr>
        <th scope="col" className="number">
          {name}
          <br />
          <span className="unit">{input.unit || ' '}</span>
        </th>
        {places.map(({ name: of, shown }) => (
          <th key={of} scope="col" className="number">
            {of}
            <br />
            <span className="unit">{shown.unit}</span>
          </th>
        ))}
        {columns.map(({ axle, owner, entry, shown }) => (
          <th
            key={`${axle}.${owner}.${entry.key}`}
            scope="col"
            className={`number ${owner === 'left' || owner === 'right' ? owner : ''}`}
            title={entry.meaning}
          >
            {shortName(entry)}
            <br />
            <span className="unit">
              {[hasAxles && axle !== 'wholeCar' ? axle : '', owner === 'left' || owner === 'right' ? owner : '', shown.unit]
                .filter((part) => part !== '')
                .join(' · ')}
            </span>
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {swept.inputs.slice(0, MOST_ROWS).map((at, index) => {
        const failure = failureAt(sweep, index);
        return (
          <tr key={index}>
            <th scope="row" className="number">
              {swept.unit === '1' ? input.format(at) : input.formatChange(at)}
            </th>
            {places.map(({ name: of, shown, values }) => (
              <td key={of} className="number place">
                {shown.formatChange(values[index] ?? 0)}
              </td>
            ))}
            {failure === null ? (
              columns.map((column) => {
                const value = valueOf(sweep, column, index);
                return (
                  <td key={`${column.axle}.${column.owner}.${column.entry.key}`} className="number">
                    {value === null ? '–' : column.shown.format(value)}
                  </td>
                );
              })
            ) : (
              <td colSpan={columns.length} className="unreached">
                {failure}
              </td>
            )}
          </tr>
        );
      })}
    </tbody>
  </table>
);

interface CurvesProps extends Omit<ViewProps, 'axle'> {
  readonly input: ShownQuantity;
  readonly name: string;
}

const SweepCurves = ({ sweep, swept, form, document, setup, input, name }: CurvesProps) => {
  const own = useMemo(
    () => sweep.axles.map((one) => ({ axle: one.axle, swept: curvesOf(one, sweep.wholeCar, swept.inputs) })),
    [sweep, swept],
  );
  const isMotion = form.motion === 'bump' || form.motion === 'roll' || form.motion === 'steer';
  const over: CurveOver = isMotion ? (form.motion as CurveOver) : 'bump';
  const held = useMemo(() => {
    // what was measured over a motion says nothing over the rows of a list
    const { measurements: _measurements, ...rest } = document;
    return isMotion ? document : rest;
  }, [document, isMotion]);
  const setups = useMemo(() => [setup], [setup]);
  const questions = useMemo(
    () =>
      own.map(({ axle: of, swept: lines }) => ({
        axle: of,
        question: { motion: input, own: lines, compared: null, document: held, axle: of, over, setups },
      })),
    [own, input, held, over, setups],
  );
  const [first = 0, end = 1] = [swept.inputs[0], swept.inputs.at(-1)];
  if (swept.inputs.length < 2 || first === end) return null;
  const [low, high] = first < end ? [first, end] : [end, first];
  const readings = form.readings.slice(0, MOST_CURVES);
  return (
    <section className="comparecurves sweepcurves" aria-label="Curves" data-axles={questions.length}>
      {questions.map(({ axle: of, question }) => (
        <div key={of} className="sweeprow">
          <div className="curvehead">
            <h2>
              {of === 'front' ? 'Front' : 'Rear'} over {name}
            </h2>
          </div>
          <div className="compareplots">
            {readings.map((number, place) => (
              <CompareCurve
                key={number}
                number={number}
                place={place}
                question={question}
                motion={{ name, shown: input, isCounted: swept.unit === '1' }}
                x={[input.toShown(low), input.toShown(high)]}
                at={null}
                setup={setup}
                comparedName={null}
                more={NO_MORE}
                onChoose={null}
              />
            ))}
          </div>
        </div>
      ))}
    </section>
  );
};
const NO_MORE: readonly never[] = [];
