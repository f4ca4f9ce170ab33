import { useCallback, useEffect } from 'react';
import type { SideName } from '../../geometry/index';
import { useWindow } from '../shell/benchContext';
import { chooseScope } from '../state/actions/viewing';
import { scopeOf } from '../state/viewing';

/**
 * The view shows the side that is edited, where it shows one side alone; what it showed before comes back when the page is left.
 * @returns to be called when an edit begins: the person may have looked at the other side meanwhile
 */
export const useViewFollows = (side: SideName): (() => void) => {
  const { store } = useWindow();
  const follow = useCallback(() => {
    const scope = scopeOf(store.getState().preferences);
    if ((scope === 'left' || scope === 'right') && scope !== side) chooseScope(store, side);
  }, [store, side]);
  useEffect(() => {
    const before = scopeOf(store.getState().preferences);
    follow();
    return () => {
      if (scopeOf(store.getState().preferences) === side && before !== side && before !== 'axle' && before !== 'car')
        chooseScope(store, before);
    };
  }, [store, side, follow]);
  return follow;
};
