import { useState } from 'react';
import { useWindow } from '../shell/benchContext';
import { dropCopy } from '../state/actions/recoverCar';

/** Throws a kept copy away for good, at the second press: nothing goes by a slip. */
export const ThrowCopyAway = ({ id }: { readonly id: string }) => {
  const { store, files } = useWindow();
  const [isSure, setSure] = useState(false);
  return isSure ? (
    <button type="button" className="button danger" onClick={() => void dropCopy(store, files, id)}>
      Throw it away for good
    </button>
  ) : (
    <button type="button" className="button bare" onClick={() => setSure(true)}>
      Throw the copy away…
    </button>
  );
};
