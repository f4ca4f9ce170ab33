import { useMemo, useState } from 'react';
import type { AxleName, CarDocument } from '../../../geometry/index';
import { PartDrawing } from '../../adjusters/parts/PartDrawing';
import { KeepTable } from '../../lengths/KeepTable';
import { useUnits } from '../../look/units';
import { useBench, useWindow } from '../../shell/benchContext';
import { choosePage, holdAdjuster } from '../../state/actions/lookAt';
import { settingOf, setupNamed } from '../../state/settings';
import { mmPerFileUnit } from '../../units/fileLength';
import { withUnit } from '../../units/shownQuantity';
import { FailureBanner } from '../answers/FailureBanner';
import { PickRow } from '../answers/AnswerCells';
import { pivotToBoltOf } from '../answers/turnedParts';
import { KeptQuestions } from '../kept/KeptQuestions';
import { useQuestionPage } from '../kept/useQuestionPage';
import { timeTaken, useTellRun } from '../lastRun';
import { PlacePicker } from '../question/PlacePicker';
import { ReadingsPicker } from '../question/ReadingsPicker';
import { SideSelect } from '../question/SideSelect';
import { ToePicker } from '../question/ToePicker';
import { ownToe } from '../question/toeChoice';
import { RunProgress } from '../RunProgress';
import { OfBefore } from '../answers/OfBefore';
import { useFollowed } from '../useFollowed';
import { influenceFault, influenceForms, influenceOrder, type InfluenceForm } from './influenceForm';
import {
  dotRadius,
  independentWords,
  influenceMatrix,
  influencePlainTable,
  matrixColumns,
  type MatrixCell,
  type MatrixColumn,
  type MatrixLine,
  type MatrixRow,
} from './influenceTable';
import './influence.css';

/** What one step of every part does to every reading. */
export const InfluenceStudy = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  return bench && <InfluenceOf document={bench.document} setup={bench.setup} axle={axle} />;
};

interface InfluenceProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
}

const InfluenceOf = ({ document, setup, axle }: InfluenceProps) => {
  const units = useUnits();
  const tellRun = useTellRun();
  const forms = useMemo(() => influenceForms(axle), [axle]);
  const page = useQuestionPage(document, axle, forms);
  const { form } = page;
  const { side, place, toe, withLocked, readings } = form;
  const order = useMemo(
    () => influenceOrder({ side, place, toe, withLocked }, document, setup, axle),
    [side, place, toe, withLocked, document, setup, axle],
  );
  const { state, last, cancel } = useFollowed(null, order, ({ answer, took }) =>
    tellRun([`${answer.rows.length} parts, one step each way`, independentWords(answer.independent), timeTaken(took)]),
  );
  const fault = influenceFault(form);
  const shown = last && {
    document: last.order.document,
    answer: last.answer,
    columns: matrixColumns(last.order.document, readings, units),
  };
  // what stands in the fields is no question: the matrix is of the last one that was
  const isBefore = order === null;
  const parts = Object.keys(document[axle]?.adjusters ?? {}).length;
  return (
    <div className="influence">
      <KeptQuestions document={document} page={page} />
      <InfluenceSentence form={form} document={document} setup={setup} axle={axle} fault={fault} onChange={page.change} />
      <RunProgress state={state} onCancel={cancel} />
      {state.kind === 'failed' && <FailureBanner failure={state.failure} />}
      {parts > 0 && shown && isBefore && <OfBefore />}
      {parts === 0 ? (
        <p className="empty">The {axle} axle has no adjusters in this car file, so there is no step to take.</p>
      ) : (
        shown && (
          <section className={`answers${isBefore ? ' old' : ''}`} aria-label="Influence">
            <div className="answershead">
              <h2>
                Influence of one step, {axle} {side === 'both' ? 'both wheels' : side}, {setup}
              </h2>
              <span className="quiet matrixkey">
                <Dot share={0.8} /> plus <Dot share={-0.8} /> minus, area: step in tolerances. ∿ not linear over the range.
              </span>
              <span className="spread" />
              <span className="quiet">{independentWords(shown.answer.independent)}</span>
              {!isBefore && (
                <KeepTable
                  name={`${side === 'both' ? '' : `${side} `}influence of one step`}
                  setup={setup}
                  table={() => influencePlainTable(shown.document, shown.answer, shown.columns)}
                />
              )}
            </div>
            <div className="answertable" tabIndex={0} role="region" aria-label="Matrix of influence">
              <Matrix
                rows={influenceMatrix(shown.document, shown.answer, shown.columns, units)}
                columns={shown.columns}
                document={document}
                setup={setup}
                axle={axle}
                side={side}
              />
            </div>
          </section>
        )
      )}
    </div>
  );
};

interface SentenceProps extends InfluenceProps {
  readonly form: InfluenceForm;
  readonly fault: string | null;
  readonly onChange: (form: InfluenceForm) => void;
}

const InfluenceSentence = ({ form, document, setup, axle, fault, onChange }: SentenceProps) => {
  const toe = ownToe(document, setup, [axle]);
  return (
    <form className="ask" aria-label="Influence" onSubmit={(event) => event.preventDefault()}>
      <div className="sentence">
        <span>One step of every {axle} part on</span>
        <SideSelect label="Wheels" side={form.side} onChange={(side) => onChange({ ...form, side })} />
        <span>at</span>
        <PlacePicker of="one step" place={form.place} onChange={(place) => onChange({ ...form, place })} />
        <ToePicker
          own={toe}
          choice={form.toe}
          faultId={fault === null ? null : 'influence-fault'}
          onChange={(choice) => onChange({ ...form, toe: choice })}
        />
        <span>on</span>
        <ReadingsPicker
          label="columns"
          owners={['corner', 'axle', 'car']}
          chosen={form.readings}
          onChange={(readings) => onChange({ ...form, readings })}
        />
        <label className="tick">
          <input
            type="checkbox"
            checked={form.withLocked}
            onChange={(event) => onChange({ ...form, withLocked: event.target.checked })}
          />
          locked too
        </label>
        <span className="spread" />
        <ToBench axle={axle} document={document} />
      </div>
      {fault !== null && (
        <p id="influence-fault" className="qfault" role="alert">
          {fault}
        </p>
      )}
    </form>
  );
};

