import { useMemo, useState } from 'react';
import { findReading, resolveQuestion, toMechanism, type ReachAnswer } from '../../../geometry/index';
import { KeepTable } from '../../lengths/KeepTable';
import { VerdictShape } from '../../look/controls/VerdictShape';
import { useUnits } from '../../look/units';
import type { FoundAnswer } from '../../state/answeredSetup';
import { movedPointLines } from '../../state/movedPoints';
import { formatNumber } from '../../units/format';
import { EffectCell, EffectHead, GapCell, GapHead, PartShapes, PickRow, RangeUsed, VerdictChip } from '../answers/AnswerCells';
import { EffectList } from '../answers/EffectList';
import { RowActions } from '../answers/RowActions';
import { StaleBanner } from '../answers/StaleBanner';
import { LARGE, useMatch } from '../useMatch';
import type { Answered } from '../useStudy';
import {
  reachPlainTable,
  reachTable,
  rowWords,
  type ReachOrder,
  type ReachRow,
  type ReachTable,
  type WantedCell,
} from './reachTable';
import { helpWords, nearestWords, proofWords, stretchWords } from './reachWords';
import { Sparkline } from './Sparkline';
import { isMetAsItStands } from './stretches';

interface ReachAnswersProps {
  readonly answered: Answered<ReachOrder>;
  readonly changed: 'car' | 'question' | null;
  /** the question that was asked since was called off, which is told over it, with the way to ask it again */
  readonly wasLeft: boolean;
  readonly onRun: () => void;
}

/** Columns of side effects that there is room for: many parts take many words. */
const columnsFor = ({ question }: ReachOrder, isLarge: boolean): number => (isLarge ? 6 : question.may.length > 4 ? 3 : 4);

/** Rows that stand there at once: with many hundreds the window would not answer while they are drawn. */
const SHOWN_AT_ONCE = 50;

/** What was found: the verdict, the table, and what would help where it was not reached. */
export const ReachAnswers = ({ answered: { order, answer }, changed, wasLeft, onRun }: ReachAnswersProps) => {
  const units = useUnits();
  const isLarge = useMatch(LARGE);
  const table = useMemo(() => reachTable(order, answer, units, columnsFor(order, isLarge)), [order, answer, units, isLarge]);
  const [chosen, setChosen] = useState(0);
  const [most, setMost] = useState(SHOWN_AT_ONCE);
  const same = useMemo(() => sameParts(table), [table]);
  const row = table.rows[chosen] ?? null;
  const found = useMemo((): FoundAnswer | null => {
    if (!row) return null;
    const { question, document, setup, from } = order;
    return {
      from,
      settings: row.answer.settings,
      toeOn: resolveQuestion(toMechanism(document), question, setup).axles,
      toe: question.setToe === false ? undefined : question.setToe,
      points: row.answer.points,
    };
  }, [order, row]);
  return (
    <>
      {changed && !wasLeft && <StaleBanner changed={changed} from={order.from} onRun={onRun} />}
      <Verdict order={order} answer={answer} table={table} />
      {order.question.may.some((may) => 'point' in may) && (
        <p className="reachnote">
          A free point is new metal: whether the rules let it move, and what holds it there, is for you and a qualified engineer
          to see.
        </p>
      )}
      <section className={`answers${changed === 'car' ? ' old' : ''}`} aria-label="Settings found">
        <div className="answershead">
          <h2>{answer.reachable ? 'Settings on real steps' : 'Nearest settings on real steps'}</h2>
          <span className="quiet">bars: change from {order.from} against tolerance, full at 1.5×</span>
          <span className="spread" />
          {row && <KeepTable name="settings found" setup={order.from} table={() => reachPlainTable(order, answer, units)} />}
          <RowActions
            found={found}
            words={row ? rowWords(row) : ''}
            moved={row && movedPointLines(order.document, row.answer.points).length > 0 ? row.points : []}
            refused={changed === 'car' ? 'The car was changed since: run again first.' : null}
          />
        </div>
        {table.rows.length > 0 && (
          <div className="answertable" tabIndex={0} role="region" aria-label="Table of settings">
            <table className="reachtable">
              <ReachHead order={order} table={table} same={same} />
              <tbody>
                {table.rows.slice(0, most).map((one) => (
                  <ReachLine
                    key={one.index}
                    row={one}
                    whyNoGap={answer.why?.[`answers[${answer.answers.indexOf(one.answer)}].leastGap`]}
                    table={table}
                    order={order}
                    isSame={same !== null}
                    sparkWidth={isLarge ? 128 : 112}
                    isChosen={one.index === chosen}
                    onChoose={() => setChosen(one.index)}
                  />
                ))}
              </tbody>
            </table>
            {table.rows.length > most && (
              <p className="morerows">
                <button type="button" className="button small" onClick={() => setMost(most + SHOWN_AT_ONCE)}>
                  {Math.min(SHOWN_AT_ONCE, table.rows.length - most)} more
                </button>{' '}
                <span className="quiet">
                  {most} of {formatNumber(table.rows.length, 0)} shown; Copy and CSV take all
                </span>
              </p>
            )}
          </div>
        )}
        {row && <EffectList effects={row.effects} from={order.from} short={row.short} />}
      </section>
      <Helps order={order} answer={answer} />
    </>
  );
};

