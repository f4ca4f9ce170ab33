import { useMedia } from '../look/useMedia';

const MANY = 6;

/** Low cards where there are many adjusters and little height, so that all of them stay in reach. */
export const useDenseCards = (count: number): boolean => useMedia('(max-height: 899px)') && count > MANY;
