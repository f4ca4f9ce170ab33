/// <reference lib="webworker" />
/** A thread that reads one STL file: a large one takes longer than a window may stand still. */
import { readPartStl } from '../../compute/fitup/readPartStl';

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = ({ data }: MessageEvent<Uint8Array>) => self.postMessage(readPartStl(data));
