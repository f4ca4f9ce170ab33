import { Segments } from '../look/controls/Segments';
import { GIVEN_MESH } from '../points/parts/givenMesh';
import { useBench, useWindow } from '../shell/benchContext';
import { useKept } from '../shell/keptState';
import { choosePage } from '../state/actions/lookAt';
import '../studies/studies.css';
import { ClearanceTab } from './clearance/ClearanceTab';
import './fitup.css';
import { FitUpCautions } from './FitUpCautions';
import { JointsTab } from './joints/JointsTab';
import { ALL_ASKED, type FitUpAsked, type FitUpTab } from './fitUpQuestion';
import { KeepOutTab } from './keepOut/KeepOutTab';
import { LoadsTab } from './loads/LoadsTab';
import { StrokeTab } from './stroke/StrokeTab';
import { useStlDrop } from './useStlDrop';

const TABS: readonly { readonly name: FitUpTab; readonly label: string }[] = [
  { name: 'clearance', label: 'Clearance' },
  { name: 'joints', label: 'Joints' },
  { name: 'stroke', label: 'Stroke, threads' },
  { name: 'loads', label: 'Link loads' },
  { name: 'keepOut', label: 'Keep-out' },
];

/** Whether it touches, binds or runs out of thread, and what it carries: tables with the least to spare first, and where it is. */
export const FitUpPage = ({ theme }: { readonly theme: string }) => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const axle = useBench((state) => state.axle);
  const [tab, setTab] = useKept<FitUpTab>('fitup.tab', () => 'clearance');
  // the tab of the page of points that edits them
  const [, giveMesh] = useKept<File | null>(GIVEN_MESH, () => null);
  const [, showParts] = useKept<string>('points.tab', () => 'points');
  useStlDrop((file) => {
    giveMesh(file);
    showParts('fitUp');
    choosePage(store, 'points');
  });
  const [asked, setAsked] = useKept<FitUpAsked>('fitup.asked', () => ALL_ASKED);
  const goToTab = (next: FitUpTab) => {
    setTab(next);
    // every tab draws the row of tabs anew, and the one that was pressed would lose the keys
    requestAnimationFrame(() => window.document.querySelector<HTMLElement>('.fituptabs [aria-pressed="true"]')?.focus());
  };
  if (!bench) return <p className="nostudies">No car is open. Open one, or a sample, from the file menu.</p>;
  const tabs = (
    <>
      <Segments label="Fit-up" options={TABS} chosen={tab} className="fituptabs" onChoose={goToTab} />
      <button
        type="button"
        className="button"
        title="Parts, joints and hoses of the car file, edited on the page of points; parts of STL files there too"
        onClick={() => {
          showParts('fitUp');
          choosePage(store, 'points');
        }}
      >
        Parts…
      </button>
    </>
  );
  const common = {
    document: bench.document,
    setup: bench.setup,
    axle,
    asked,
    onAsk: setAsked,
    tabs,
    theme,
    cautions: <FitUpCautions tab={tab} />,
  };
  switch (tab) {
    case 'clearance':
      return <ClearanceTab {...common} />;
    case 'joints':
      return <JointsTab {...common} />;
    case 'keepOut':
      return <KeepOutTab {...common} />;
    case 'loads':
      return <LoadsTab {...common} />;
    default:
      return <StrokeTab {...common} />;
  }
};
