import { useEffect } from 'react';
import { nameOfPlace } from '../files/places';
import { isUnsaved, type BenchState } from '../state/benchStore';
import { useBench } from './benchContext';
import { carTitle } from '../state/carTitle';

/** What the window is called where windows are listed: the car's file, marked while it has changes; a sample by its name. */
export const windowTitle = (state: Pick<BenchState, 'file' | 'history'>): string => {
  const { file } = state;
  const title = carTitle(state);
  if (!file || title === null) return 'Jounce';
  const name = file.place.kind === 'none' ? title : nameOfPlace(file.place);
  return `${isUnsaved(state) ? '● ' : ''}${name} – Jounce`;
};

export const useTitle = (): void => {
  const title = useBench(windowTitle);
  useEffect(() => {
    document.title = title;
  }, [title]);
};
