import type { Result, StlFault } from '../../../geometry/index';
import { LARGEST_STL_BYTES, type PartStl } from '../../compute/fitup/readPartStl';
import { formatNumber } from '../../units/format';

/** Reads a file that was dropped or chosen, on a thread of its own. */
export const readStlFile = async (file: File): Promise<Result<PartStl, StlFault>> => {
  const refuse = (found: string, hint: string) => ({ ok: false, failure: { found, hint } }) as const;
  if (file.size > LARGEST_STL_BYTES)
    return refuse(
      `${formatNumber(file.size / 1e6, 0)} MB`,
      'save it with fewer triangles: a tenth of a millimetre is fine enough',
    );
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    return await onThread(bytes);
  } catch {
    return refuse('a file that could not be read to its end', 'choose it again');
  }
};

const onThread = (bytes: Uint8Array): Promise<Result<PartStl, StlFault>> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./stlWorker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<Result<PartStl, StlFault>>) => {
      worker.terminate();
      resolve(data);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      worker.terminate();
      reject(new Error(event.message));
    };
    worker.postMessage(bytes, [bytes.buffer]);
  });
