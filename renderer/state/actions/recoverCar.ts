import { parseCar, setupNames } from '../../../geometry/index';
import type { CopySummary, FileService, HandedFile, KeptCopy } from '../../files/fileService';
import { bytesOf, type FilePlace } from '../../files/places';
import { benchOf, change, changeFiles, type BenchStore, type GrownFrom } from '../benchStore';
import type { Offer, UnfinishedOffer } from '../filesState';
import { wayToKnown } from '../copiedFrom';
import { record } from '../history';
import { readUnfinished } from '../unfinishedText';
import { choosePage } from './lookAt';
import { askFirst, openHanded, openSample, putOnBench, type CarSource } from './openCar';
import { isSameText } from './saveCar';

/** A stamp that no file has: saving asks first. */
const NO_STAMP = '0'.repeat(64);

const fileOf = async (store: BenchStore, files: FileService, id: string | null): Promise<HandedFile | null> => {
  if (id === null) return null;
  const answer = await files.openFile({ window: store.getState().files.window, id });
  return answer.ok ? answer.value : null;
};

const offerOf = (copy: KeptCopy, onDisk: HandedFile | null): Offer | null => {
  const read = parseCar(copy.text);
  if (!read.ok) return null;
  const diskText = onDisk && new TextDecoder().decode(bytesOf(onDisk.base64));
  const savedText = diskText ?? copy.origin;
  const saved = savedText === null ? null : parseCar(savedText);
  return {
    copy,
    document: read.value.document,
    saved: saved?.ok ? saved.value.document : null,
    savedText: saved?.ok ? saved.value.text : null,
    version: onDisk?.version ?? null,
    isReadOnly: onDisk?.isReadOnly ?? false,
    isFileNewer: diskText !== null && copy.origin !== null && !isSameText(diskText, copy.origin),
  };
};

/** Holds a kept copy out to the person, beside the file that it is a copy of. Nothing is opened yet. */
export const offerCopy = async (store: BenchStore, files: FileService, summary: CopySummary): Promise<void> => {
  const answer = await files.readCopy({ id: summary.id });
  if (!answer.ok) return forget(store, summary.id);
  const unfinished = readUnfinished(answer.value.text);
  if (unfinished) return changeFiles(store, { offer: { copy: answer.value, unfinished } });
  const offer = offerOf(answer.value, await fileOf(store, files, answer.value.note.file));
  if (offer) changeFiles(store, { offer });
  else {
    const message = 'The kept copy cannot be read as a car. It stays where it is.';
    store.setState({ refused: { title: summary.title, message, faults: [], text: answer.value.text } });
  }
};

const forget = (store: BenchStore, id: string): void =>
  changeFiles(store, { offer: null, copies: store.getState().files.copies.filter((copy) => copy.id !== id) });

const placeOf = ({ copy: { note }, version, isReadOnly, isFileNewer }: Offer): FilePlace => {
  if (note.file === null || note.folder === null) return { kind: 'none', name: note.name };
  const file = { id: note.file, name: note.name, folder: note.folder };
  const known = version && { ...version, stamp: isFileNewer ? NO_STAMP : version.stamp };
  return { kind: 'handed', file, version: known, isReadOnly };
};

/** The text that the recovered car is compared with when it is saved: the file's, or at least its own. */
const baseOf = ({ savedText, copy }: Offer): ReturnType<typeof parseCar> => parseCar(savedText ?? copy.text);

/** Somebody else's version is what the car is compared with, but nobody here has seen it: the copy goes on as one of the version before. */
const grewFrom = ({ copy: { note, origin }, isFileNewer }: Offer): { readonly grewFrom?: GrownFrom } =>
  isFileNewer && origin !== null ? { grewFrom: { text: origin, at: note.savedAt } } : {};

/** Puts the copy on the bench as one step after the car as saved, so that undo goes back to that. */
const putCopy = (store: BenchStore, offer: Offer, source: CarSource): void => {
  const base = baseOf(offer);
  if (!base.ok) return;
  putOnBench(store, source, base.value);
  const { history, file } = store.getState();
  if (!history || !file) return;
  const { setup, against, copies, id } = offer.copy.note;
  const names = setupNames(offer.document);
  const present = {
    ...history.present,
    document: offer.document,
    setup: names.includes(setup) ? setup : history.present.setup,
    against: names.includes(against) ? against : history.present.against,
    ...(copies && { copies }),
  };
  // the copy goes on under its id: it is taken away when this car is saved, and not before
  const files = { ...store.getState().files, copy: id };
  const saved = { ...file.saved, ...grewFrom(offer) };
  change(store, { file: { ...file, saved }, history: record(history, 'Go on with the kept copy', present), files });
  forget(store, id);
};