interface OfAnswer {
  readonly order: ReachOrder;
  readonly answer: ReachAnswer;
}

const Verdict = ({ order, answer, table }: OfAnswer & { readonly table: ReachTable }) => {
  const [best] = table.rows;
  const isThere = useMemo(() => isMetAsItStands(order.document, order.question, order.from), [order]);
  const met = answer.answers.filter((one) => one.met).length;
  const names = table.wanted.map(({ name }) => name);
  // what is wanted can be met by something that does not fit
  const short = answer.reachable ? (best?.short ?? null) : null;
  const words = !best
    ? 'No combination stands: each breaks a limit of the file, cannot be put together, or gives one of the readings no value.'
    : answer.reachable
      ? isThere
        ? `Nothing to do: ${order.from} gives everything that is wanted as it stands.`
        : `${met === 1 ? 'One of the settings below gives' : `${met} of the settings below give`} everything that is wanted.`
      : `Nearest: ${nearestWords(
          names,
          best.wanted.map(({ miss }) => miss),
        )}.`;
  return (
    <div className={`verdict ${answer.reachable ? 'reached' : 'missed'}`} role="status">
      <VerdictShape verdict={answer.reachable ? 'within' : 'broken'} />
      <span>
        <b>{answer.reachable ? 'Reached.' : 'Not reached.'}</b> {words}
      </span>
      {short && <VerdictChip verdict={short.verdict}>{`the first: ${short.words}`}</VerdictChip>}
      <span className="spread" />
      <span className="quiet proof">{proofWords(answer)}</span>
    </div>
  );
};

/** The names of the parts where every row turns the same ones: then they stand once, in the head. */
const sameParts = ({ rows }: ReachTable): string | null => {
  const names = rows.map(({ parts }) => parts.map(({ label }) => label).join(' · '));
  return names.length > 0 && names[0] !== '' && new Set(names).size === 1 ? (names[0] ?? null) : null;
};

interface ReachHeadProps {
  readonly order: ReachOrder;
  readonly table: ReachTable;
  /** names of the parts where they stand in the head */
  readonly same: string | null;
}

const ReachHead = ({ order, table, same }: ReachHeadProps) => {
  const units = useUnits();
  return (
    <thead>
      <tr>
        <th scope="col">Settings{same === null ? '' : `: ${same}`}</th>
        {table.wanted.map(({ name, unit, over }, index) => {
          const wanted = order.question.wanted[index];
          return (
            <th
              key={index}
              scope="col"
              className={over === null ? 'number' : 'course'}
              title={wanted && findReading(wanted.reading)?.meaning}
            >
              {name}
              {wanted?.over && `, ${stretchWords(wanted.over.motion, wanted.over.from, wanted.over.to, units)}`}
              <br />
              <span className="unit">{over === null ? unit : `${unit} · in its band, worst`}</span>
            </th>
          );
        })}
        <th scope="col">
          Range
          <br />
          used
        </th>
        {table.gapUnit !== null && <GapHead unit={table.gapUnit} />}
        {table.columns.map((column) => (
          <EffectHead key={column.key} column={column} axles={table.axles} />
        ))}
        <th scope="col" className="number">
          Score
          <br />
          <span className="unit">0 best</span>
        </th>
      </tr>
    </thead>
  );
};

