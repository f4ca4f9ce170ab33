import type { FileService } from '../../files/fileService';
import { changeFiles, type BenchStore } from '../benchStore';
import type { CopyKeeper } from './keepCopies';
import { saveCar } from './saveCar';

/** What becomes of changes that were not saved when another car is opened. */
export type Fate = 'save' | 'keep' | 'drop' | 'stay';

/**
 * Answers the question that opening another car raised. The other one is opened only after what is open is safe, or the person said
 * that it is not to be kept.
 * @param keeper - keeps the copy that `keep` asks for, and throws the one away that `drop` does
 */
export const answerQuestion = async (store: BenchStore, files: FileService, keeper: CopyKeeper, fate: Fate): Promise<void> => {
  const { question, copy } = store.getState().files;
  if (!question) return;
  changeFiles(store, { question: null });
  if (fate === 'stay') return;
  if (fate === 'save') {
    if (await saveCar(store, files)) question.open();
    return;
  }
  if (fate === 'drop') {
    question.open();
    return keeper.dropSoon(copy);
  }
  if (await keeper.keepNow({ isParked: true })) {
    question.open();
    await listCopies(store, files);
    return;
  }
  const text = 'No copy could be kept, so the other car was not opened. Save this one, or download it.';
  changeFiles(store, { notice: { title: 'Nothing was opened', text, ways: ['saveAs', 'download'] } });
};

/** Looks anew which copies are kept, but for those of what is being worked on here. */
export const listCopies = async (store: BenchStore, files: FileService): Promise<void> => {
  const answer = await files.listCopies({ window: store.getState().files.window });
  const { copy, unfinishedCopy } = store.getState().files;
  if (answer.ok) changeFiles(store, { copies: answer.value.filter(({ id }) => id !== copy && id !== unfinishedCopy) });
};
