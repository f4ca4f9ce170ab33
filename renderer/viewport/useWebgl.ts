import { useEffect, useState } from 'react';
import { useBench } from '../shell/benchContext';
import { hasWebgl } from './hasWebgl';

/** Time for the numbers to reach the screen [ms]: the process that draws them is the one that the question stops. */
const PAINTED_AFTER = 120;

/**
 * Whether this machine can draw the view; null as long as it was not asked. The first question to the graphics driver takes up to
 * seconds on a machine without a graphics card and stops everything else: it waits until the numbers are painted.
 */
export const useWebgl = (): boolean | null => {
  const [webgl, setWebgl] = useState<boolean | null>(null);
  const shown = useBench((state) => state.shown !== null);
  useEffect(() => {
    if (!shown || webgl !== null) return;
    const later = setTimeout(() => setWebgl(hasWebgl()), PAINTED_AFTER);
    return () => clearTimeout(later);
  }, [shown, webgl]);
  return webgl;
};
