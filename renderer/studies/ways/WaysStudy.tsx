import { useId, useMemo, useState, type FormEvent } from 'react';
import { findReading, type AxleName, type CarDocument } from '../../../geometry/index';
import { partMeshFiles } from '../../compute/fitup/partMeshFiles';
import { KeepTable } from '../../lengths/KeepTable';
import { useUnits } from '../../look/units';
import { useBench } from '../../shell/benchContext';
import { isSameDocument } from '../../state/sameDocument';
import type { FoundAnswer } from '../../state/answeredSetup';
import { shownReading, withUnit } from '../../units/shownQuantity';
import { EffectCell, EffectHead, GapCell, GapHead, PartShapes, PickRow, RangeUsed, VerdictChip } from '../answers/AnswerCells';
import { FailureBanner } from '../answers/FailureBanner';
import { isStale } from '../answers/isStale';
import { RowActions } from '../answers/RowActions';
import { StaleBanner } from '../answers/StaleBanner';
import { KeptQuestions } from '../kept/KeptQuestions';
import { useQuestionPage } from '../kept/useQuestionPage';
import { timeTaken, useTellRun } from '../lastRun';
import { FaultList, faultIdOf } from '../question/FaultList';
import { PlacePicker } from '../question/PlacePicker';
import { QuestionField } from '../question/QuestionField';
import { ReadingSelect } from '../question/ReadingSelect';
import { SetupSelect } from '../question/SetupSelect';
import { SideSelect } from '../question/SideSelect';
import { ownToe } from '../question/toeChoice';
import { ToePicker } from '../question/ToePicker';
import { LeftBanner } from '../LeftBanner';
import { RunProgress } from '../RunProgress';
import { useKeptStudy, type Answered } from '../useStudy';
import { LARGE, useMatch } from '../useMatch';
import { readWays, waysForms, withReading, type WaysFault, type WaysForm, type WaysOrder } from './waysForm';
import { GROUP_WORDS, partsText, reachedText, waysPlainTable, waysTable, type WayGroup, type WayRow } from './waysTable';

/** One wanted change, and every way to get it. */
export const WaysStudy = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  return bench && <Ways document={bench.document} setup={bench.setup} axle={axle} />;
};

interface WaysProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
}

const Ways = ({ document, setup, axle }: WaysProps) => {
  const tellRun = useTellRun();
  const forms = useMemo(() => waysForms(document, setup, axle), [document, setup, axle]);
  const page = useQuestionPage(document, axle, forms);
  const { form } = page;
  const [faults, setFaults] = useState<WaysFault>({});
  const { state, last, wasLeft, ask, cancel } = useKeptStudy<WaysOrder>('ways.answer');

  const change = (next: WaysForm) => {
    page.change(next);
    // a fault that was said goes as soon as it is mended
    if (Object.keys(faults).length > 0) {
      const read = readWays(next, document, axle);
      setFaults('faults' in read ? read.faults : {});
    }
  };
  const run = (event?: FormEvent) => {
    event?.preventDefault();
    const read = readWays(form, document, axle);
    if ('faults' in read) return setFaults(read.faults);
    setFaults({});
    const { meshes } = partMeshFiles(document.parts);
    ask({ ...read.order, question: { ...read.order.question, meshes } }, ({ answer, took }) => {
      const reach = answer.ways.filter((way) => way.reaches).length;
      tellRun([`${answer.ways.length} ways, ${reach} reach`, 'every part tried', `${timeTaken(took)}, nothing random`]);
    });
  };
  return (
    <div className="ways">
      <KeptQuestions
        document={document}
        page={page}
        onChosen={() => setFaults({})}
        onFaulty={() => {
          const read = readWays(form, document, axle);
          setFaults('faults' in read ? read.faults : {});
        }}
      />
      <WaysSentence form={form} document={document} axle={axle} faults={faults} onChange={change} onRun={run} />
      <RunProgress state={state} onCancel={cancel} />
      {wasLeft && <LeftBanner onRun={() => run()} />}
      {state.kind === 'failed' && <FailureBanner failure={state.failure} />}
      {last && state.kind !== 'failed' ? (
        <WaysAnswer
          key={`${last.took}`}
          answered={last}
          changed={changedSince(last.order, readWays(form, document, axle), document)}
          wasLeft={wasLeft}
          onRun={() => run()}
        />
      ) : (
        state.kind !== 'running' && (
          <p className="empty">
            Every part of the {axle} axle is tried by itself, and by pairs: what brings the reading there, on the marks that the
            part really has, and what else it changes.
          </p>
        )
      )}
    </div>
  );
};

