import { useMemo } from 'react';
import type { ArrowView, LoadWarning } from '../../../geometry/index';
import { Segments } from '../../look/controls/Segments';
import { FieldFaults, useFieldFaults } from '../../look/controls/fieldFaults';
import { useUnits } from '../../look/units';
import { KeepTable } from '../../lengths/KeepTable';
import { useCarForm } from '../../points/fields/useCarForm';
import { useWindow } from '../../shell/benchContext';
import { useKept } from '../../shell/keptState';
import { setupNamed } from '../../state/settings';
import { VerdictChip } from '../../studies/answers/AnswerCells';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import { lengthsIn } from '../clearance/clearanceTable';
import { faultyWords } from '../faultyFields';
import { FitUpProgress } from '../FitUpProgress';
import { loadsOrder, meshesOfCar } from '../fitUpQuestion';
import { FitUpWarnings } from '../FitUpWarnings';
import type { TabProps } from '../tabProps';
import { takeToBench } from '../toBench';
import { useFitUp } from '../useFitUp';
import { FitUpView, NOTHING_SHOWN } from '../view/FitUpView';
import type { FitUpViewName } from '../view/fitUpContent';
import { CaseEditor } from './CaseEditor';
import { casesInFile } from './loadCaseEdits';
import { drawnLoads } from './loadItems';
import { loadLines, loadsPlain, rodsUnderPush } from './loadLines';
import { LoadsDetail } from './LoadsDetail';
import { AT_REST, LoadsQuestion, type LoadsAsked } from './LoadsQuestion';
import { LoadsTable } from './LoadsTable';
import { byWords, carriedWords, forcesIn, pushWords, residualWords } from './loadWords';

const VIEWS: readonly { readonly name: FitUpViewName; readonly label: string }[] = [
  { name: 'corner', label: 'Corner' },
  { name: 'front', label: 'Front' },
  { name: 'side', label: 'Side' },
  { name: 'top', label: 'Top' },
];
const ARROWS: readonly { readonly name: ArrowView; readonly label: string }[] = [
  { name: 'body', label: 'On the body' },
  { name: 'knuckle', label: 'On the knuckle' },
  { name: 'links', label: 'Along the links' },
];

/** What makes the numbers of a case those of no car, or of another place, is said before them. */
const FIRST_SAID: readonly LoadWarning['code'][] = [
  'past-stop',
  'past-lock',
  'spring-pulls',
  'bar-untwisted',
  'nothing-holds',
  'assumed',
];
const isAboutPlace = ({ code }: LoadWarning): boolean => FIRST_SAID.includes(code);

