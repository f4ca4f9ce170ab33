import { useEffect, useRef, useState } from 'react';
import { setupNames } from '../../geometry/index';
import { Dialog } from '../look/controls/Dialog';
import { useBench, useWindow } from '../shell/benchContext';
import { chooseSetup, redoStep, undoStep } from '../state/actions/editSetup';
import { copySetup, deleteSetup, makeSetup, markOnCar, moveSetup, renameSetup, writeNotes } from '../state/actions/setups';
import { comparedWith } from '../state/benchStore';
import { freeTrialName, setupNamed } from '../state/settings';
import { faultOfDeleting } from '../state/setupEdits';
import { DifferenceList } from './DifferenceList';
import { DraftField } from './DraftField';
import { RecordTable } from './RecordTable';
import './setups.css';

/** The setups of the car: made, copied, named, ordered, written about, and what differs between two, in words. */
export const SetupsDialog = ({ onClose }: { readonly onClose: () => void }) => {
  const { store } = useWindow();
  const bench = useBench((state) => state.history?.present ?? null);
  const other = useBench(comparedWith);
  const last = useBench((state) => state.history?.past.at(-1)?.name ?? null);
  const [chosen, setChosen] = useState<string | null>(null);
  const [than, setThan] = useState<string | null>(null);
  const detail = useRef<HTMLDivElement>(null);
  const present = bench?.document;
  // a copy is drawn anew, and Undo goes out with its last step: the keys would be left with nothing, so they go on with the name
  useEffect(() => {
    if (window.document.activeElement !== window.document.body) return;
    const field = detail.current?.querySelector<HTMLInputElement>('input.name');
    field?.focus();
    field?.select();
  }, [present, chosen]);
  if (!bench) return null;

  const { document } = bench;
  const names = setupNames(document);
  const name = chosen !== null && names.includes(chosen) ? chosen : bench.setup;
  const others = names.filter((one) => one !== name);
  const first = other && bench.againstCar.kind === 'own' && others.includes(other.setup) ? other.setup : (others[0] ?? name);
  const heldAgainst = than !== null && others.includes(than) ? than : first;
  const at = names.indexOf(name);
  const cannotGo = faultOfDeleting(document, name);
  const showBench = () => setChosen(null);
  const onKeyDown = (event: React.KeyboardEvent) => {
    const inField = event.target instanceof HTMLElement && event.target.closest('[data-draft]') !== null;
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z' || inField) return;
    event.preventDefault();
    event.stopPropagation();
    if (event.shiftKey) redoStep(store);
    else undoStep(store);
  };
  const onListKey = (event: React.KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    if (event.altKey) return moveSetup(store, name, step);
    const next = names[Math.min(names.length - 1, Math.max(0, at + step))] ?? name;
    setChosen(next);
    event.currentTarget.querySelectorAll<HTMLElement>('[role="option"]')[names.indexOf(next)]?.focus();
  };

  return (
    <Dialog
      title="Setups"
      className="setups"
      note={last === null ? '' : `last: ${last}`}
      tools={
        <button type="button" className="button bare" disabled={last === null} onClick={() => undoStep(store)}>
          Undo
        </button>
      }
      onClose={onClose}
      onKeyDown={onKeyDown}
    >
      <div className="body">
        <div className="list">
          <div role="listbox" aria-label="Setups of this car. Alt with the arrow keys moves one." onKeyDown={onListKey}>
            {names.map((one) => (
              <div
                key={one}
                role="option"
                aria-selected={one === name}
                tabIndex={one === name ? 0 : -1}
                onClick={() => setChosen(one)}
                onDoubleClick={() => chooseSetup(store, one)}
              >
                <span className="ellipsis">{one}</span>
                {document.onCar === one && <span className="mark">on the car</span>}
                {bench.setup === one && <span className="mark onbench">on the bench</span>}
              </div>
            ))}
          </div>
          <button
            type="button"
            className="button"
            onClick={() => {
              makeSetup(store, freeTrialName(names));
              showBench();
            }}
          >
            New, as drawn
          </button>
        </div>
        <div className="detail" key={name} ref={detail}>
          <div className="namerow">
            <DraftField
              label={`Name of ${name}`}
              className="name"
              value={name}
              onTake={(text) => {
                const fault = renameSetup(store, name, text);
                if (fault === null) setChosen(text.trim());
                return fault;
              }}
            />
            <button type="button" className="button" disabled={bench.setup === name} onClick={() => chooseSetup(store, name)}>
              {bench.setup === name ? 'On the bench' : 'Put on the bench'}
            </button>
            <label className="oncar">
              <input
                type="checkbox"
                checked={document.onCar === name}
                onChange={(event) => markOnCar(store, event.target.checked ? name : null)}
              />
              on the car now
            </label>
          </div>
          <div className="actions">
            <button
              type="button"
              className="button"
              onClick={() => {
                copySetup(store, name);
                showBench();
              }}
            >
              Copy
            </button>
            <button type="button" className="button" disabled={at === 0} onClick={() => moveSetup(store, name, -1)}>
              Move up
            </button>
            <button type="button" className="button" disabled={at === names.length - 1} onClick={() => moveSetup(store, name, 1)}>
              Move down
            </button>
            <button
              type="button"
              className="button"
              disabled={cannotGo !== null}
              onClick={() => {
                deleteSetup(store, name);
                setChosen(names[at + 1] ?? names[at - 1] ?? null);
              }}
            >
              Delete
            </button>
            {cannotGo !== null && <span className="quiet">{cannotGo}</span>}
          </div>
          <section aria-label="Notes">
            <h3>Notes</h3>
            <DraftField
              label={`Notes of ${name}`}
              className="notes"
              isLong
              value={setupNamed(document, name).notes ?? ''}
              onTake={(text) => {
                writeNotes(store, name, text);
                return null;
              }}
            />
          </section>
          <section aria-label="Written down">
            <h3>Written down</h3>
            <RecordTable document={document} name={name} />
          </section>
          <section aria-label="What differs">
            <h3>What differs</h3>
            <DifferenceList document={document} name={name} than={heldAgainst} onChooseThan={setThan} />
          </section>
        </div>
      </div>
    </Dialog>
  );
};
