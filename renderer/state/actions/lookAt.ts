import type { AxleName } from '../../../geometry/index';
import {
  benchOf,
  change,
  type BenchPosition,
  type BenchStore,
  type PageName,
  type StudyName,
  type Theme,
  type ViewName,
} from '../benchStore';

/** Axle on the bench; its first adjuster is taken in hand. */
export const chooseAxle = (store: BenchStore, axle: AxleName): void => {
  const bench = benchOf(store.getState());
  if (!bench?.document[axle] || axle === store.getState().axle) return;
  const held = Object.keys(bench.document[axle].adjusters ?? {})[0] ?? null;
  const { position, viewing } = store.getState();
  const rack = bench.document[axle].steering ? position.rack : 0;
  // a point of the other axle would be moved unseen
  const isOther = viewing.chosen !== null && viewing.chosen.axle !== axle;
  const looked = isOther ? { viewing: { ...viewing, chosen: null, mayMove: false } } : {};
  change(store, { axle, held, position: { ...position, rack }, ...looked });
};

/** Moves the car: any of wheel travel from standing [mm], roll [degrees], rack [mm]. */
export const moveTo = (store: BenchStore, part: Partial<BenchPosition>): void =>
  change(store, { position: { ...store.getState().position, ...part } });

/** Back to standing, straight ahead. */
export const standStill = (store: BenchStore): void => moveTo(store, { travel: 0, rollDeg: 0, rack: 0 });

export const holdAdjuster = (store: BenchStore, adjuster: string): void => {
  if (store.getState().held !== adjuster) store.setState({ held: adjuster });
};

export const chooseView = (store: BenchStore, view: ViewName): void => store.setState({ view });
export const chooseTheme = (store: BenchStore, theme: Theme): void => store.setState({ theme });

/** Goes to a page, and writes it into the address. */
export const choosePage = (store: BenchStore, page: PageName): void => {
  store.setState({ page });
  if (typeof window !== 'undefined') window.history.replaceState(null, '', `#${page}`);
};

/** Goes to a study. */
export const chooseStudy = (store: BenchStore, study: StudyName): void => {
  store.setState({ study });
  choosePage(store, 'studies');
};
