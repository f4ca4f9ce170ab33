import { setupNames } from '../../geometry/index';
import { useBench, useWindow } from '../shell/benchContext';
import { chooseSetup } from '../state/actions/editSetup';
import { AgainstChoice } from './AgainstChoice';

/** Which setup is on the bench, and what it is compared with. */
export const SetupChoice = () => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  if (!bench) return null;
  return (
    <>
      <span className="choice">
        <select aria-label="Setup on the bench" value={bench.setup} onChange={(event) => chooseSetup(store, event.target.value)}>
          {setupNames(bench.document).map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </span>
      <AgainstChoice />
    </>
  );
};
