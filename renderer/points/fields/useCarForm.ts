import { useMemo } from 'react';
import type { AxleName } from '../../../geometry/index';
import { useBench, useWindow } from '../../shell/benchContext';
import { editCar } from '../../state/actions/editCar';
import { beginTurn, endTurn } from '../../state/actions/editSetup';
import { benchOf } from '../../state/benchStore';
import { mmPerFileUnit } from '../../units/fileLength';
import type { FormHost } from './formHost';
import { faultOf, judgeEdit } from './judgeEdit';
import { valueAt, withValue } from './pathValue';

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const OF_THEIR_OWN = /^(Add|Remove|Rename|Move|Mirror|Take) /;

/**
 * The open car as a form edits it. An edit is judged by the rules of the file; one that would make a fault is refused with it
 * and does not enter the car. Every one that enters is one undo step.
 */
export const useCarForm = (axle: AxleName | null): FormHost | null => {
  const { store } = useWindow();
  const document = useBench((state) => state.history?.present.document ?? null);
  return useMemo((): FormHost | null => {
    if (!document) return null;
    return {
      document,
      axle,
      mm: mmPerFileUnit(document),
      read: (path) => valueAt(document, path),
      faultAt: () => null,
      write: (path, value, what) => {
        const bench = benchOf(store.getState());
        if (!bench) return 'The car is no longer open.';
        const changed = withValue(bench.document, path, value);
        const fault = faultOf(judgeEdit(changed), path);
        if (fault === null) editCar(store, OF_THEIR_OWN.test(what) ? what : `Change ${lower(what)}`, () => changed);
        return fault;
      },
      drag: (phase) => (phase === 'begin' ? beginTurn(store) : endTurn(store)),
    };
  }, [store, document, axle]);
};
