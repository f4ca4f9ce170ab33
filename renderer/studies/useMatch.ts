import { useEffect, useState } from 'react';

/** Whether the window answers a media query now. */
export const useMatch = (query: string): boolean => {
  const [matches, setMatches] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const follow = () => setMatches(list.matches);
    list.addEventListener('change', follow);
    return () => list.removeEventListener('change', follow);
  }, [query]);
  return matches;
};

/** Where the look calls a window large. */
export const LARGE = '(min-width: 1500px) and (min-height: 900px)';
