import { useMemo } from 'react';
import { compare, toMechanism, type AxleName, type CarDocument, type CarMechanism } from '../../../geometry/index';
import { sweepSetup, type CurveOver, type SweptSetup } from '../../compute/curves';
import { memoLast } from '../../compute/memoLast';
import { motionRanges } from '../../compute/motionRanges';
import { standingRow } from '../../compute/standing';
import { KeepTable } from '../../lengths/KeepTable';
import { useUnits } from '../../look/units';
import { againstGroups } from '../../setups/againstChoices';
import { useBench, useWindow } from '../../shell/benchContext';
import { choosePage } from '../../state/actions/lookAt';
import { chooseSetup } from '../../state/actions/editSetup';
import { comparedWith, type Bench } from '../../state/benchStore';
import type { Compared } from '../../state/compared';
import { setupNamed } from '../../state/settings';
import { shownQuantity } from '../../units/shownQuantity';
import { KeptQuestions } from '../kept/KeptQuestions';
import { useQuestionPage } from '../kept/useQuestionPage';
import { faultOfPlace, placeWords } from '../question/place';
import { PlacePicker } from '../question/PlacePicker';
import { CompareCurve, LETTERS } from './CompareCurve';
import { ReadingTable } from './CompareReadings';
import { CompareSettings } from './CompareSettings';
import { compareForms, comparePosition, MOST_OTHERS, othersOf, type CompareForm } from './compareForm';
import { compareGroups, comparePlainTable } from './compareTable';
import { settingsCompared } from './settingRows';
import './compare.css';

/** Setups at the same positions: value, value, difference. */
export const CompareStudy = () => {
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  return bench && <CompareOf bench={bench} axle={axle} />;
};

const mechanismOf = memoLast((document: CarDocument): CarMechanism => toMechanism(document), 4);
const OVERS: readonly { readonly name: CurveOver; readonly label: string }[] = [
  { name: 'bump', label: 'bump' },
  { name: 'roll', label: 'roll' },
  { name: 'steer', label: 'steer' },
];

