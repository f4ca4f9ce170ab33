import type { BenchStore } from '../benchStore';
import {
  overlaysOf,
  parallelViews,
  VIEW_PREFERENCES,
  type AimRange,
  type OverlayName,
  type Pick,
  type PointRef,
  type Scope,
  type ViewName,
  type Viewing,
} from '../viewing';
import { prefer } from './prefer';

const look = (store: BenchStore, part: Partial<Viewing>): void =>
  store.setState({ viewing: { ...store.getState().viewing, ...part } });

const switched = <Word>(words: readonly Word[], word: Word): readonly Word[] =>
  words.includes(word) ? words.filter((one) => one !== word) : [...words, word];

/** Shows one corner, the axle or the whole car. The chosen point goes to the side that is shown. */
export const chooseScope = (store: BenchStore, scope: Scope): void => {
  const { chosen } = store.getState().viewing;
  const side = scope === 'left' || scope === 'right' ? scope : chosen?.side;
  prefer(store, VIEW_PREFERENCES.scope, scope);
  if (chosen && side !== undefined && side !== chosen.side) look(store, { chosen: { ...chosen, side }, mayMove: false });
};

/** Switches the view on the bench between perspective and parallel. */
export const switchProjection = (store: BenchStore): void => {
  const { view, preferences } = store.getState();
  prefer(store, VIEW_PREFERENCES.parallel, switched(parallelViews(preferences), view));
};

export const switchOverlay = (store: BenchStore, name: OverlayName): void =>
  prefer(store, VIEW_PREFERENCES.overlays, switched(overlaysOf(store.getState().preferences), name));

/** Chooses a point in the view; null lets go of it. */
export const choosePoint = (store: BenchStore, chosen: PointRef | null): void => look(store, { chosen, mayMove: false });

/** The person agreed that the chosen pickup point itself is moved. */
export const allowMove = (store: BenchStore): void => look(store, { mayMove: true });

/** Lays two views side by side for a page that wants them; none is the bench's own view. */
export const layViews = (store: BenchStore, layout: readonly ViewName[]): void => look(store, { layout });

/** Asks for a point or a direction to be picked in the view; null takes the asking away. */
export const askPick = (store: BenchStore, pick: Pick | null): void => look(store, { pick });

/** Draws the range of an adjuster that is being made; null takes it away. */
export const layRange = (store: BenchStore, range: AimRange | null): void => look(store, { range });

/** Lays a tape between two points; null takes it away. */
export const layTape = (store: BenchStore, tape: Viewing['tape']): void => look(store, { tape });
