import { parseCar, parseCarBytes } from '../../../geometry/index';
import { fileNameFor } from '../../files/places';
import { changeFiles, isUnsaved, type BenchStore } from '../benchStore';
import { putOnBench } from './openCar';

/** Judges the text of a refused file anew after a mend. The file on the disk stays as it is. */
export const recheckRefused = (store: BenchStore, text: string): void => {
  const { refused } = store.getState();
  if (!refused) return;
  const read = parseCarBytes(new TextEncoder().encode(text));
  store.setState({ refused: { ...refused, text, faults: read.ok ? [] : read.failure.faults, isMended: true } });
};

/** Opens a text that has no fault any more as a car that is in no file yet; asks first where the open one is unsaved. */
export const openMended = (store: BenchStore): void => {
  const { refused } = store.getState();
  if (!refused || refused.text === null) return;
  const read = parseCar(refused.text);
  if (!read.ok) return;
  const name = fileNameFor(refused.title).replace(/(\.jounce)?\.json$/i, '-mended$&');
  const open = (): void =>
    putOnBench(
      store,
      { title: refused.title, sample: null, place: { kind: 'none', name }, savedAt: null, isNeverSaved: true },
      read.value,
    );
  store.setState({ refused: null });
  if (isUnsaved(store.getState())) changeFiles(store, { question: { title: read.value.document.name || refused.title, open } });
  else open();
};
