import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { FileService } from '../files/fileService';
import type { CopyKeeper } from '../state/actions/keepCopies';
import type { BenchState, BenchStore } from '../state/benchStore';

export interface WindowTools {
  readonly store: BenchStore;
  readonly files: FileService;
  /** keeps the recovery copy of what is open */
  readonly keeper: CopyKeeper;
}

export const WindowContext = createContext<WindowTools | null>(null);

/** The store and the files of this window. */
export const useWindow = (): WindowTools => {
  const tools = useContext(WindowContext);
  if (!tools) throw new Error('A panel was drawn outside the window that gives it its store.');
  return tools;
};

/** One selected part of the bench's state; the component is drawn anew when that part changes. */
export const useBench = <Selected>(select: (state: BenchState) => Selected): Selected => useStore(useWindow().store, select);
