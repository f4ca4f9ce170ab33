/// <reference lib="webworker" />
/** A thread of the window that works out chunks of a study. */
import { createStudyWorker, type ToWorker } from '../../geometry/index';

declare const self: DedicatedWorkerGlobalScope;

const work = createStudyWorker();
self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  const answer = work(data);
  if (answer !== null) self.postMessage(answer);
};