const CompareOf = ({ bench, axle }: { readonly bench: Bench; readonly axle: AxleName }) => {
  const { store } = useWindow();
  const units = useUnits();
  const saved = useBench((state) => state.file?.saved.document ?? null);
  const asOnBench = useBench(comparedWith);
  const forms = useMemo(() => compareForms(axle), [axle]);
  const page = useQuestionPage(bench.document, axle, forms);
  const { form, change: setForm } = page;
  const groups = useMemo(() => againstGroups(bench, saved), [bench, saved]);
  const choices = useMemo(() => groups.flatMap((group) => group.choices), [groups]);
  const others = useMemo(
    () => othersOf({ others: form.others }, choices, bench, saved, asOnBench),
    [form.others, choices, bench, saved, asOnBench],
  );
  const { document, setup } = bench;
  const setups = useMemo<readonly Compared[]>(() => [{ document, setup, name: setup }, ...others], [document, setup, others]);
  const position = useMemo(() => comparePosition(form.place, document, axle), [form.place, document, axle]);
  const comparison = useMemo(
    () =>
      position &&
      compare(
        setups.map((one) => ({ mechanism: mechanismOf(one.document), setup: setupNamed(one.document, one.setup) })),
        position,
      ),
    [setups, position],
  );
  const table = useMemo(
    () => comparison && compareGroups(comparison, axle, document, units),
    [comparison, axle, document, units],
  );
  const settings = useMemo(() => settingsCompared(setups, units), [setups, units]);
  const fault = faultOfPlace(form.place);
  const names = setups.map(({ name }) => name);
  const choose = (index: number, value: string) => {
    const values = others.map((one) => one.value);
    setForm({
      ...form,
      others: value === '' ? values.filter((_, at) => at !== index) : Object.assign([...values], { [index]: value }),
    });
  };
  const toSheet = (index: number) => {
    const one = setups[index];
    if (!one || (index > 0 && others[index - 1]?.value !== `own:${one.setup}`)) return null;
    return () => {
      chooseSetup(store, one.setup);
      choosePage(store, 'sheet');
    };
  };
  const free = choices.find(({ value }) => !others.some((one) => one.value === value));
  return (
    <div className="comparestudy">
      <KeptQuestions document={document} page={page} />
      <form className="ask" aria-label="Compare" onSubmit={(event) => event.preventDefault()}>
        <div className="sentence">
          <span>
            Compare <b>{setup}</b> with
          </span>
          {others.map((one, index) => (
            <select
              key={one.value}
              className="pick reading dotted"
              aria-label={`Setup ${index + 2}`}
              value={one.value}
              onChange={(event) => choose(index, event.target.value)}
            >
              {groups.map((group) => (
                <optgroup key={group.label} label={group.label}>
                  {group.choices.map(({ value, label }) => (
                    <option key={value} value={value}>
                      {label}
                    </option>
                  ))}
                </optgroup>
              ))}
              {others.length > 1 && <option value="">take it out</option>}
            </select>
          ))}
          {free && others.length < MOST_OTHERS && (
            <button type="button" className="button" onClick={() => choose(others.length, free.value)}>
              + setup
            </button>
          )}
          <span>at</span>
          <PlacePicker of="comparison" place={form.place} onChange={(place) => setForm({ ...form, place })} />
          <span>curves over</span>
          <select
            className="pick"
            aria-label="Curves over"
            value={form.over}
            onChange={(event) => setForm({ ...form, over: event.target.value as CurveOver })}
          >
            {OVERS.filter(({ name }) => name !== 'steer' || document[axle]?.steering !== undefined).map(({ name, label }) => (
              <option key={name} value={name}>
                {label}
              </option>
            ))}
          </select>
          <span className="spread" />
          {table && (
            <KeepTable
              name={`comparison at ${placeWords(form.place, units)}`}
              table={() => comparePlainTable(table, setup, names.slice(1))}
            />
          )}
        </div>
        {fault !== null && (
          <p className="qfault" role="alert">
            Where: {fault}.
          </p>
        )}
      </form>
      {others.length === 0 && (
        <p className="empty">
          There is nothing to compare {setup} with. Copy a setup, or choose another file in the header at “against”.
        </p>
      )}
      {comparison && table && others.length > 0 && (
        <>
          <div className={`comparetables${names.length > 2 ? ' several' : ''}`}>
            <CompareSettings
              compared={settings}
              names={names}
              axles={(['front', 'rear'] as const).filter((one) => document[one] !== undefined).length}
              onCar={document.onCar ?? null}
              toSheet={toSheet}
            />
            <section className="answers comparereadings" aria-label="Readings compared">
              <div className="answershead">
                <h2>
                  {axle === 'front' ? 'Front' : 'Rear'} readings at {placeWords(form.place, units)}
                </h2>
                <span className="quiet">this less the other; hatched past what matters</span>
                <span className="spread" />
                <label className="tick">
                  <input
                    type="checkbox"
                    checked={form.withAlike}
                    onChange={(event) => setForm({ ...form, withAlike: event.target.checked })}
                  />
                  alike too
                </label>
              </div>
              {comparison.setups.map((answer, index) =>
                answer.ok ? null : (
                  <p key={names[index]} className="verdict broken">
                    <b>{names[index]}</b> cannot be there: {answer.failure.message}
                  </p>
                ),
              )}
              <div className="answertable" tabIndex={0} role="region" aria-label="Table of readings">
                <ReadingTable groups={table} names={names} withAlike={form.withAlike} />
              </div>
            </section>
          </div>
          <CompareCurves setups={setups} axle={axle} form={form} onChange={setForm} />
        </>
      )}
    </div>
  );
};

interface CurvesProps {
  readonly setups: readonly Compared[];
  readonly axle: AxleName;
  readonly form: CompareForm;
  readonly onChange: (form: CompareForm) => void;
}

