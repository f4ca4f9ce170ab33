import { useLayoutEffect, type RefObject } from 'react';

/** Brings a card that is taken in hand wholly into sight. */
export const useInSight = (card: RefObject<HTMLElement | null>): void =>
  useLayoutEffect(() => {
    // newer browsers answer with a promise, which must not be taken for the effect's end
    void card.current?.scrollIntoView({ block: 'nearest' });
  }, [card]);
