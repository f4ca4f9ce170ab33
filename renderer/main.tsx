import { createRoot } from 'react-dom/client';
import '@fontsource-variable/encode-sans/wdth.css';
import './look/tokens.css';
import './look/base.css';
import './look/controls/controls.css';
import './shell/shell.css';
import './adjusters/adjusters.css';
import './readings/readings.css';
import './motion/motion.css';
import './viewport/viewport.css';
import './lengths/lengths.css';
import './curves/curves.css';
import { findFiles, keepPresence } from './files/findFiles';
import { App } from './shell/App';
import { WindowContext } from './shell/benchContext';
import { isHandDown } from './shell/handDown';
import { isUnderDialog } from './shell/windowKeys';
import { pageOfAddress } from './shell/pages';
import { choosePage } from './state/actions/lookAt';
import { beginWindow } from './state/actions/beginWindow';
import { chooseCar } from './state/actions/chooseCar';
import { redoStep, undoStep } from './state/actions/editSetup';
import { keepCopies } from './state/actions/keepCopies';
import { keepUnfinishedCopies } from './state/actions/keepUnfinishedCopies';
import { openHanded } from './state/actions/openCar';
import { openBefore, rememberOpen } from './state/actions/rememberOpen';
import { saveCar, saveCarAs } from './state/actions/saveCar';
import { watchFile } from './state/actions/watchFile';
import { changeFiles, createBenchStore } from './state/benchStore';

const store = createBenchStore();
const files = findFiles();
const keeper = keepCopies(store, files);
const unfinished = keepUnfinishedCopies(store, files, keeper);
const place = document.getElementById('window');

if (place) {
  createRoot(place).render(
    <WindowContext value={{ store, files, keeper }}>
      <App />
    </WindowContext>,
  );
  const goToAddress = (): void => choosePage(store, pageOfAddress(window.location.hash));
  goToAddress();
  window.addEventListener('hashchange', goToAddress);
  keepPresence(store.getState().files.window, (isThere) => {
    const { lostAt } = store.getState().files;
    if (isThere !== (lostAt === null)) changeFiles(store, { lostAt: isThere ? null : Date.now() });
  });
  watchFile(store, files);
  // An edit of the last moment is kept too, as far as the browser lets a leaving page write.
  window.addEventListener('beforeunload', () => {
    keeper.keepAtOnce();
    unfinished.keepNow();
  });
  files.whenHanded((file) => void openHanded(store, files, file));
  files.whenAsked((command) => {
    if (isUnderDialog()) return;
    const answers = {
      open: () => chooseCar(store, files),
      save: () => saveCar(store, files),
      saveAs: () => saveCarAs(store, files),
      undo: () => (isHandDown() ? undefined : undoStep(store)),
      redo: () => (isHandDown() ? undefined : redoStep(store)),
    };
    void answers[command]();
  });
  const before = openBefore(window.sessionStorage);
  rememberOpen(store, window.sessionStorage);
  void beginWindow(store, files, before);
}