const CompareCurves = ({ setups, axle, form, onChange }: CurvesProps) => {
  const units = useUnits();
  const [own, first, ...more] = setups;
  const document = own?.document;
  const over = form.over === 'steer' && document?.[axle]?.steering === undefined ? 'bump' : form.over;
  const motion = useMemo(
    () => shownQuantity({ quantity: over === 'roll' ? 'angle' : 'length', decimals: over === 'roll' ? 2 : 1 }, units),
    [over, units],
  );
  const swept = useMemo(() => {
    if (!own) return [];
    const ranges = motionRanges(own.document, axle, standingRow({ document: own.document, setup: own.setup }, axle));
    const range = { bump: ranges.travel, roll: ranges.roll, steer: ranges.rack }[over] ?? ranges.travel;
    const { travel, roll, rack } = form.place;
    const held = { travel: travel.value ?? 0, rollDeg: roll.value ?? 0, rack: rack.value ?? 0 };
    const span = { over, from: range.min, to: range.max, held };
    return setups.map(({ document: of, setup }): { range: typeof range; swept: SweptSetup | null } => {
      const made = sweepSetup(of, setup, axle, span, form.curves);
      return { range, swept: made.ok ? made.value : null };
    });
  }, [setups, own, axle, over, form.place, form.curves]);
  const names = useMemo(() => setups.map(({ name }) => name), [setups]);
  const further = useMemo(
    () =>
      more.flatMap(({ name }, index) => {
        const of = swept[index + 2]?.swept;
        return of ? [{ name, swept: of }] : [];
      }),
    [more, swept],
  );
  const range = swept[0]?.range;
  const question = useMemo(
    () =>
      document && {
        motion,
        own: swept[0]?.swept ?? null,
        compared: swept[1]?.swept ?? null,
        document,
        axle,
        over,
        setups: names,
      },
    [motion, swept, document, axle, over, names],
  );
  if (!own || !question || !range) return null;
  const at = { bump: form.place.travel.value, roll: form.place.roll.value, steer: form.place.rack.value }[over];
  return (
    <section className="comparecurves" aria-label="Curves">
      <div className="curvehead">
        <h2>
          Curves over {over}, {motion.unit || '°'}
        </h2>
        <span className="legend">
          <Key kind="left">left</Key>
          <Key kind="right">right</Key>
          {first && <Key kind="compared">{first.name}</Key>}
          {more.map(({ name }, index) => (
            <Key key={name} kind={`more m${index}`}>
              {`${LETTERS[index] ?? ''}: ${name}`}
            </Key>
          ))}
        </span>
      </div>
      <div className="compareplots">
        {form.curves.map((number, place) => (
          <CompareCurve
            key={place}
            number={number}
            place={place}
            question={question}
            motion={{ name: over, shown: motion }}
            x={[motion.toShown(range.min), motion.toShown(range.max)]}
            at={at === null ? null : motion.toShown(at)}
            setup={own.name}
            comparedName={first?.name ?? null}
            more={further}
            onChoose={(chosen) =>
              onChange({ ...form, curves: form.curves.map((one, index) => (index === place ? chosen : one)) })
            }
          />
        ))}
      </div>
    </section>
  );
};

const Key = ({ kind, children }: { readonly kind: string; readonly children: string }) => (
  <span>
    <svg viewBox="0 0 26 10" aria-hidden="true">
      <path className={`curve ${kind}`} d="M1,5H26" />
      {kind === 'left' && <circle className="mark left" cx="13" cy="5" r="3.4" />}
      {kind === 'right' && <rect className="mark right" x="9.8" y="1.8" width="6.4" height="6.4" />}
      {kind === 'compared' && <path className="mark compared" d="M13,.8l4.2,4.2l-4.2,4.2l-4.2,-4.2z" />}
    </svg>
    {children}
  </span>
);
