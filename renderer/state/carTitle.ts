import type { BenchState } from './benchStore';

/** What the open car is called now: by its own name, which can be changed, else by what it was opened as; null: no car is open. */
export const carTitle = ({ file, history }: Pick<BenchState, 'file' | 'history'>): string | null =>
  file && (history?.present.document.name || file.title);

/**
 * What a table or a picture of the car is kept as, without an ending: car as it is called now, setup, axle, and what it is.
 *
 * @param what - "lengths"
 * @param setup - of which setup it is; that on the bench where it is left out
 */
export const keptName = (state: Pick<BenchState, 'file' | 'history' | 'axle'>, what: string, setup?: string): string =>
  [carTitle(state) ?? 'car', setup ?? state.history?.present.setup ?? '', state.axle, what]
    .filter((part) => part !== '')
    .join(' ');
