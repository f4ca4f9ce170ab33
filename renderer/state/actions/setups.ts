import { setupNames, type CarDocument } from '../../../geometry/index';
import { benchOf, change, type Bench, type BenchStore } from '../benchStore';
import { copiesRenamed, copiesWithout, withCopy } from '../copiedFrom';
import { record } from '../history';
import { setupNamed } from '../settings';
import {
  faultOfDeleting,
  faultOfName,
  withoutSetup,
  withOnCar,
  withSetupAfter,
  withSetupMoved,
  withSetupPart,
  withSetupRenamed,
  type RecordLine,
} from '../setupEdits';

/** One edit of the list of setups: one undo step. Nothing happens where nothing changes. */
const edit = (store: BenchStore, step: string, changed: (bench: Bench) => Bench): void => {
  const { history } = store.getState();
  if (!history) return;
  const next = changed(history.present);
  if (next.document !== history.present.document) change(store, { history: record(history, step, next) });
};

const editDocument = (store: BenchStore, step: string, changed: (document: CarDocument) => CarDocument): void =>
  edit(store, step, (bench) => ({ ...bench, document: changed(bench.document) }));

/** "Wet 2", and one more than the last that there is: a copy of "Trial 3" that is called "Trial 2" would read as the one before. */
export const freeCopyName = (taken: readonly string[], of: string): string => {
  const stem = of.replace(/ \d+$/, '').slice(0, 54);
  const numbers = taken.flatMap((name) => {
    const end = name.startsWith(`${stem} `) ? name.slice(stem.length + 1) : '';
    return /^\d{1,4}$/.test(end) ? [Number(end)] : [];
  });
  return `${stem} ${Math.max(1, ...numbers) + 1}`;
};

/**
 * A setup with nothing changed from the drawing, put behind the one on the bench and on the bench.
 * @returns why it cannot be called that; null where it was made
 */
export const makeSetup = (store: BenchStore, name: string): string | null => {
  const bench = benchOf(store.getState());
  if (!bench) return null;
  const fault = faultOfName(bench.document, name, null);
  const made = name.trim();
  if (fault === null)
    edit(store, `Make setup ${made}`, (now) => ({
      ...now,
      document: withSetupAfter(now.document, now.setup, made, {}),
      setup: made,
    }));
  return fault;
};

/** A copy of a setup, put behind it and on the bench. */
export const copySetup = (store: BenchStore, from: string): void => {
  const bench = benchOf(store.getState());
  if (!bench) return;
  const name = freeCopyName(setupNames(bench.document), from);
  edit(store, `Copy setup ${from}`, (now) => ({
    ...now,
    document: withSetupAfter(now.document, from, name, setupNamed(now.document, from)),
    setup: name,
    copies: withCopy(now.copies, name, from),
  }));
};

/** @returns why it cannot be called that; null where it is */
export const renameSetup = (store: BenchStore, from: string, to: string): string | null => {
  const bench = benchOf(store.getState());
  if (!bench) return null;
  const fault = faultOfName(bench.document, to, from);
  const name = to.trim();
  if (fault === null && name !== from)
    edit(store, `Rename setup ${from}`, (now) => ({
      ...now,
      document: withSetupRenamed(now.document, from, name),
      copies: copiesRenamed(now.copies, from, name),
      setup: now.setup === from ? name : now.setup,
      against: now.againstCar.kind === 'own' && now.against === from ? name : now.against,
    }));
  return fault;
};

/**
 * Deletes a setup; where it was on the bench its neighbour takes its place.
 * @returns why it cannot be deleted; null where it was
 */
export const deleteSetup = (store: BenchStore, name: string): string | null => {
  const bench = benchOf(store.getState());
  if (!bench) return null;
  const fault = faultOfDeleting(bench.document, name);
  if (fault === null)
    edit(store, `Delete setup ${name}`, (now) => {
      const names = setupNames(now.document);
      const at = names.indexOf(name);
      const neighbour = names[at + 1] ?? names[at - 1] ?? now.setup;
      return {
        ...now,
        document: withoutSetup(now.document, name),
        copies: copiesWithout(now.copies, name),
        setup: now.setup === name ? neighbour : now.setup,
        against: now.againstCar.kind === 'own' && now.against === name ? neighbour : now.against,
      };
    });
  return fault;
};

/** @param by - places down the list, − up */
export const moveSetup = (store: BenchStore, name: string, by: number): void =>
  editDocument(store, `Move setup ${name}`, (document) => withSetupMoved(document, name, by));

/** Marks the setup that is on the car; null: it is not known. */
export const markOnCar = (store: BenchStore, name: string | null): void =>
  editDocument(store, name === null ? 'No setup on the car' : `${name} is on the car`, (document) =>
    (document.onCar ?? null) === name ? document : withOnCar(document, name),
  );

export const writeNotes = (store: BenchStore, name: string, notes: string): void =>
  editDocument(store, `Notes of ${name}`, (document) => {
    const before = setupNamed(document, name).notes ?? '';
    return before === notes ? document : withSetupPart(document, name, { notes: notes === '' ? undefined : notes });
  });

const editRecord = (
  store: BenchStore,
  step: string,
  name: string,
  changed: (lines: readonly RecordLine[]) => readonly RecordLine[],
): void =>
  editDocument(store, step, (document) => {
    const lines = changed(setupNamed(document, name).record ?? []);
    return withSetupPart(document, name, { record: lines.length === 0 ? undefined : lines });
  });

/** One more thing written down about a setup: "pressure hot". */
export const addRecordLine = (store: BenchStore, name: string, label: string, unit: string): void => {
  if (label.trim() === '') return;
  const line: RecordLine = { label: label.trim(), ...(unit.trim() !== '' && { unit: unit.trim() }), values: {} };
  editRecord(store, `Record of ${name}: ${line.label}`, name, (lines) => [...lines, line]);
};

/** Writes one value of a record line; null takes it out. */
export const writeRecordValue = (
  store: BenchStore,
  name: string,
  index: number,
  corner: string,
  value: number | string | null,
): void => {
  const bench = benchOf(store.getState());
  const line = bench && setupNamed(bench.document, name).record?.[index];
  if (!line || (line.values[corner] ?? null) === value) return;
  const values = Object.fromEntries(
    Object.entries({ ...line.values, [corner]: value }).filter((entry): entry is [string, number | string] => entry[1] !== null),
  );
  editRecord(store, `Record of ${name}: ${line.label}`, name, (lines) =>
    lines.map((one, place) => (place === index ? { ...one, values } : one)),
  );
};

export const removeRecordLine = (store: BenchStore, name: string, index: number): void =>
  editRecord(store, `Record of ${name}: a line less`, name, (lines) => lines.filter((_, place) => place !== index));
