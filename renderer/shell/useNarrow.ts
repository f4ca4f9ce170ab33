import { useMedia } from '../look/useMedia';

/**
 * Whether the window is so narrow that one panel is shown at a time, since adjusters, view and readings do not fit side by side: a
 * small screen, or a large zoom. The style sheet's narrow layout asks the same.
 */
export const useNarrow = (): boolean => useMedia('(max-width: 999px)');
