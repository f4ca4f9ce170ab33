import { useEffect, useState } from 'react';

/** Where the view has no height for the plan of the car. The style sheets' short layout asks the same. */
const SHORT = '(max-width: 999px) and (max-height: 460px)';

/** Whether the window is as small as a screen at 200 %. */
export const useShort = (): boolean => {
  const [short, setShort] = useState(() => matchMedia(SHORT).matches);
  useEffect(() => {
    const query = matchMedia(SHORT);
    const follow = () => setShort(query.matches);
    query.addEventListener('change', follow);
    return () => query.removeEventListener('change', follow);
  }, []);
  return short;
};
