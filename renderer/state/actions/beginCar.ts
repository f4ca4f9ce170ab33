import { parseCar, serializeCar, type AxleName, type CarDocument } from '../../../geometry/index';
import type { BegunCar, NewCarChoice, UnfinishedCar } from '../begunCar';
import type { BenchStore } from '../benchStore';
import { fileNameFor } from '../../files/places';
import { editCar } from './editCar';
import { putOnBench } from './openCar';

/**
 * Puts a new car on the bench in place of what is open, without asking. It is in no file yet: unsaved from the start, with a
 * recovery copy.
 * @returns whether it could be opened
 */
export const beginCar = (store: BenchStore, choice: NewCarChoice, document: CarDocument): boolean => {
  const read = parseCar(serializeCar(document));
  if (!read.ok) return false;
  putBegun(store, { choice, documents: [read.value.document] }, read.value);
  store.setState({ isLengthChosen: false });
  return true;
};

/** The same for a car whose every point was given: none of them is typical. Nothing is left unfinished. */
export const beginGivenCar = (store: BenchStore, choice: NewCarChoice, document: CarDocument): boolean => {
  const read = parseCar(serializeCar(document));
  if (!read.ok) return false;
  putBegun(store, { choice, documents: [] }, read.value);
  // after the car is there: the copy of its points is let go of when the car has one
  store.setState({ unfinished: null });
  return true;
};

const putBegun = (store: BenchStore, begun: BegunCar, read: Parameters<typeof putOnBench>[2]): void => {
  const { name } = begun.choice;
  const place = { kind: 'none', name: fileNameFor(name) } as const;
  putOnBench(store, { title: name, sample: null, place, savedAt: null, isNeverSaved: true, begun }, read);
};

/** Begins a new car whose points are given one by one: it is typed and read in its own unit from here on. */
export const beginUnfinished = (store: BenchStore, unfinished: UnfinishedCar): void =>
  store.setState({ unfinished, isLengthChosen: false });

/** Keeps what was given of a new car, beside the one on the bench; null: it is given up. */
export const keepUnfinished = (store: BenchStore, unfinished: UnfinishedCar | null): void =>
  store.setState(unfinished ? { unfinished } : { unfinished, isGiving: false });

/** Shows the new car whose points are being given in place of the one on the bench, or that one again. */
export const showUnfinished = (store: BenchStore, isGiving: boolean): void => store.setState({ isGiving });

/** An axle in place of the one that is there: its settings and limits go with the old one, in the same step. */
const withAxleAnew = (document: CarDocument, axle: AxleName, fresh: CarDocument): CarDocument => {
  const { [axle]: _old, ...rest } = document;
  const setups = Object.fromEntries(
    Object.entries(document.setups ?? {}).map(([name, setup]) => {
      const { [axle]: _settings, ...others } = setup;
      return [name, others];
    }),
  );
  const old = document[axle]?.adjusters ?? {};
  const limits = document.limits?.filter((limit) => !(limit.axle === axle || (limit.setting ?? '') in old));
  const { front, rear, ...car } = { ...rest, ...(fresh[axle] ? { [axle]: fresh[axle] } : {}) } as CarDocument;
  const { format, version, name, units, ...others } = car;
  return {
    ...{ format, version, name, ...(units ? { units } : {}) },
    ...(front ? { front } : {}),
    ...(rear ? { rear } : {}),
    ...others,
    ...(document.setups ? { setups } : {}),
    ...(limits ? { limits } : {}),
  };
};

/** The open car with the axles that are wanted otherwise begun anew, and with its new name; all else stays as it is. */
export const withAxlesAnew = (document: CarDocument, from: NewCarChoice, to: NewCarChoice, fresh: CarDocument): CarDocument => {
  const axles = (['front', 'rear'] as const).filter((axle) => from[axle] !== to[axle]);
  const named = document.name === to.name ? document : { ...document, name: to.name };
  return axles.reduce((now, axle) => withAxleAnew(now, axle, fresh), named);
};

/** Begins axles of the open car anew, as one undo step; nothing happens where nothing is wanted otherwise. */
export const beginAxlesAnew = (store: BenchStore, choice: NewCarChoice, fresh: CarDocument, changed: CarDocument): void => {
  const { file, history, axle } = store.getState();
  if (!file?.begun || !history || changed === history.present.document) return;
  store.setState({ file: { ...file, begun: { choice, documents: [...file.begun.documents, fresh] } } });
  if (!changed[axle]) store.setState({ axle: axle === 'front' ? 'rear' : 'front' });
  editCar(store, 'Change the layout', () => changed);
};