/** What was changed since an answer was asked for; null: nothing. */
const changedSince = (asked: WaysOrder, now: ReturnType<typeof readWays>, document: CarDocument): 'car' | 'question' | null => {
  if (isStale(asked.document, document, asked.from)) return 'car';
  if ('faults' in now || now.order.from !== asked.from) return 'question';
  const { setup: _before, meshes: _meshes, ...before } = asked.question;
  const { setup: _after, ...after } = now.order.question;
  return isSameDocument(before, after) ? null : 'question';
};

interface SentenceProps {
  readonly form: WaysForm;
  readonly document: CarDocument;
  readonly axle: AxleName;
  readonly faults: WaysFault;
  readonly onChange: (form: WaysForm) => void;
  readonly onRun: (event: FormEvent) => void;
}

const WaysSentence = ({ form, document, axle, faults, onChange, onRun }: SentenceProps) => {
  const units = useUnits();
  const id = useId();
  const entry = findReading(form.reading);
  const shown = entry ? shownReading(entry, units) : null;
  const toe = ownToe(document, form.setup, [axle]);
  const faultId = (field: keyof WaysFault) => faultIdOf({ idBase: id, faults }, field);
  const spoken = shown?.unit === '°' ? 'degrees' : (shown?.unit ?? '');
  return (
    <form className="ask" onSubmit={onRun} noValidate aria-label="Ways">
      <div className="sentence">
        <span>Bring {axle}</span>
        <ReadingSelect
          label="Reading"
          value={form.reading}
          owners={['corner', 'axle']}
          faultId={faultId('reading')}
          onChange={(reading) => onChange(withReading(form, document, reading))}
        />
        {entry?.of === 'corner' && (
          <SideSelect label="Wheels" side={form.side} onChange={(side) => onChange({ ...form, side })} />
        )}
        <span>at</span>
        <PlacePicker of={entry?.name ?? form.reading} place={form.place} onChange={(place) => onChange({ ...form, place })} />
        <span>to</span>
        {shown && (
          <>
            <QuestionField
              label={`To, ${spoken}`}
              field={form.value}
              shown={shown}
              faultId={faultId('value')}
              onChange={(value) => onChange({ ...form, value })}
            />
            <span>±</span>
            <QuestionField
              label={`Tolerance, ${spoken}`}
              className="tolerance"
              field={form.tolerance}
              shown={shown}
              faultId={faultId('tolerance')}
              onChange={(tolerance) => onChange({ ...form, tolerance })}
            />
          </>
        )}
        <span>from</span>
        <SetupSelect
          document={document}
          setup={form.setup}
          faultId={faultId('setup')}
          onChange={(setup) => onChange({ ...form, setup })}
        />
        <ToePicker
          own={toe}
          choice={form.toe}
          faultId={faultId('toe')}
          onChange={(choice) => onChange({ ...form, toe: choice })}
        />
        <label className="tick">
          <input type="checkbox" checked={form.pairs} onChange={(event) => onChange({ ...form, pairs: event.target.checked })} />
          pairs too
        </label>
        <label className="tick">
          <input
            type="checkbox"
            checked={form.withLocked}
            onChange={(event) => onChange({ ...form, withLocked: event.target.checked })}
          />
          locked too
        </label>
        <span className="spread" />
        <button type="submit" className="button primary run">
          Find ways <span className="key">Enter</span>
        </button>
      </div>
      <FaultList idBase={id} faults={faults} />
    </form>
  );
};

const GROUP_NOTES: Readonly<Record<WayGroup, (from: string) => string>> = {
  alone: (from) => `one adjuster, the rest as in ${from}`,
  pairs: () => 'two adjusters, fewest side effects first',
  short: () => 'by how much',
};

interface AnswerProps {
  readonly answered: Answered<WaysOrder>;
  readonly changed: 'car' | 'question' | null;
  /** the question that was asked since was called off, which is told over it, with the way to ask it again */
  readonly wasLeft: boolean;
  readonly onRun: () => void;
}

