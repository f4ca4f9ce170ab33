import { useLayoutEffect, type RefObject } from 'react';

/** Brings a card that is taken in hand wholly into sight. */
export const useInSight = (card: RefObject<HTMLElement | null>): void =>
  useLayoutEffect(() => card.current?.scrollIntoView({ block: 'nearest' }), [card]);
