import { useId, useMemo, useState, type FormEvent } from 'react';
import { MOST_TRIED, type AxleName, type CarDocument } from '../../../geometry/index';
import { partMeshFiles } from '../../compute/fitup/partMeshFiles';
import { useUnits } from '../../look/units';
import { useBench } from '../../shell/benchContext';
import { isSameDocument } from '../../state/sameDocument';
import { setupNamed } from '../../state/settings';
import { formatNumber } from '../../units/format';
import { FailureBanner } from '../answers/FailureBanner';
import { ruleWords } from '../map/limitWords';
import { KeptQuestions } from '../kept/KeptQuestions';
import { useQuestionPage, type QuestionForms } from '../kept/useQuestionPage';
import { timeTaken, useTellRun } from '../lastRun';
import { PLAIN_NUMBER } from '../question/fieldValue';
import { QuestionField } from '../question/QuestionField';
import { SetupSelect } from '../question/SetupSelect';
import { ownToe } from '../question/toeChoice';
import { ToePicker } from '../question/ToePicker';
import { LeftBanner } from '../LeftBanner';
import { RunProgress } from '../RunProgress';
import { useKeptStudy } from '../useStudy';
import { isStale } from '../answers/isStale';
import { MayTurn } from './MayTurn';
import { combinationsOf } from './combinations';
import { ReachAnswers } from './ReachAnswers';
import { axlesAsked, beginReach, formOf, moved, nextWanted, type ReachForm } from './reachForm';
import { readReach, type ReachFaults } from './readReach';
import type { ReachOrder } from './reachTable';
import { WantedRow } from './WantedRow';
import './reach.css';

/** Settings that give everything that is wanted at once. */
export const ReachStudy = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  return bench && <Reach document={bench.document} setup={bench.setup} axle={axle} />;
};

interface ReachProps {
  readonly document: CarDocument;
  readonly setup: string;
  readonly axle: AxleName;
}

const Reach = ({ document, setup, axle }: ReachProps) => {
  const tellRun = useTellRun();
  const forms = useMemo(() => reachForms(document, setup, axle), [document, setup, axle]);
  const page = useQuestionPage(document, axle, forms);
  const { form } = page;
  const [isAsked, setAsked] = useState(false);
  const { state, last, wasLeft, ask, cancel } = useKeptStudy<ReachOrder>('reach.answer');
  const read = useMemo(() => readReach(form, document), [form, document]);
  const faults = isAsked && 'faults' in read ? read.faults : {};

  const run = (event?: FormEvent): void => {
    event?.preventDefault();
    if ('faults' in read) return setAsked(true);
    setAsked(false);
    const { question } = read;
    const from = form.setup;
    const { meshes } = partMeshFiles(document.parts);
    ask({ study: 'reach', document, setup: setupNamed(document, from), question, from, meshes }, ({ answer, took }) =>
      tellRun([
        `${formatNumber(answer.tried, 0)} combinations,`,
        answer.all
          ? 'every one tried'
          : `searched: ${answer.starts ? `${answer.starts.agreed} of ${answer.starts.of} starts agreed` : 'not all tried'}`,
        `${timeTaken(took)}, ${answer.all ? 'nothing random' : `seed ${question.seed ?? 1}`}`,
      ]),
    );
  };
  const changed = last && changedSince(last.order, read, document);
  return (
    <div className="reach">
      <KeptQuestions document={document} page={page} onChosen={() => setAsked(false)} onFaulty={() => setAsked(true)} />
      <ReachQuestion form={form} document={document} axle={axle} faults={faults} onChange={page.change} onRun={run} />
      <RunProgress state={state} onCancel={cancel} />
      {wasLeft && <LeftBanner onRun={() => run()} />}
      {state.kind === 'failed' && <FailureBanner failure={state.failure} />}
      {last && state.kind !== 'failed' ? (
        <ReachAnswers key={String(last.took)} answered={last} changed={changed} wasLeft={wasLeft} onRun={() => run()} />
      ) : (
        state.kind !== 'running' && (
          <p className="empty">
            Say what you want and which parts you may turn. Every combination of their real steps is tried up to{' '}
            {formatNumber(MOST_TRIED, 0)}; past that they are searched.
            <Walls document={document} />
          </p>
        )
      )}
    </div>
  );
};