const ToBench = ({ axle, document }: { readonly axle: AxleName; readonly document: CarDocument }) => {
  const { store } = useWindow();
  const held = useBench((state) => state.held);
  const isHere = held !== null && document[axle]?.adjusters?.[held] !== undefined;
  return (
    <button
      type="button"
      className="button primary"
      disabled={!isHere}
      title={isHere ? 'The chosen part is in hand there' : 'Choose a part first'}
      onClick={() => choosePage(store, 'bench')}
    >
      Turn it on the bench
    </button>
  );
};

interface MatrixProps extends InfluenceProps {
  readonly rows: readonly MatrixRow[];
  readonly columns: readonly MatrixColumn[];
  readonly side: InfluenceForm['side'];
}

const Matrix = ({ rows, columns, document, setup, axle, side }: MatrixProps) => (
  <table className="matrix">
    <thead>
      <tr>
        <th scope="col">One step of</th>
        {columns.map(({ entry, name, shown }) => (
          <th key={entry.key} scope="col" className="number" title={`${entry.name}: ${entry.meaning}`}>
            {name}
            <br />
            <span className="unit">{shown.unit || ' '}</span>
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {rows.map((row) => (
        <MatrixRows key={row.name} row={row} columns={columns} document={document} setup={setup} axle={axle} side={side} />
      ))}
    </tbody>
  </table>
);

interface RowsProps extends InfluenceProps {
  readonly row: MatrixRow;
  readonly columns: readonly MatrixColumn[];
  readonly side: InfluenceForm['side'];
}

const MatrixRows = ({ row, columns, document, setup, axle, side }: RowsProps) => {
  const { store } = useWindow();
  const isHeld = useBench((state) => state.held === row.name);
  const [isOpen, setOpen] = useState(false);
  const hold = () => holdAdjuster(store, row.name);
  const value = settingOf(setupNamed(document, setup), axle, row.name, side === 'right' ? 'right' : 'left');
  return (
    <>
      <tr className={isHeld ? 'chosen' : undefined} onClick={hold}>
        <th scope="row" className="matrixname">
          <span className="wayparts">
            <PickRow group="held part" label={`${row.label}, ${row.step}`} checked={isHeld} onPick={hold} />
            <PartDrawing
              adjuster={row.adjuster}
              value={value}
              mm={mmPerFileUnit(document)}
              pivotToBolt={pivotToBoltOf(document[axle], row.adjuster)}
              side={side === 'right' ? 'right' : 'left'}
              size={28}
              className="mini"
            />
            <span className="waywords">
              <b>{row.label}</b> <span className="stepwords">{row.step}</span>
              {row.curved && (
                <span className="stepwords" title="Not linear: one step up does not undo one step down">
                  {' '}
                  ∿<span className="unseen"> not linear</span>
                </span>
              )}
              {row.alike.length > 0 && (
                <span className="stepwords"> · as {row.alike.map((label) => label.toLowerCase()).join(', ')}</span>
              )}
            </span>
            {row.marks.length > 0 && (
              <button
                type="button"
                className="button marksbutton"
                aria-expanded={isOpen}
                onClick={(event) => {
                  event.stopPropagation();
                  setOpen(!isOpen);
                }}
              >
                {isOpen ? 'Fewer' : 'Each mark'}
              </button>
            )}
          </span>
        </th>
        <Cells line={row} columns={columns} />
      </tr>
      {isOpen &&
        row.marks.map((mark) => (
          <tr key={mark.step} className="markline">
            <th scope="row" className="matrixname">
              {mark.step}
            </th>
            <Cells line={mark} columns={columns} />
          </tr>
        ))}
    </>
  );
};

const Cells = ({ line, columns }: { readonly line: MatrixLine; readonly columns: readonly MatrixColumn[] }) =>
  line.why === null ? (
    columns.map((column, index) => <Cell key={column.entry.key} cell={line.cells[index]} column={column} />)
  ) : (
    <td colSpan={columns.length} className="quiet whycell">
      {line.why}
    </td>
  );

const Cell = ({ cell, column }: { readonly cell: MatrixCell | undefined; readonly column: MatrixColumn }) => {
  if (!cell || cell.change === null)
    return (
      <td className="number quiet" title={`${column.entry.name}: no value here`}>
        –
      </td>
    );
  const isNothing = !/[1-9]/.test(cell.text);
  const counts =
    column.matters === null ? '' : `; counts from ${withUnit(column.shown.format(column.matters), column.shown.unit)}`;
  const at = cell.at === null ? '' : `, ${cell.at}`;
  return (
    <td title={`${column.entry.name} ${withUnit(cell.text, column.shown.unit)}${at}${counts}`}>
      <span className="matrixcell">
        {!isNothing && cell.share !== null && <Dot share={cell.share} />}
        <span className={`number${isNothing ? ' quiet' : ''}`}>{cell.text}</span>
      </span>
    </td>
  );
};

const Dot = ({ share }: { readonly share: number }) => {
  const r = dotRadius(share);
  return (
    <svg className="matrixdot" width="18" height="18" viewBox="-9 -9 18 18" aria-hidden="true">
      {share > 0 ? <circle className="plus" r={r} /> : <circle className="minus" r={Math.max(0.9, r - 0.8)} />}
    </svg>
  );
};