/** The copy is of a car that was made in the window and saved nowhere. */
export const wasNeverSaved = ({ copy: { note, origin } }: Pick<Offer, 'copy'>): boolean =>
  note.file === null && note.sample === null && note.savedAt === null && origin === null;

const titleOfCopy = ({ copy: { note } }: Offer): string => `The kept copy of ${note.title}`;

/** Goes on where the copy was made; saving writes to the file that it is a copy of. Asks first where changes are open. */
export const takeCopy = (store: BenchStore, offer: Offer): void => {
  const { note } = offer.copy;
  const source = {
    title: note.title,
    sample: note.sample,
    place: placeOf(offer),
    savedAt: offer.version?.savedAt ?? null,
    isNeverSaved: wasNeverSaved(offer),
  };
  askFirst(store, { title: titleOfCopy(offer), open: () => putCopy(store, offer, source) });
};

/**
 * Goes on giving the points of a new car, on their page. The copy goes on under its id; points of another car that were being
 * given here are put aside in a copy of their own by who keeps them.
 */
export const takeUnfinished = (store: BenchStore, { copy, unfinished }: UnfinishedOffer): void => {
  const { id } = copy.note;
  const { files } = store.getState();
  const copies = files.copies.filter((other) => other.id !== id);
  // in one step: a copy's id and the points that it is of are never of two cars
  store.setState({ unfinished, isGiving: true, files: { ...files, unfinishedCopy: id, offer: null, copies } });
  choosePage(store, 'points');
};

/** Opens the copy as a car of its own, compared with the one as saved; that one stays the file's. Asks first as well. */
export const takeBoth = (store: BenchStore, offer: Offer): void =>
  askFirst(store, { title: titleOfCopy(offer), open: () => putBoth(store, offer) });

const putBoth = (store: BenchStore, offer: Offer): void => {
  const { note } = offer.copy;
  const name = note.name.replace(/(\.jounce)?(\.json)?$/i, '-kept$&');
  putCopy(store, offer, { title: note.title, sample: null, place: { kind: 'none', name }, savedAt: null });
  const { history } = store.getState();
  const bench = benchOf(store.getState());
  if (!history || !bench || !offer.saved) return;
  const setups = setupNames(offer.saved);
  // a trial that the file never had is held against what it was begun from: against another it would be of many changes
  const against = wayToKnown(bench.setup, setups, bench.copies)?.at(-1) ?? setups[0] ?? '';
  const againstCar = { kind: 'file', title: `${note.title} as saved`, document: offer.saved } as const;
  change(store, { history: { ...history, present: { ...bench, against, againstCar } } });
};

/** Opens the file as it was saved, or the sample or text that the copy grew from. The copy stays on the disk, on the list of kept copies. */
export const takeSaved = async (store: BenchStore, files: FileService, offer: Offer): Promise<void> => {
  const { note, text } = offer.copy;
  const { endedAt: _ended, folder, ...plain } = note;
  const parked = { ...plain, isParked: true };
  await files.keepCopy({ note: parked, text });
  changeFiles(store, { offer: null });
  if (note.file !== null) return openHanded(store, files, { id: note.file, name: note.name, folder: folder ?? '' });
  if (note.sample !== null) return openSample(store, files, note.sample);
  const read = offer.savedText === null ? null : parseCar(offer.savedText);
  const source = { title: note.title, sample: null, place: { kind: 'none', name: note.name } as const, savedAt: note.savedAt };
  if (read?.ok) askFirst(store, { title: note.title, open: () => putOnBench(store, source, read.value) });
};

/** Throws a copy away, because the person said so. */
export const dropCopy = async (store: BenchStore, files: FileService, id: string): Promise<void> => {
  const answer = await files.dropCopy({ id });
  if (answer.ok) forget(store, id);
};

/** Decides later: the copy stays on the list. */
export const putOfferOff = (store: BenchStore): void => changeFiles(store, { offer: null });
