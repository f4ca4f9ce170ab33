import { useEffect, useMemo, useState } from 'react';
import { Segments } from '../look/controls/Segments';
import { Unreachable } from '../readings/Unreachable';
import { useBench, useWindow } from '../shell/benchContext';
import { showUnfinished } from '../state/actions/beginCar';
import { choosePage } from '../state/actions/lookAt';
import { askPick, choosePoint, layViews } from '../state/actions/viewing';
import type { BegunCar } from '../state/begunCar';
import { useKept } from '../shell/keptState';
import { CarCautions } from './CarCautions';
import { CarPanel, type PanelName } from './CarPanels';
import { CoordinatesIn } from './coordinates/CoordinatesIn';
import { afterTaking, NO_LIST, questionOf, withQuestion } from './coordinates/keptList';
import { NewCar, type Next } from './newCar/NewCar';
import { Steps } from './newCar/Steps';
import { UnfinishedPoints } from './newCar/UnfinishedPoints';
import { stepsOf, type StepName } from './newCar/newCarSteps';
import './points.css';

const TABS = [
  { name: 'points', label: 'Points' },
  { name: 'axle', label: 'Axle' },
  { name: 'adjusters', label: 'Adjusters' },
  { name: 'car', label: 'Car' },
  { name: 'fitUp', label: 'Parts' },
] as const satisfies readonly { readonly name: PanelName; readonly label: string }[];

/** What the page shows beside its table: a list of coordinates being read in, or a car being made. */
type Over = 'none' | 'coordinates' | 'newCar';

/** The coordinates of the car and everything else of its file, edited by hand; lists of points in and out; a new car. */
export const PointsPage = () => {
  const { store } = useWindow();
  const axle = useBench((state) => state.axle);
  const isOpen = useBench((state) => state.history !== null);
  const begun = useBench((state) => state.file?.begun ?? null);
  const given = useBench((state) => (state.isGiving ? state.unfinished : null));
  const [tab, setTab] = useKept<(typeof TABS)[number]['name']>('points.tab', () => 'points');
  const [step, setStep] = useKept<StepName>('points.step', () => 'points');
  const [list, setList] = useKept('points.list', () => NO_LIST);
  // a list that is being read in is there again when one comes back to the page
  const [wasReading, keepReading] = useKept('points.reading', () => false);
  const [over, setOver] = useState<Over>(wasReading ? 'coordinates' : 'none');
  const isReading = over === 'coordinates';
  useEffect(() => {
    if (wasReading !== isReading) keepReading(isReading);
  });
  const panel: PanelName = begun ? (step === 'layout' ? 'points' : step) : tab;
  // a part is turned in the solid picture; points are measured in two views square to the car
  const isSolid = panel === 'adjusters';
  useEffect(() => {
    layViews(store, isSolid ? [] : ['front', 'top']);
    // the point that was chosen in the table is not what is made here
    if (isSolid) choosePoint(store, null);
  }, [store, isSolid]);
  useEffect(
    () => () => {
      layViews(store, []);
      askPick(store, null);
    },
    [store],
  );
  /** A list of coordinates is of the step of points: it is kept, and stands over no other one. */
  const goTo = (next: StepName) => {
    setStep(next);
    setOver('none');
  };
  const goToTab = (next: typeof tab) => {
    setTab(next);
    setOver('none');
  };
  /** Goes on from a layout, its own or another's. */
  const goOn = (next: Next) => {
    setStep('points');
    setOver(next === 'unfinished' ? 'none' : next);
    if (next === 'unfinished') showUnfinished(store, true);
  };
  if (given)
    return (
      <UnfinishedPoints
        car={given}
        onLayout={() => {
          showUnfinished(store, false);
          setOver('newCar');
        }}
        onLater={isOpen ? () => showUnfinished(store, false) : null}
        onMade={() => goOn('none')}
      />
    );
  if (over === 'newCar' || !isOpen) return <NewCar begun={null} onCancel={isOpen ? () => setOver('none') : null} onMade={goOn} />;
  const isLayout = begun !== null && step === 'layout';
  return (
    <>
      {begun && <NewCarSteps begun={begun} chosen={step} onChoose={goTo} />}
      {isLayout ? (
        <NewCar key={begun.documents.length} begun={begun} onCancel={null} onMade={goOn} />
      ) : (
        <>
          <section className="column pointpanel" aria-label="Car file">
            <div className="pagehead">
              {!begun && <Segments label="What is edited" options={TABS} chosen={tab} onChoose={goToTab} />}
              <span className="spread" />
              <button
                type="button"
                className="button"
                onClick={() => {
                  setStep('points');
                  setTab('points');
                  setOver(over === 'coordinates' ? 'none' : 'coordinates');
                }}
                aria-expanded={over === 'coordinates'}
              >
                Coordinates in
              </button>
              <button type="button" className="button" data-press="new-car" onClick={() => setOver('newCar')}>
                {begun ? 'Another new car' : 'New car'}
              </button>
            </div>
            <Unreachable />
            <CarCautions />
            <CarPanel key={panel === 'car' ? panel : `${panel} ${axle}`} panel={panel} />
            {begun && over === 'none' && <StepEnd begun={begun} chosen={step} onChoose={goTo} />}
          </section>
          {over === 'coordinates' && (
            <CoordinatesIn
              question={questionOf(list, axle)}
              isShiftKept={list.isShiftKept}
              onAsk={(question) => setList((before) => withQuestion(before, axle, question))}
              onTaken={() => setList(afterTaking)}
              onClose={() => setOver('none')}
            />
          )}
        </>
      )}
    </>
  );
};

interface OfSteps {
  readonly begun: BegunCar;
  readonly chosen: StepName;
  readonly onChoose: (step: StepName) => void;
}

const useSteps = (begun: BegunCar) => {
  const document = useBench((state) => state.history?.present.document ?? null);
  return useMemo(() => (document ? stepsOf(begun, document) : []), [begun, document]);
};

const NewCarSteps = ({ begun, chosen, onChoose }: OfSteps) => (
  <Steps steps={useSteps(begun)} chosen={chosen} onChoose={onChoose} />
);

/** On to the next step, or back; nothing has to be filled in for it. */
const StepEnd = ({ begun, chosen, onChoose }: OfSteps) => {
  const { store } = useWindow();
  const steps = useSteps(begun);
  const at = steps.findIndex(({ name }) => name === chosen);
  const [before, next] = [steps[at - 1], steps[at + 1]];
  return (
    <div className="newend">
      {before && (
        <button type="button" className="button" onClick={() => onChoose(before.name)}>
          Back: {before.label.toLowerCase()}
        </button>
      )}
      <span className="spread" />
      <button type="button" className="button primary" onClick={() => (next ? onChoose(next.name) : choosePage(store, 'bench'))}>
        {next ? `Next: ${next.label.toLowerCase()}` : 'To the bench'}
      </button>
    </div>
  );
};
