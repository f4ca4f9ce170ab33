/// <reference lib="webworker" />
/** A thread of the window that answers what fit-up asks, one order after the other. */
import { searchMesh } from '../../geometry/meshes/meshSearch';
import { answerFitUp } from '../compute/fitup/answerFitUp';
import type { FitUpOrder, FitUpProgress, FitUpResult } from '../compute/fitup/fitUpOrder';

declare const self: DedicatedWorkerGlobalScope;

export interface ToFitUp {
  readonly number: number;
  readonly order: FitUpOrder;
}

export type FromFitUp =
  { readonly number: number; readonly progress: FitUpProgress } | { readonly number: number; readonly result: FitUpResult };

const post = (message: FromFitUp): void => self.postMessage(message);

self.onmessage = ({ data: { number, order } }: MessageEvent<ToFitUp>) => {
  const result = answerFitUp(order, searchMesh, (progress) => post({ number, progress }));
  post({ number, result });
};
