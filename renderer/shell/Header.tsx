import type { AxleName } from '../../geometry/index';
import { FileMenu } from '../files/FileMenu';
import { nameOfPlace } from '../files/places';
import { Segments } from '../look/controls/Segments';
import { redoStep, undoStep } from '../state/actions/editSetup';
import { chooseAxle, chooseTheme } from '../state/actions/lookAt';
import { isUnsaved, type Theme } from '../state/benchStore';
import { SetupChoice } from '../setups/SetupChoice';
import { useBench, useWindow } from './benchContext';
import { SavedWord } from './SavedWord';
import { UnitsMenu } from './UnitsMenu';
import { carTitle } from '../state/carTitle';

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
export const Header = () => {
  const { store } = useWindow();
  const title = useBench(carTitle);
  const place = useBench(({ file }) => (file && file.place.kind !== 'none' ? nameOfPlace(file.place) : null));
  const changed = useBench(isUnsaved);
  const isNew = useBench((state) => state.file?.isNeverSaved === true);
  const axle = useBench((state) => state.axle);
  const has = useBench((state) => state.history?.present.document ?? null);
  const theme = useBench((state) => state.theme);
  return (
    <header className="top">
      <div className="named">
        <h1 className="car">
          <span className="ellipsis" title={place === null || title === null ? (title ?? undefined) : `${title}, in ${place}`}>
            {title ?? 'No car open'}
          </span>
          {changed && (
            <span
              className="unsaved"
              title={isNew ? 'Not saved yet' : 'Changed since it was saved'}
              role="img"
              aria-label={isNew ? 'not saved yet' : 'changed since it was saved'}
            />
          )}
        </h1>
        <SavedWord />
      </div>
      <FileMenu />
      <Segments
        label="Axle"
        chosen={axle}
        options={AXLES.map((option) => ({ ...option, disabled: !has?.[option.name] }))}
        onChoose={(name) => chooseAxle(store, name)}
      />
      <SetupChoice />
      <span className="spread" />
      <UndoRedo />
      <UnitsMenu />
      <Segments label="Theme" chosen={theme} options={THEMES} onChoose={(name) => chooseTheme(store, name)} />
    </header>
  );
};
