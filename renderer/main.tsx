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
import { findFiles, keepPresence } from './files/findFiles';
import { App } from './shell/App';
import { WindowContext } from './shell/benchContext';
import { pageOfAddress } from './shell/pages';
import { choosePage } from './state/actions/lookAt';
import { openFirstSample } from './state/actions/openCar';
import { createBenchStore } from './state/benchStore';

const store = createBenchStore();
const files = findFiles();
const place = document.getElementById('window');

if (place) {
  createRoot(place).render(
    <WindowContext value={{ store, files }}>
      <App />
    </WindowContext>,
  );
  choosePage(store, pageOfAddress(window.location.hash));
  keepPresence(crypto.randomUUID(), () => undefined);
  void openFirstSample(store, files);
}
