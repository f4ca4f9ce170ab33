import type { ChangeEvent, RefObject } from 'react';
import type { AxleName } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import { Segments } from '../look/controls/Segments';
import { redoStep, undoStep } from '../state/actions/editSetup';
import { chooseAxle, chooseTheme } from '../state/actions/lookAt';
import { openCarBytes, openSample } from '../state/actions/openCar';
import type { Theme } from '../state/benchStore';
import { SetupChoice } from '../setups/SetupChoice';
import { useBench, useWindow } from './benchContext';

const AXLES: readonly { name: AxleName; label: string }[] = [
  { name: 'front', label: 'Front' },
  { name: 'rear', label: 'Rear' },
];
const THEMES: readonly { name: Theme; label: string }[] = [
  { name: 'light', label: 'Light' },
  { name: 'dark', label: 'Dark' },
  { name: 'system', label: 'System' },
];

const UndoShape = ({ mirrored }: { readonly mirrored?: true }) => (
  <svg width="15" height="15" viewBox="0 0 16 16" aria-hidden="true" transform={mirrored ? 'scale(-1 1)' : undefined}>
    <g fill="none" stroke="currentColor" strokeWidth="1.6">
      <path d="M6 3L2.5 6.5 6 10" />
      <path d="M2.5 6.500H10a3.5 3.5 0 010 7H7" />
    </g>
  </svg>
);

const Samples = () => {
  const { store, files } = useWindow();
  const samples = useBench((state) => state.samples);
  const open = useBench((state) => state.file?.sample ?? null);
  if (samples.length === 0) return null;
  return (
    <label className="choice">
      <span className="quiet">sample</span>
      <select aria-label="Sample car" value={open ?? ''} onChange={(event) => void openSample(store, files, event.target.value)}>
        {open === null && <option value="">–</option>}
        {samples.map((name) => (
          <option key={name} value={name}>
            {nameOfKey(name)}
          </option>
        ))}
      </select>
    </label>
  );
};

const OpenFile = ({ opener }: { readonly opener: RefObject<HTMLInputElement | null> }) => {
  const { store } = useWindow();
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    if (!file) return;
    const bytes = new Uint8Array(await file.arrayBuffer());
    openCarBytes(store, file.name, bytes);
    event.target.value = '';
  };
  return (
    <>
      <button type="button" className="button" title="Open a car file (Ctrl O)" onClick={() => opener.current?.click()}>
        Open…
      </button>
      <input
        ref={opener}
        type="file"
        hidden
        accept=".json,application/json"
        aria-label="Car file"
        onChange={(event) => void take(event)}
      />
    </>
  );
};

const UndoRedo = () => {
  const { store } = useWindow();
  const last = useBench((state) => state.history?.past.at(-1)?.name ?? null);
  const next = useBench((state) => state.history?.future.at(-1)?.name ?? null);
  return (
    <>
      <button
        type="button"
        className="button bare undo"
        disabled={last === null}
        aria-label={last === null ? 'Nothing to undo' : `Undo: ${last}`}
        title={last === null ? 'Nothing to undo' : `Undo: ${last} (Ctrl Z)`}
        onClick={() => undoStep(store)}
      >
        <UndoShape />
        <span className="stepname">{last ?? 'nothing to undo'}</span>
      </button>
      <button
        type="button"
        className="button bare"
        disabled={next === null}
        aria-label={next === null ? 'Nothing to redo' : `Redo: ${next}`}
        title={next === null ? 'Nothing to redo' : `Redo: ${next} (Ctrl Shift Z)`}
        onClick={() => redoStep(store)}
      >
        <UndoShape mirrored />
      </button>
    </>
  );
};

/** Car, axle and setups on the left; undo, files, units and theme on the right. */
export const Header = ({ opener }: { readonly opener: RefObject<HTMLInputElement | null> }) => {
  const { store } = useWindow();
  const title = useBench((state) => state.file?.title ?? null);
  const changed = useBench((state) => (state.history ? state.history.present.document !== state.file?.asRead : false));
  const axle = useBench((state) => state.axle);
  const has = useBench((state) => state.history?.present.document ?? null);
  const theme = useBench((state) => state.theme);
  return (
    <header className="top">
      <h1 className="car">
        {title ?? 'No car open'}
        {changed && (
          <span className="unsaved" title="Changed since it was opened" role="img" aria-label="changed since it was opened" />
        )}
      </h1>
      <Segments
        label="Axle"
        chosen={axle}
        options={AXLES.map((option) => ({ ...option, disabled: !has?.[option.name] }))}
        onChoose={(name) => chooseAxle(store, name)}
      />
      <SetupChoice />
      <span className="spread" />
      <UndoRedo />
      <Samples />
      <OpenFile opener={opener} />
      <span className="unitline">mm · degrees</span>
      <Segments label="Theme" chosen={theme} options={THEMES} onChoose={(name) => chooseTheme(store, name)} />
    </header>
  );
};
