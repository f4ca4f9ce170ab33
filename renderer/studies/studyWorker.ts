/// <reference lib="webworker" />
/** A thread of the window that works out chunks of a study. */
import { createStudyWorker, type ToWorker } from '../../geometry/index';
import { searchMesh } from '../../geometry/meshes/meshSearch';

declare const self: DedicatedWorkerGlobalScope;

const work = createStudyWorker(searchMesh);
self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  const answer = work(data);
  if (answer !== null) self.postMessage(answer);
};
