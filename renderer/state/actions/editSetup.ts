import { setupNames, type AxleName, type SetupDocument } from '../../../geometry/index';
import { benchOf, change, type Bench, type BenchStore } from '../benchStore';
import type { AgainstCar } from '../compared';
import { withCopy } from '../copiedFrom';
import { abandon, mark, record, redo, settle, undo, type History } from '../history';
import {
  freeTrialName,
  handedOn,
  settingOf,
  setupNamed,
  withAxleValue,
  withSetting,
  withSetup,
  withSidesApart,
  type Sides,
} from '../settings';

/**
 * One edit of the setup on the bench. A setup that came with the file is not written over: the first edit makes a
 * trial of it, so that it stays there to be compared with.
 */
const edit = (store: BenchStore, name: string, changed: (setup: SetupDocument) => SetupDocument): void => {
  const { history, file } = store.getState();
  if (!history || !file) return;
  const { document, setup } = history.present;
  const cameWithFile = setupNames(file.asRead).includes(setup);
  const target = cameWithFile ? freeTrialName(setupNames(document)) : setup;
  const before = setupNamed(document, setup);
  const withNames = document.setups ? document : withSetup(document, setup, before);
  const bench: Bench = {
    ...history.present,
    document: withSetup(withNames, target, changed(cameWithFile ? handedOn(before) : before)),
    setup: target,
    ...(cameWithFile && { copies: withCopy(history.present.copies, target, setup) }),
  };
  change(store, { history: record(history, name, bench) });
};

/**
 * Sets an adjuster of the axle on the bench. What stands there already is not set again: a gesture that changes nothing leaves no
 * step and makes no trial.
 * @param value - in the file's unit; null: as if nothing were fitted
 */
export const turnAdjuster = (store: BenchStore, adjuster: string, label: string, sides: Sides, value: number | null): void => {
  const { axle } = store.getState();
  const bench = benchOf(store.getState());
  if (bench && standsThere(bench, axle, adjuster, sides, value)) return;
  edit(store, `Turn ${label}`, (setup) => withSetting(setup, axle, adjuster, sides, value));
};

/** Nothing set is zero, but for a bushing: there it is a concentric one. */
const standsThere = (
  { document, setup }: Bench,
  axle: AxleName,
  adjuster: string,
  sides: Sides,
  value: number | null,
): boolean => {
  const unset = document[axle]?.adjusters?.[adjuster]?.kind === 'offset-bushing' ? null : 0;
  const now = setupNamed(document, setup);
  const turned = sides === 'both' ? (['left', 'right'] as const) : [sides];
  return turned.every((side) => (settingOf(now, axle, adjuster, side) ?? unset) === (value ?? unset));
};

/** Gives left and right numbers of their own. */
export const separateSides = (store: BenchStore, adjuster: string, label: string): void =>
  edit(store, `${label}: sides apart`, (setup) => withSidesApart(setup, store.getState().axle, adjuster));

/** One number for both sides again: the left one's. */
export const joinSides = (store: BenchStore, adjuster: string, label: string, value: number | null): void =>
  edit(store, `${label}: left = right`, (setup) => withSetting(setup, store.getState().axle, adjuster, 'both', value));

/** The toe that the toe adjuster is turned to [degrees per wheel]; null leaves the adjuster at its own number. */
export const setToe = (store: BenchStore, toeDeg: number | null): void =>
  edit(store, 'Set toe', (setup) => withAxleValue(setup, store.getState().axle, 'setToe', toeDeg));

/** Body height over design at this axle, in the file's unit; null: no height is given. */
export const setRideHeight = (store: BenchStore, height: number | null): void =>
  edit(store, 'Set ride height', (setup) => withAxleValue(setup, store.getState().axle, 'rideHeight', height));

const changeHistory = (store: BenchStore, step: (history: History<Bench>) => History<Bench>): void => {
  const { history } = store.getState();
  if (history) change(store, { history: step(history) });
};

export const undoStep = (store: BenchStore): void => changeHistory(store, undo);
export const redoStep = (store: BenchStore): void => changeHistory(store, redo);
/** A drag begins: what follows is one step. */
export const beginTurn = (store: BenchStore): void => changeHistory(store, mark);
export const endTurn = (store: BenchStore): void => changeHistory(store, settle);
/**
 * Does an edit as a part of the gesture that the last one was of, so that all of them are one step.
 * @param left - what the gesture left; null, or something else on the bench by now: this is its first edit
 * @returns what it leaves; null while it has changed nothing
 */
export const turnOn = (store: BenchStore, left: Bench | null, turn: () => void): Bench | null => {
  const before = benchOf(store.getState());
  const goesOn = left !== null && left === before;
  if (goesOn) changeJoining(store, true);
  turn();
  if (goesOn) changeJoining(store, false);
  const after = benchOf(store.getState());
  return after === before ? (goesOn ? left : null) : after;
};
/** The answer stays: nothing of the bench changes by this. */
const changeJoining = (store: BenchStore, joins: boolean): void => {
  const { history } = store.getState();
  if (!history || joins === (history.joins ?? false)) return;
  const { joins: _, ...rest } = history;
  store.setState({ history: joins ? { ...rest, joins } : rest });
};
/** Escape during a drag: back to where it began. */
export const abandonTurn = (store: BenchStore): void => changeHistory(store, abandon);

/** Puts a setup on the bench, or beside it to be compared with. Not an edit, and not undone. */
const choose = (store: BenchStore, part: Partial<Bench>): void => {
  const bench = benchOf(store.getState());
  changeHistory(store, (history) => (bench ? { ...history, present: { ...bench, ...part } } : history));
};
export const chooseSetup = (store: BenchStore, setup: string): void => choose(store, { setup });
/** @param againstCar - whose setup it is: of the car on the bench where left out */
export const chooseAgainst = (store: BenchStore, against: string, againstCar: AgainstCar = { kind: 'own' }): void =>
  choose(store, { against, againstCar });
