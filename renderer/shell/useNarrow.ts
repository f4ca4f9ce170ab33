import { useEffect, useState } from 'react';

/** Where adjusters, view and readings no longer fit side by side. The style sheet's narrow layout asks the same. */
const NARROW = '(max-width: 999px)';

/** Whether the window is so narrow that one panel is shown at a time: a small screen, or a large zoom. */
export const useNarrow = (): boolean => {
  const [narrow, setNarrow] = useState(() => matchMedia(NARROW).matches);
  useEffect(() => {
    const query = matchMedia(NARROW);
    const follow = () => setNarrow(query.matches);
    query.addEventListener('change', follow);
    return () => query.removeEventListener('change', follow);
  }, []);
  return narrow;
};
