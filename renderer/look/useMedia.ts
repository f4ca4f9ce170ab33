import { useEffect, useState } from 'react';

/** Whether the window answers a media query, as a style sheet asks it. */
export const useMedia = (query: string): boolean => {
  const [answer, setAnswer] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const asked = matchMedia(query);
    const follow = () => setAnswer(asked.matches);
    asked.addEventListener('change', follow);
    return () => asked.removeEventListener('change', follow);
  }, [query]);
  return answer;
};
