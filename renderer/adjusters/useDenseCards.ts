import { useEffect, useState } from 'react';

const LOW = '(max-height: 899px)';
const MANY = 6;

/** Low cards where there are many adjusters and little height, so that all of them stay in reach. */
export const useDenseCards = (count: number): boolean => {
  const [low, setLow] = useState(() => matchMedia(LOW).matches);
  useEffect(() => {
    const query = matchMedia(LOW);
    const follow = () => setLow(query.matches);
    query.addEventListener('change', follow);
    return () => query.removeEventListener('change', follow);
  }, []);
  return low && count > MANY;
};