/** The rules of the file, which no answer breaks. */
const Walls = ({ document }: { readonly document: CarDocument }) => {
  const units = useUnits();
  const words = (document.limits ?? []).map((limit) => ruleWords(limit, document, units));
  if (words.length === 0) return <> No rule stands in this car file: Points, Limits takes them.</>;
  return <> No answer breaks a rule of the car file: {words.join('; ')}.</>;
};

/** How the form and the question of the file become one another. */
const reachForms = (document: CarDocument, setup: string, axle: AxleName): QuestionForms<'reach', ReachForm> => ({
  ask: 'reach',
  begin: () => beginReach(document, setup, axle),
  formOf: (question) => formOf(document, question, setup),
  questionOf: (form) => {
    const read = readReach(form, document);
    return 'question' in read ? read : { fault: null };
  },
});

/** What was changed since an answer was asked for; null: nothing. */
const changedSince = (asked: ReachOrder, now: ReturnType<typeof readReach>, document: CarDocument): 'car' | 'question' | null => {
  if (isStale(asked.document, document, asked.from)) return 'car';
  return 'question' in now && isSameDocument(now.question, asked.question) ? null : 'question';
};

interface QuestionProps {
  readonly form: ReachForm;
  readonly document: CarDocument;
  readonly axle: AxleName;
  readonly faults: ReachFaults;
  readonly onChange: (form: ReachForm) => void;
  readonly onRun: (event: FormEvent) => void;
}

const ReachQuestion = ({ form, document, axle, faults, onChange, onRun }: QuestionProps) => {
  const id = useId();
  const combinations = combinationsOf(form, document);
  const toe = ownToe(document, form.setup, axlesAsked(form, document));
  const faultId = (field: string): string | null => (faults[field] === undefined ? null : `${id}-${field}`);
  const words =
    form.may.length === 0
      ? ''
      : combinations === null
        ? 'a number is missing in what may be turned'
        : `${formatNumber(combinations, 0)} combination${combinations === 1 ? '' : 's'}${combinations > MOST_TRIED ? ': searched, not all tried' : ', all tried'}`;
  return (
    <form className="ask reachask" onSubmit={onRun} noValidate aria-label="Reach">
      <div className="reachquestion">
        <section aria-label="I want">
          <div className="questionhead">
            <h2>I want</h2>
            <button
              type="button"
              className="button small"
              onClick={() =>
                onChange({
                  ...form,
                  wanted: [...form.wanted, nextWanted(document, form, axle)],
                })
              }
            >
              Add a reading
            </button>
          </div>
          <ul>
            {form.wanted.map((wanted, index) => (
              <WantedRow
                key={wanted.id}
                wanted={wanted}
                document={document}
                idBase={id}
                faults={faults}
                isFirst={index === 0}
                isLast={index === form.wanted.length - 1}
                onChange={(next) => onChange({ ...form, wanted: form.wanted.map((one) => (one.id === next.id ? next : one)) })}
                onMove={(by) => onChange({ ...form, wanted: moved(form.wanted, wanted.id, by) })}
                onRemove={() => onChange({ ...form, wanted: form.wanted.filter((one) => one.id !== wanted.id) })}
              />
            ))}
          </ul>
          {faults['wanted'] !== undefined && (
            <p className="qfault" role="alert">
              {faults['wanted']}
            </p>
          )}
        </section>
        <MayTurn form={form} document={document} axle={axle} idBase={id} faults={faults} onChange={onChange} />
      </div>
      <div className="runbar">
        <label className="choice">
          <span>from</span>
          <SetupSelect
            document={document}
            setup={form.setup}
            faultId={faultId('setup')}
            onChange={(setup) => onChange({ ...form, setup })}
          />
        </label>
        <ToePicker
          own={toe}
          choice={form.toe}
          faultId={faultId('toe')}
          onChange={(choice) => onChange({ ...form, toe: choice })}
        />
        <label className="choice">
          <span>the best</span>
          <QuestionField
            label="How many answers"
            className="counted"
            field={form.count}
            shown={PLAIN_NUMBER}
            faultId={faultId('count')}
            onChange={(count) => onChange({ ...form, count })}
          />
        </label>
        <span className="quiet" role="status">
          {words}
        </span>
        <span className="spread" />
        <button type="submit" className="button primary run">
          Find settings <span className="key">Enter</span>
        </button>
      </div>
      {['setup', 'toe', 'count'].map(
        (field) =>
          faults[field] !== undefined && (
            <p key={field} id={`${id}-${field}`} className="qfault" role="alert">
              {faults[field]}
            </p>
          ),
      )}
    </form>
  );
};
