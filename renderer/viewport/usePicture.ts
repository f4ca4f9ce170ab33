import { useEffect, useState } from 'react';
import type { Picture } from './Picture';

interface Fetched {
  /** What draws the picture; null until it is here. */
  readonly Picture: typeof Picture | null;
  /** Its code did not come: the server is gone, or another version of the window was put in its place. */
  readonly failed: boolean;
}

/**
 * Fetches what draws the picture once it is wanted. By an effect, not by a lazy component: React keeps an empty place for 300 ms
 * before it shows what came for it, and the picture is most often here sooner.
 */
export const usePicture = (isWanted: boolean): Fetched => {
  const [fetched, setFetched] = useState<Fetched>({ Picture: null, failed: false });
  useEffect(() => {
    if (!isWanted) return;
    void import('./Picture').then(
      (module) => setFetched({ Picture: module.Picture, failed: false }),
      () => setFetched({ Picture: null, failed: true }),
    );
  }, [isWanted]);
  return fetched;
};