/** What every link carries in every load case, with the cases to edit and the forces as arrows. */
export const LoadsTab = ({ document, setup, axle, tabs, cautions, theme }: TabProps) => {
  const { store } = useWindow();
  const units = useUnits();
  const length = lengthsIn(units);
  const angle = shownQuantity({ quantity: 'angle', decimals: 2 }, units);
  const host = useCarForm(axle);
  const [asked, ask] = useKept<LoadsAsked>('fitup.loads.asked', () => AT_REST);
  const [chosen, choose] = useKept<string | null>('fitup.loads.row', () => null);
  const [caseName, chooseCase] = useKept<string | null>('fitup.loads.case', () => null);
  const [view, setView] = useKept<FitUpViewName>('fitup.loads.view', () => 'corner');
  const [arrows, setArrows] = useKept<ArrowView>('fitup.loads.arrows', () => 'body');
  const own = asked.setup !== null && document.setups?.[asked.setup] ? asked.setup : setup;
  const rack = document[axle]?.steering ? asked.rack : 0;
  const order = loadsOrder(document, axle, own, setupNamed(document, own), asked.travel, rack, asked.rollDeg);
  const { state, last, cancel, again } = useFitUp('loads', order);
  const answered = last && last.order.axles[0] === axle ? last : null;
  const [faulty, tellFault] = useFieldFaults();
  const isOld = answered !== null && (answered.order !== order || faulty.length > 0);
  const cases = useMemo(() => answered?.answer.cases ?? [], [answered]);
  const { side } = asked;
  const lines = useMemo(() => loadLines(cases, side), [cases, side]);
  const rods = useMemo(() => rodsUnderPush(cases, side), [cases, side]);
  const one = cases.find((other) => other.case.name === caseName) ?? cases.find(({ case: { g } }) => g?.[0]) ?? cases[0] ?? null;
  const line = lines.find(({ key }) => key === chosen) ?? lines[0] ?? null;
  const drawn = useMemo(() => {
    const shown = forcesIn(units);
    return one ? drawnLoads(one, arrows, side, (newtons) => withUnit(shown.format(newtons), shown.unit)) : null;
  }, [one, arrows, side, units]);
  const shown = useMemo(() => (drawn ? { ...NOTHING_SHOWN, forces: drawn.forces } : NOTHING_SHOWN), [drawn]);
  const place = useMemo(
    () =>
      answered
        ? {
            setup: answered.order.setup,
            side,
            travel: answered.order.at.travel,
            from: 'standing' as const,
            rack: answered.order.at.rack,
            rollDeg: answered.order.at.rollDeg,
          }
        : null,
    [answered, side],
  );
  const carried = one?.carried.find((other) => other.axle === axle && other.side === side);
  const isOwn = document.loads !== undefined && Object.keys(document.loads).length > 0;
  return (
    <>
      <div className="fituptable">
        <div className="fituphead">{tabs}</div>
        <FieldFaults value={tellFault}>
          <LoadsQuestion document={document} axle={axle} setup={setup} asked={asked} onChange={ask}>
            {answered && faulty.length === 0 && <KeepTable name="loads" table={() => loadsPlain(answered.answer)} />}
          </LoadsQuestion>
        </FieldFaults>
        <FitUpProgress state={state} isOld={isOld} onCancel={cancel} onAgain={again} />
        {faulty.length > 0 && (
          <p className="fitupnote watch" role="status">
            {faultyWords(faulty)}
          </p>
        )}
        <section className={`answers fitupanswers loadsanswers${isOld ? ' old' : ''}`} aria-label="Link loads">
          {answered && !isOwn && (
            <p className="fitupnote watch">
              <b>The file gives no load cases: these are invented.</b> Change one below, or make your own; the file then keeps all
              of them.
            </p>
          )}
          {answered && <FitUpWarnings warnings={answered.answer.warnings.filter(isAboutPlace)} />}
          {one && (
            <LoadsTable
              document={document}
              axle={axle}
              side={side}
              cases={cases}
              lines={lines}
              chosenCase={one.case.name}
              chosenLine={line?.key ?? null}
              onCase={chooseCase}
              onLine={choose}
            />
          )}
          {one && (
            <dl className="loadnotes">
              {rods.map((rod) => (
                <div key={rod.link}>
                  <dt>{rod.name}</dt>
                  <dd>
                    {rod.times !== null && rod.times < 1 && <VerdictChip verdict="broken">gives way</VerdictChip>}{' '}
                    {pushWords(rod, units)}
                  </dd>
                </div>
              ))}
              {carried && (
                <div>
                  <dt>{one.case.name}</dt>
                  <dd>the wheel is {carriedWords(carried, units)}</dd>
                </div>
              )}
              {one.case.rule !== null && (
                <div>
                  <dt>Its forces by</dt>
                  <dd>{one.case.rule}</dd>
                </div>
              )}
              <div>
                <dt>In balance</dt>
                <dd>forces and moments of every body close to {residualWords(cases)}</dd>
              </div>
            </dl>
          )}
          {answered && <FitUpWarnings warnings={answered.answer.warnings.filter((warning) => !isAboutPlace(warning))} />}
          {one && host && answered && (
            <FieldFaults value={tellFault}>
              <CaseEditor
                host={host}
                cases={casesInFile(
                  document,
                  cases.map((other) => other.case),
                )}
                now={one.case}
                axle={axle}
                side={side}
                onName={chooseCase}
              />
            </FieldFaults>
          )}
        </section>
        {cautions}
      </div>
      <FitUpView
        document={document}
        axle={axle}
        meshes={meshesOfCar(document).meshes}
        place={place}
        shown={shown}
        subject={`${axle} ${side} ${arrows}`}
        view={view}
        views={VIEWS}
        onView={setView}
        title={one ? `${one.case.name}, ${byWords(one.case)}` : ''}
        subtitle={
          one
            ? `${axle} ${side}, ${own}: travel ${withUnit(length.formatChange(asked.travel), length.unit)} from standing, rack ${withUnit(length.formatChange(rack), length.unit)}${asked.rollDeg === 0 ? '' : `, roll ${withUnit(angle.formatChange(asked.rollDeg), angle.unit)}`}`
            : ''
        }
        theme={theme}
      >
        {one && line && (
          <>
            <div className="arrowchoice" data-over-view>
              <Segments label="Arrows" options={ARROWS} chosen={arrows} onChoose={setArrows} />
            </div>
            <LoadsDetail
              one={one}
              side={side}
              line={line}
              perKilonewton={drawn?.perKilonewton ?? null}
              onBench={() => takeToBench(store, { axle, side, setup: own, travel: asked.travel, rack, rollDeg: asked.rollDeg })}
            />
          </>
        )}
      </FitUpView>
    </>
  );
};