interface ReachLineProps {
  readonly row: ReachRow;
  readonly whyNoGap: string | undefined;
  readonly table: ReachTable;
  readonly order: ReachOrder;
  /** the names of the parts stand in the head */
  readonly isSame: boolean;
  readonly sparkWidth: number;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}

const ReachLine = ({ row, whyNoGap, table, order, isSame, sparkWidth, isChosen, onChoose }: ReachLineProps) => (
  <tr className={isChosen ? 'chosen' : undefined} onClick={onChoose}>
    <th scope="row" className="wayname">
      <span className="wayparts">
        <PickRow group="answer" label={`${row.index + 1}: ${rowWords(row)}`} checked={isChosen} onPick={onChoose} />
        <span className="rank">{row.index + 1}</span>
        <PartShapes parts={row.parts} size={32} />
        <span className="waywords">
          {row.parts.map((part, index) => (
            <span key={`${part.axle}.${part.name}`} title={`${part.label}: ${part.detail}`}>
              {index > 0 && ' · '}
              {isSame ? (
                index === 0 ? (
                  <b>{part.words}</b>
                ) : (
                  part.words
                )
              ) : (
                <>
                  <b>{part.label}</b> {part.words}
                </>
              )}
            </span>
          ))}
          {row.points.map((words) => (
            <span key={words}>
              {row.parts.length > 0 && ' · '}
              <b>{words}</b>
            </span>
          ))}
          {row.toe.map((words) => (
            <span key={words} className="quiet toeturn">
              {' '}
              for the toe: {words}
            </span>
          ))}
        </span>
      </span>
    </th>
    {row.wanted.map((cell, index) => {
      const entry = findReading(order.question.wanted[index]?.reading ?? '');
      return (
        <td key={index} className={`wantedcell${cell.stretch ? ' course' : ''}`}>
          {cell.stretch && entry ? (
            <span className="courseline">
              <Sparkline stretch={cell.stretch} entry={entry} width={sparkWidth} height={38} />
              <WantedNumber cell={cell} />
            </span>
          ) : (
            <WantedNumber cell={cell} />
          )}
        </td>
      );
    })}
    <td>
      <RangeUsed parts={row.used} />
    </td>
    {table.gapUnit !== null && <GapCell text={row.gap} short={row.short} why={whyNoGap} />}
    {table.columns.map((column) => (
      <EffectCell key={column.key} effect={row.effects.find((effect) => effect.column.key === column.key)} />
    ))}
    <td className="number">{row.score}</td>
  </tr>
);

const WantedNumber = ({ cell }: { readonly cell: WantedCell }) => (
  <span className="wantednumber">
    <b className="number">{cell.value}</b>
    <span className={`miss ${cell.miss.isMet ? 'met' : 'missed'}`}>
      <VerdictShape verdict={cell.miss.isMet ? 'within' : 'broken'} />
      {cell.miss.words}
    </span>
  </span>
);

/** The one end or limit whose letting out would help most, with how much. */
const Helps = ({ order, answer }: OfAnswer) => {
  const units = useUnits();
  const { helps } = answer;
  if (answer.reachable) return null;
  const best = answer.answers[0]?.score;
  const words = helps && helpWords(order.document, helps, units);
  return (
    <section className="helps" aria-label="What would help most">
      <div className="answershead">
        <h2>What would help most</h2>
        <span className="quiet">one step more at each end of a range, and each limit let out alone, solved again</span>
      </div>
      {helps && words ? (
        <div className="helpline">
          <span>
            <b>{words.what}</b> <span className="quiet">{words.why}</span>
          </span>
          {best !== undefined && Number.isFinite(helps.gain) && (
            <>
              <span className="helpbar" aria-hidden="true">
                <i style={{ width: `${best === 0 ? 0 : Math.min(100, (100 * helps.gain) / best)}%` }} />
              </span>
              <span className="number">
                score {best.toFixed(2)} → {Math.max(0, best - helps.gain).toFixed(2)}
              </span>
            </>
          )}
          {(best === undefined || !Number.isFinite(helps.gain)) && <span>then there is an answer</span>}
        </div>
      ) : (
        <p className="helpline">
          Nothing by itself: neither one step more at any end of a range nor any one limit let out brings it nearer. Let other
          parts be turned, or want less.
        </p>
      )}
    </section>
  );
};
