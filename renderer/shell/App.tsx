import { useEffect, useRef, useState } from 'react';
import { Adjusters } from '../adjusters/Adjusters';
import { Motion } from '../motion/Motion';
import { Readings } from '../readings/Readings';
import { redoStep, undoStep } from '../state/actions/editSetup';
import { standStill } from '../state/actions/lookAt';
import { Viewport } from '../viewport/Viewport';
import { useBench, useWindow } from './benchContext';
import { BenchPanels, type BenchPanel } from './BenchPanels';
import { Cautions } from './Cautions';
import { Header } from './Header';
import { PAGES } from './pages';
import { Rail } from './Rail';
import { RefusedFile } from './RefusedFile';
import { useNarrow } from './useNarrow';
import { useTheme } from './useTheme';
import { typingIn, windowCommand } from './windowKeys';

/** The whole window: rail, header, and the bench. */
export const App = () => {
  const { store } = useWindow();
  const theme = useTheme();
  const page = useBench((state) => state.page);
  const narrow = useNarrow();
  const [panel, setPanel] = useState<BenchPanel>('view');
  const opener = useRef<HTMLInputElement>(null);

  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const command = windowCommand(event, typingIn(event.target instanceof Element ? event.target : null));
      if (!command) return;
      event.preventDefault();
      switch (command) {
        case 'undo':
          return undoStep(store);
        case 'redo':
          return redoStep(store);
        case 'zero':
          return standStill(store);
        case 'open':
          return opener.current?.click();
      }
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [store]);

  return (
    <div className="app">
      <Rail />
      <Header opener={opener} />
      <main className={page} data-panel={narrow ? panel : undefined} aria-label={PAGES.find(({ name }) => name === page)?.label}>
        {page === 'bench' && narrow && <BenchPanels chosen={panel} onChoose={setPanel} />}
        {page === 'bench' && <Adjusters />}
        {/* One canvas for all pages: it stays mounted here and each page gives it its place. */}
        <div className="middle" key="middle">
          <Viewport theme={theme} />
          <Cautions />
        </div>
        {page === 'bench' && <Readings />}
        {page === 'bench' && <Motion />}
      </main>
      <RefusedFile />
    </div>
  );
};