const WaysAnswer = ({ answered: { order, answer }, changed, wasLeft, onRun }: AnswerProps) => {
  const units = useUnits();
  const isLarge = useMatch(LARGE);
  const table = useMemo(() => waysTable(order, answer, units, isLarge ? 9 : 7), [order, answer, units, isLarge]);
  const rows = table.groups.flatMap((group) => group.rows);
  const [chosen, setChosen] = useState(rows[0]?.index ?? 0);
  const row = rows.find(({ index }) => index === chosen) ?? null;
  const { entry, value, axle, side } = order.question;
  const shown = shownReading(entry, units);
  const wanted = withUnit(shown.format(value), shown.unit);
  const found: FoundAnswer | null = row && {
    from: order.from,
    settings: row.way.settings,
    toeOn: [axle],
    toe: order.question.toeReset,
  };
  return (
    <>
      {changed && !wasLeft && <StaleBanner changed={changed} from={order.from} onRun={onRun} />}
      <section className={`answers${changed === 'car' ? ' old' : ''}`} aria-label="Ways found">
        <div className="answershead">
          <h2>
            Ways to {axle} {entry.name.toLowerCase()} {wanted}
          </h2>
          <span className="quiet">
            from {withUnit(reachedText(answer.from, shown), shown.unit)}; bars: what else changes, against its tolerance, full at
            1.5×
          </span>
          <span className="spread" />
          {rows.length > 0 && (
            <KeepTable
              name={`${side === 'both' ? '' : `${side} `}Ways to ${entry.name} ${wanted}`}
              setup={order.from}
              table={() => waysPlainTable(order.document, order, answer, units)}
            />
          )}
          <RowActions
            found={found}
            words={row ? partsText(row.parts) : ''}
            refused={
              changed === 'car'
                ? 'The car was changed since: run again first.'
                : row?.isWalled
                  ? 'It breaks a limit of the car file.'
                  : null
            }
          />
        </div>
        {rows.length === 0 ? (
          <p className="empty">
            Nothing to do, or nothing that does it: {order.from} stands at {withUnit(reachedText(answer.from, shown), shown.unit)}
            , and no part brings it nearer to {wanted} inside the ranges and limits of the file.
          </p>
        ) : (
          <div className="answertable" tabIndex={0} role="region" aria-label="Table of ways">
            <table className="waystable">
              <thead>
                <tr>
                  <th scope="col">Way</th>
                  <th scope="col" className="number">
                    {entry.name}
                    <br />
                    <span className="unit">{shown.unit}</span>
                  </th>
                  {table.columns.map((column) => (
                    <EffectHead key={column.key} column={column} axles={1} />
                  ))}
                  <th scope="col">
                    Range
                    <br />
                    used
                  </th>
                  {table.gapUnit !== null && <GapHead unit={table.gapUnit} />}
                  <th scope="col">On real marks</th>
                </tr>
              </thead>
              {table.groups.map(({ group, rows: inGroup }) => (
                <tbody key={group}>
                  <tr className="grouprow">
                    <th scope="rowgroup" colSpan={table.columns.length + (table.gapUnit === null ? 4 : 5)}>
                      {GROUP_WORDS[group]} <span className="unit">{GROUP_NOTES[group](order.from)}</span>
                    </th>
                  </tr>
                  {inGroup.map((one) => (
                    <WayLine
                      key={one.index}
                      row={one}
                      table={table}
                      whyNoGap={one.isWalled ? 'It breaks a limit: not measured' : answer.why?.[`ways[${one.index}].leastGap`]}
                      isChosen={one.index === chosen}
                      onChoose={() => setChosen(one.index)}
                    />
                  ))}
                </tbody>
              ))}
            </table>
          </div>
        )}
      </section>
    </>
  );
};

interface WayLineProps {
  readonly row: WayRow;
  readonly table: ReturnType<typeof waysTable>;
  readonly whyNoGap: string | undefined;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}

const WayLine = ({ row, table, whyNoGap, isChosen, onChoose }: WayLineProps) => (
  <tr className={isChosen ? 'chosen' : undefined} onClick={onChoose}>
    <th scope="row" className="wayname">
      <span className="wayparts">
        <PickRow group="way" label={partsText(row.parts)} checked={isChosen} onPick={onChoose} />
        <PartShapes parts={row.parts} size={32} />
        <span className="waywords">
          {row.parts.map((part, index) => (
            <span key={part.name} title={part.detail}>
              {index > 0 && ' + '}
              <b>{part.label}</b> {part.words}
            </span>
          ))}
        </span>
      </span>
    </th>
    <td className="number">
      <b>{row.value}</b>
    </td>
    {table.columns.map((column) => (
      <EffectCell key={column.key} effect={row.effects.find((effect) => effect.column.key === column.key)} />
    ))}
    <td>
      <RangeUsed parts={row.parts.map(({ label }, index) => ({ label, share: row.used[index] ?? null }))} />
    </td>
    {table.gapUnit !== null && <GapCell text={row.gap} short={row.short} why={whyNoGap} />}
    <td>
      <VerdictChip verdict={row.verdict}>{row.verdictWords}</VerdictChip>
    </td>
  </tr>
);
