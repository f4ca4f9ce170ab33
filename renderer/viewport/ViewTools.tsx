import { useEffect, useRef, useState, type RefObject } from 'react';
import { nameOfKey } from '../adjusters/fitterWords';
import { Segments } from '../look/controls/Segments';
import { useBench, useWindow } from '../shell/benchContext';
import { chooseView } from '../state/actions/lookAt';
import { choosePoint, chooseScope, switchOverlay, switchProjection } from '../state/actions/viewing';
import { overlaysOf, projectionOf, scopeOf } from '../state/viewing';
import type { SceneControl } from './runScene';
import { SavePicture } from './SavePicture';
import { OVERLAYS, SCOPES, viewsFor } from './viewNames';

/** The chosen point by its name: what a click on a joint does. */
const PointChoice = () => {
  const { store } = useWindow();
  const axle = useBench((state) => state.axle);
  const points = useBench((state) => state.history?.present.document[state.axle]?.points);
  const chosen = useBench((state) => state.viewing.chosen);
  const scope = useBench((state) => scopeOf(state.preferences));
  const side = scope === 'right' ? 'right' : (chosen?.side ?? 'left');
  return (
    <label>
      Point
      <select
        aria-label="Chosen point"
        value={chosen?.axle === axle ? chosen.point : ''}
        onChange={({ target }) => choosePoint(store, target.value === '' ? null : { axle, side, point: target.value })}
      >
        <option value="">none chosen</option>
        {Object.keys(points ?? {}).map((name) => (
          <option key={name} value={name}>
            {nameOfKey(name)}
          </option>
        ))}
      </select>
    </label>
  );
};

/** Everything that is seldom changed, behind one button: what is drawn over the car, the lens, pictures to keep. */
const ShowList = ({ control }: { readonly control: RefObject<SceneControl | null> }) => {
  const { store } = useWindow();
  const preferences = useBench((state) => state.preferences);
  const overlays = overlaysOf(preferences);
  const view = useBench((state) => state.view);
  const hasJoints = useBench((state) => Object.keys(state.history?.present.document.joints ?? {}).length > 0);
  const [open, setOpen] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);

  useEffect(() => {
    if (!open) return;
    const onPointer = (event: PointerEvent) => {
      if (event.target instanceof Node && !place.current?.contains(event.target)) setOpen(false);
    };
    window.addEventListener('pointerdown', onPointer);
    return () => window.removeEventListener('pointerdown', onPointer);
  }, [open]);

  return (
    <div
      ref={place}
      className="showplace"
      data-over-view
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !open) return;
        event.stopPropagation();
        setOpen(false);
        button.current?.focus();
      }}
    >
      <button ref={button} type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        Show {overlays.length}
      </button>
      {open && (
        <div className="showlist" role="group" aria-label="Shown in the view">
          {OVERLAYS.map(({ name, label }) => (
            <label key={name}>
              <input type="checkbox" checked={overlays.includes(name)} onChange={() => switchOverlay(store, name)} />
              {label}
              {name === 'jointTilt' && !hasJoints && <span className="quiet">none in this file</span>}
            </label>
          ))}
          <hr />
          <label>
            <input
              type="checkbox"
              checked={projectionOf(preferences, view) === 'parallel'}
              onChange={() => switchProjection(store)}
            />
            Parallel, without perspective
          </label>
          <hr />
          <PointChoice />
          <hr />
          <SavePicture control={control} />
        </div>
      )}
    </div>
  );
};

/** Views, what is shown, and what is drawn over it. */
export const ViewTools = ({ control }: { readonly control: RefObject<SceneControl | null> }) => {
  const { store } = useWindow();
  const axle = useBench((state) => state.axle);
  const view = useBench((state) => state.view);
  const scope = useBench((state) => scopeOf(state.preferences));
  return (
    <div className={scope === 'axle' || scope === 'car' ? 'viewtools row' : 'viewtools'}>
      <div className="scopetools" data-over-view>
        <Segments label="Shown" options={SCOPES} chosen={scope} onChoose={(name) => chooseScope(store, name)} />
      </div>
      <div className="viewchoice" data-over-view>
        <Segments
          label="View"
          className="stacked"
          options={viewsFor(axle, scope)}
          chosen={view}
          onChoose={(name) => chooseView(store, name)}
        />
      </div>
      <ShowList control={control} />
    </div>
  );
};
