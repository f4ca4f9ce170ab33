import { lazy, Suspense, useEffect, useState } from 'react';
import { Adjusters } from '../adjusters/Adjusters';
import { Curves } from '../curves/Curves';
import { CornerPicker } from '../picker/CornerPicker';
import { FileNotices } from '../files/FileNotices';
import { useFileDrop } from '../files/useFileDrop';
import { Motion } from '../motion/Motion';
import { chooseCar } from '../state/actions/chooseCar';
import { redoStep, undoStep } from '../state/actions/editSetup';
import { UnitsContext } from '../look/units';
import { chosenUnits } from '../state/chosenUnits';
import { standStill } from '../state/actions/lookAt';
import { saveCar, saveCarAs } from '../state/actions/saveCar';
import { Viewport } from '../viewport/Viewport';
import { useBench, useWindow } from './benchContext';
import { BenchPanels, type BenchPanel } from './BenchPanels';
import { Cautions } from './Cautions';
import { Header } from './Header';
import { isHandDown, watchHand } from './handDown';
import { PAGES } from './pages';
import { Rail } from './Rail';
import { RightColumn } from './RightColumn';
import { useNarrow } from './useNarrow';
import { useTitle } from './useTitle';
import { useTheme } from './useTheme';
import { isUnderDialog, selectsWindow, typingIn, windowCommand } from './windowKeys';

const RefusedFile = lazy(async () => ({ default: (await import('../files/refused/RefusedFile')).RefusedFile }));
const PointsPage = lazy(async () => ({ default: (await import('../points/PointsPage')).PointsPage }));
const StudiesPage = lazy(async () => ({ default: (await import('../studies/StudiesPage')).StudiesPage }));
const FitUpPage = lazy(async () => ({ default: (await import('../fitup/FitUpPage')).FitUpPage }));
const SheetPage = lazy(async () => ({ default: (await import('../sheet/SheetPage')).SheetPage }));
const FileDialogs = lazy(async () => ({ default: (await import('../files/FileDialogs')).FileDialogs }));

/** What stands in a field and was not taken yet is taken before it is saved. */
const finishTyping = (): void => {
  const focused = document.activeElement;
  if (!(focused instanceof HTMLElement) || typingIn(focused) !== 'draft') return;
  focused.blur();
  focused.focus();
};

/** The whole window: rail, header, and the bench. */
export const App = () => {
  const { store, files } = useWindow();
  const theme = useTheme();
  const units = useBench(chosenUnits);
  const page = useBench((state) => state.page);
  const narrow = useNarrow();
  const [panel, setPanel] = useState<BenchPanel>('view');
  const isRefused = useBench((state) => state.refused !== null);
  const isAsking = useBench(({ files: { offer, question } }) => offer !== null || question !== null);
  useFileDrop();
  useTitle();

  useEffect(watchHand, []);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const typing = typingIn(event.target instanceof Element ? event.target : null);
      const command = windowCommand(event, typing);
      if (command || selectsWindow(event, typing)) event.preventDefault();
      if (!command || isUnderDialog()) return;
      switch (command) {
        // what is under the hand is not in a step yet: an earlier one is not meant
        case 'undo':
          return isHandDown() ? undefined : undoStep(store);
        case 'redo':
          return isHandDown() ? undefined : redoStep(store);
        case 'zero':
          return standStill(store);
        case 'open':
          return void chooseCar(store, files);
        case 'save':
          finishTyping();
          return void saveCar(store, files);
        case 'saveAs':
          finishTyping();
          return void saveCarAs(store, files);
      }
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [store, files]);

  return (
    <UnitsContext value={units}>
      <div className="app">
        <Rail />
        <Header />
        <FileNotices />
        <main
          className={page}
          data-panel={narrow ? panel : undefined}
          aria-label={PAGES.find(({ name }) => name === page)?.label}
        >
          {page === 'bench' && narrow && <BenchPanels chosen={panel} onChoose={setPanel} />}
          {page === 'bench' && <Adjusters />}
          {page === 'points' && (
            <Suspense>
              <PointsPage />
            </Suspense>
          )}
          {page === 'studies' && (
            <Suspense>
              <StudiesPage />
            </Suspense>
          )}
          {page === 'fitup' && (
            <Suspense>
              <FitUpPage theme={theme} />
            </Suspense>
          )}
          {page === 'sheet' && (
            <Suspense>
              <SheetPage />
            </Suspense>
          )}
          {/* One canvas for all pages: it stays mounted here and each page gives it its place. */}
          <div className="middle" key="middle">
            <Viewport theme={theme} />
            {page === 'bench' && <CornerPicker />}
            {page === 'bench' && <Curves />}
            <Cautions />
          </div>
          {page === 'bench' && <RightColumn />}
          {page === 'bench' && <Motion />}
        </main>
        <Suspense>
          {isRefused && <RefusedFile />}
          {isAsking && <FileDialogs />}
        </Suspense>
      </div>
    </UnitsContext>
  );
};
