import { lazy, Suspense, useState } from 'react';
import { setupNames } from '../../geometry/index';
import { useBench, useWindow } from '../shell/benchContext';
import { chooseSetup } from '../state/actions/editSetup';
import { AgainstChoice } from './AgainstChoice';

const SetupsDialog = lazy(async () => ({ default: (await import('./SetupsDialog')).SetupsDialog }));

/** Which setup is on the bench, and what it is compared with. */
export const SetupChoice = () => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const [isOpen, setOpen] = useState(false);
  if (!bench) return null;
  return (
    <>
      <span className="choice">
        <select
          aria-label="Setup on the bench"
          title={bench.setup}
          value={bench.setup}
          onChange={(event) => chooseSetup(store, event.target.value)}
        >
          {setupNames(bench.document).map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </span>
      <AgainstChoice />
      <button
        type="button"
        className="button setupsbutton"
        title="Make, copy, name and compare setups"
        onClick={() => setOpen(true)}
      >
        Setups…
      </button>
      {isOpen && (
        <Suspense>
          <SetupsDialog onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  );
};
