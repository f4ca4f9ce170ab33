/** One thread that works out chunks of a study; bundled beside the command line as `studyWorker.js`. */
import { parentPort } from 'node:worker_threads';
import { createStudyWorker, type ToWorker } from '../../geometry/index';
import { searchMesh } from '../../geometry/meshes/meshSearch';

const work = createStudyWorker(searchMesh);
parentPort?.on('message', (message: ToWorker) => {
  const answer = work(message);
  if (answer !== null) parentPort?.postMessage(answer);
});
