import { useEffect, useRef } from 'react';
import { useBench, useWindow } from '../shell/benchContext';
import { prefer } from '../state/actions/prefer';
import { hiddenReadings, movedOrder, orderedGroups, READINGS_HIDDEN, READINGS_ORDER } from './chosenReadings';
import type { ReadingGroup, ReadingRow } from './readingRows';

/** Which readings the table shows and in which order inside their group. */
export const ChooseReadings = ({
  groups,
  onClose,
}: {
  readonly groups: readonly ReadingGroup[];
  readonly onClose: () => void;
}) => {
  const { store } = useWindow();
  const preferences = useBench((state) => state.preferences);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  const hidden = hiddenReadings(preferences);
  const show = (rows: readonly ReadingRow[], isShown: boolean) => {
    const ids = new Set(rows.map(({ id }) => id));
    const rest = [...hidden].filter((id) => !ids.has(id));
    prefer(store, READINGS_HIDDEN, isShown ? rest : [...rest, ...ids]);
  };
  const move = (id: string, by: number) => prefer(store, READINGS_ORDER, movedOrder(groups, preferences, id, by));
  return (
    <dialog ref={dialog} className="choosereadings" aria-labelledby="choose-readings" onClose={onClose}>
      <header>
        <h2 id="choose-readings">Readings shown</h2>
        <span className="spread" />
        <button
          type="button"
          className="button bare"
          onClick={() => {
            prefer(store, READINGS_HIDDEN, []);
            prefer(store, READINGS_ORDER, []);
          }}
        >
          All, in their first order
        </button>
        <form method="dialog">
          <button type="submit" className="button">
            Close
          </button>
        </form>
      </header>
      <div className="groups">
        {orderedGroups(groups, preferences).map(({ name, rows }) => (
          <fieldset key={name}>
            <legend>
              <label>
                <input
                  type="checkbox"
                  checked={rows.some(({ id }) => !hidden.has(id))}
                  onChange={(event) => show(rows, event.target.checked)}
                />
                {name}
              </label>
            </legend>
            {rows.map((row, index) => (
              <div key={row.id}>
                <label>
                  <input type="checkbox" checked={!hidden.has(row.id)} onChange={(event) => show([row], event.target.checked)} />
                  {row.name}
                </label>
                <span className="spread" />
                <button type="button" disabled={index === 0} aria-label={`${row.name}: up`} onClick={() => move(row.id, -1)}>
                  ▲
                </button>
                <button
                  type="button"
                  disabled={index === rows.length - 1}
                  aria-label={`${row.name}: down`}
                  onClick={() => move(row.id, 1)}
                >
                  ▼
                </button>
              </div>
            ))}
          </fieldset>
        ))}
      </div>
    </dialog>
  );
};
