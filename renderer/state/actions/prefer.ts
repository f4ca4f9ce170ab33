import type { BenchStore } from '../benchStore';
import { UNIT_PREFERENCES } from '../chosenUnits';

/** Keeps what a person chose for the window; a list is kept as one text. */
export const prefer = (store: BenchStore, name: string, value: string | number | boolean | readonly string[]): void => {
  const kept = typeof value === 'object' ? value.join(',') : value;
  const { preferences } = store.getState();
  if (preferences[name] !== kept) store.setState({ preferences: { ...preferences, [name]: kept } });
  if (name === UNIT_PREFERENCES.length.name) store.setState({ isLengthChosen: true });
};
