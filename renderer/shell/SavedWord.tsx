import { clockTime } from '../files/times';
import { isUnsaved, type BenchState } from '../state/benchStore';
import { useBench } from './benchContext';

/** "saved 14:05", once the car was written from here and until it is changed; a download is told of elsewhere. */
export const savedWords = (state: Pick<BenchState, 'file' | 'history'>): string => {
  const { file } = state;
  if (!file || file.place.kind === 'none' || file.saved.here === undefined || isUnsaved(state)) return '';
  return file.saved.at === null ? 'saved' : `saved ${clockTime(file.saved.at)}`;
};

/** Says that saving did something: the mark beside the name goes, which is seen by nobody who does not look there. */
export const SavedWord = () => (
  <span className="savedword" role="status">
    {useBench(savedWords)}
  </span>
);
