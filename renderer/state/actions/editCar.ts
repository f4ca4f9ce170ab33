import type { AxleDocument, AxleName, CarDocument, SideName, Triple } from '../../../geometry/index';
import { change, type BenchStore } from '../benchStore';
import { record } from '../history';
import { pointCalled } from '../pointNames';

/**
 * One edit of the car itself, undone like any other: points, rods, wheel, parts, limits, setups.
 * @param name - what the person did, for the undo button: "Move ball joint"
 */
export const editCar = (store: BenchStore, name: string, changed: (document: CarDocument) => CarDocument): void => {
  const { history } = store.getState();
  if (!history) return;
  const document = changed(history.present.document);
  if (document === history.present.document) return;
  change(store, { history: record(history, name, { ...history.present, document }) });
};

/**
 * Another name for a point, which was told to all that names it: it is still compared with its saved self under the old one.
 * @param document - the car with the new name
 */
export const callPoint = (store: BenchStore, axle: AxleName, from: string, to: string, document: CarDocument): void => {
  const { history } = store.getState();
  if (!history || document === history.present.document) return;
  const names = pointCalled(history.present.names ?? {}, axle, from, to);
  change(store, { history: record(history, `Rename ${from}`, { ...history.present, document, names }) });
};

const withAxle = (document: CarDocument, axle: AxleName, changed: (axle: AxleDocument) => AxleDocument): CarDocument => {
  const before = document[axle];
  return before ? { ...document, [axle]: changed(before) } : document;
};

/** The same for one axle; nothing happens where the car has none. */
export const editAxle = (store: BenchStore, axle: AxleName, name: string, changed: (axle: AxleDocument) => AxleDocument): void =>
  editCar(store, name, (document) => withAxle(document, axle, changed));

/**
 * Puts a point of the file somewhere else.
 * @param side - `left`: the point of the axle, which the right-hand side mirrors unless it has its own; `right`: the
 *   right-hand side's own point
 * @param to - in the file's unit, in the frame of the car; a right-hand point has its negative y
 */
export const movePoint = (store: BenchStore, axle: AxleName, side: SideName, point: string, to: Triple, name: string): void =>
  editAxle(store, axle, name, (before) =>
    side === 'left'
      ? { ...before, points: { ...before.points, [point]: to } }
      : { ...before, right: { ...before.right, points: { ...before.right?.points, [point]: to } } },
  );
