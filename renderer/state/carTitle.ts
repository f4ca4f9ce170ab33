import type { BenchState } from './benchStore';

/** What the open car is called now: by its own name, which can be changed, else by what it was opened as; null: no car is open. */
export const carTitle = ({ file, history }: Pick<BenchState, 'file' | 'history'>): string | null =>
  file && (history?.present.document.name || file.title);
