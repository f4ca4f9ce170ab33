import { useId, useRef, useState, type KeyboardEvent } from 'react';
import { Segments } from '../../look/controls/Segments';
import type { LengthUnit } from '../../../geometry/index';
import { useBench, useWindow } from '../../shell/benchContext';
import { beginAxlesAnew, beginCar, beginUnfinished, keepUnfinished, withAxlesAnew } from '../../state/actions/beginCar';
import type { BegunCar, LayoutName, NewCarChoice } from '../../state/begunCar';
import { benchOf, changeFiles, isUnsaved } from '../../state/benchStore';
import { chosenUnits } from '../../state/chosenUnits';
import { faultWords, judgeEdit } from '../fields/judgeEdit';
import { LayoutDrawing } from './LayoutDrawing';
import { countOfPoints, FIRST_CHOICE, newCarDocument } from './newCarDocument';
import { parseSize, sizeText } from './sizeText';
import { TYPICAL_AXLES } from './typicalAxles';
import { countGiven, emptyCar } from './unfinishedCar';

interface NewCarProps {
  /** the car that was begun and is open: its layouts are changed; null: another car is begun */
  readonly begun: BegunCar | null;
  /** null: no car is open to go back to */
  readonly onCancel: (() => void) | null;
  readonly onMade: (next: Next) => void;
}

/** What comes after the layout: the car on typical points, a list read in over them, or every point empty. */
export type Next = 'none' | 'coordinates' | 'unfinished';

const LAYOUTS = Object.keys(TYPICAL_AXLES) as LayoutName[];
const UNITS = [
  { name: 'mm', label: 'mm' },
  { name: 'in', label: 'inches' },
] as const;
const LENGTHS = [
  ['wheelbase', 'Wheelbase'],
  ['frontTrack', 'Front track'],
  ['rearTrack', 'Rear track'],
  ['loadedRadius', 'Loaded radius'],
] as const;
type SizeName = (typeof LENGTHS)[number][0];

/** A new car: how each axle is made, and where it begins; then its points are written over one by one, or read in. */
export const NewCar = ({ begun, onCancel, onMade }: NewCarProps) => {
  const { store } = useWindow();
  const unfinished = useBench((state) => state.unfinished);
  const [choice, setChoice] = useState<NewCarChoice>(() => {
    const name = benchOf(store.getState())?.document.name;
    return begun
      ? { ...begun.choice, name: name ?? begun.choice.name }
      : (unfinished?.choice ?? { ...FIRST_CHOICE, unit: chosenUnits(store.getState()).length });
  });
  const [next, setNext] = useState<Next>(() => (unfinished && !begun ? 'unfinished' : 'none'));
  const [refused, setRefused] = useState<string | null>(null);
  /** sizes as they were typed */
  const [typed, setTyped] = useState<Partial<Record<SizeName, string>>>({});
  const sizes = useRef<HTMLDivElement>(null);
  const set = (part: Partial<NewCarChoice>) => {
    setRefused(null);
    setChoice((before) => ({ ...before, ...part }));
  };
  const setUnit = (unit: LengthUnit) => {
    setTyped({});
    set({ unit });
  };
  const layouts = [choice.front, choice.rear].filter((layout) => layout !== null);
  const typical = layouts.reduce((sum, layout) => sum + countOfPoints(layout), 0);
  const count = next === 'unfinished' ? countGiven(emptyCar(choice, null)).of : typical;
  const make = () => {
    if (next === 'unfinished') {
      beginUnfinished(store, emptyCar(choice, unfinished));
      return onMade(next);
    }
    const [wrong] = LENGTHS.filter(([key]) => typed[key] !== undefined && !parseSize(typed[key], choice.unit).ok);
    if (wrong) {
      sizes.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
      return setRefused(`${wrong[1]}: what was typed is no size of a car. Nothing was made.`);
    }
    const fresh = newCarDocument(choice);
    const present = begun ? benchOf(store.getState())?.document : undefined;
    const document = begun && present ? withAxlesAnew(present, begun.choice, choice, fresh) : fresh;
    const [fault] = judgeEdit(document);
    if (fault) return setRefused(faultWords(fault, []));
    if (begun) {
      beginAxlesAnew(store, choice, fresh, document);
      return onMade(next);
    }
    const open = () => {
      beginCar(store, choice, document);
      onMade(next);
    };
    if (isUnsaved(store.getState())) changeFiles(store, { question: { title: choice.name, open } });
    else open();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && onCancel) onCancel();
  };
  return (
    <section className="newcar" aria-label="New car" onKeyDown={onKeyDown}>
      <div className="layouts">
        <AxleLayouts title="Front axle" note="steered by a rack" chosen={choice.front} onChoose={(front) => set({ front })} />
        <AxleLayouts title="Rear axle" note="not steered" chosen={choice.rear} onChoose={(rear) => set({ rear })} />
      </div>
      <aside className="newside" aria-label="Start from">
        <div className="newscroll">
          <h2>Name and size</h2>
          {begun && (
            <p className="quiet">
              An axle that keeps its layout keeps its points, whatever the sizes here; one with another layout begins anew, in one
              undo step.
            </p>
          )}
          <label className="leaf">
            <span>Name</span>
            <input type="text" value={choice.name} onChange={(event) => set({ name: event.target.value })} />
          </label>
          {begun ? (
            <p>
              Measured in {choice.unit === 'mm' ? 'mm' : 'inches'}: the file has begun in it. The units in the header say how it
              is shown.
            </p>
          ) : (
            <div className="leaf">
              <span>Measured in</span>
              <Segments label="Unit of the file" options={UNITS} chosen={choice.unit} onChoose={setUnit} />
            </div>
          )}
          <div ref={sizes} className="sizes">
            {LENGTHS.map(([key, label]) => (
              <LengthEntry
                key={key}
                label={label}
                unit={choice.unit}
                value={choice[key]}
                typed={typed[key] ?? null}
                onType={(text) => {
                  const size = parseSize(text, choice.unit);
                  setTyped((before) => ({ ...before, [key]: text }));
                  set(size.ok ? { [key]: size.mm } : {});
                }}
              />
            ))}
          </div>
          <h2>Start from</h2>
          <label className="radio">
            <input type="radio" name="start" checked={next === 'none'} onChange={() => setNext('none')} />
            <span>
              <b>Typical points</b>, moved to this size, to be written over one by one: the picture stands from the first minute
            </span>
          </label>
          <label className="radio">
            <input type="radio" name="start" checked={next === 'coordinates'} onChange={() => setNext('coordinates')} />
            <span>
              <b>A list of coordinates</b> next, which writes over them: names matched to points, any axes and datum
            </span>
          </label>
          {!begun && (
            <label className="radio">
              <input type="radio" name="start" checked={next === 'unfinished'} onChange={() => setNext('unfinished')} />
              <span>
                <b>Empty points</b>, to be given one by one: no number that you did not measure, and no picture before none is
                missing; the sizes above are not used
              </span>
            </label>
          )}
          {unfinished && !begun && (
            <p className="quiet">
              {unfinished.choice.name} is unfinished: {countGiven(unfinished).given} of {countGiven(unfinished).of} points given.{' '}
              <button type="button" className="button" onClick={() => keepUnfinished(store, null)}>
                Give it up
              </button>
            </p>
          )}
          <h2>What you will need</h2>
          <ul>
            <li>
              <b>{count} points</b>, left side; the right is the mirror image until it is typed
            </li>
            <li>
              <b>camber, toe and loaded radius</b> of each axle, as it stood when measured
            </li>
            <li>all else is optional; what needs it says so</li>
          </ul>
          <p className="quiet">X forward, Y left, Z up; lists may have any axes.</p>
          <p className="quiet">Not modelled: rigid axles, twist beams, rockers and pushrods, compliance.</p>
        </div>
        {refused !== null && (
          <p className="leaffault" role="alert">
            {refused}
          </p>
        )}
        <div className="newend">
          {onCancel && (
            <button type="button" className="button" onClick={onCancel}>
              Cancel
            </button>
          )}
          <span className="spread" />
          <button type="button" className="button primary" disabled={layouts.length === 0} onClick={make}>
            {next === 'coordinates' ? 'Next: coordinates' : 'Next: points'}
          </button>
        </div>
      </aside>
    </section>
  );
};

interface AxleLayoutsProps {
  readonly title: string;
  readonly note: string;
  readonly chosen: LayoutName | null;
  readonly onChoose: (layout: LayoutName | null) => void;
}

const AxleLayouts = ({ title, note, chosen, onChoose }: AxleLayoutsProps) => (
  <section className="axlelayouts" aria-label={title}>
    <div className="layouthead">
      <h2>{title}</h2>
      <span className="quiet">{note}</span>
      <span className="spread" />
      <button type="button" className="button" aria-pressed={chosen === null} onClick={() => onChoose(null)}>
        No such axle
      </button>
    </div>
    <div className="layoutrow">
      {LAYOUTS.map((layout) => (
        <button
          key={layout}
          type="button"
          className="layoutcard"
          aria-pressed={chosen === layout}
          onClick={() => onChoose(layout)}
        >
          <LayoutDrawing layout={layout} />
          <b>{TYPICAL_AXLES[layout].title}</b>
          <span>{TYPICAL_AXLES[layout].made}</span>
          <span className="quiet">
            {countOfPoints(layout)} points, {layout === 'strut' ? 'named' : 'your names'}
          </span>
        </button>
      ))}
    </div>
  </section>
);

interface LengthEntryProps {
  readonly label: string;
  /** what it is read and typed in */
  readonly unit: LengthUnit;
  /** mm */
  readonly value: number;
  /** what was typed, until it is another car's; null: nothing */
  readonly typed: string | null;
  readonly onType: (typed: string) => void;
}

/** A length that must be over zero; what is typed wrong stays, with the reason. */
const LengthEntry = ({ label, unit, value, typed, onType }: LengthEntryProps) => {
  const id = useId();
  const read = typed === null ? null : parseSize(typed, unit);
  const fault = read?.ok === false ? read.fault : null;
  return (
    <label className={`leaf${fault === null ? '' : ' faulty'}`}>
      <span>{label}</span>
      <span className="entry">
        <input
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={typed ?? sizeText(value, unit)}
          aria-invalid={fault !== null}
          aria-describedby={fault === null ? undefined : id}
          onChange={(event) => onType(event.target.value)}
        />
        <span className="unit">{unit}</span>
      </span>
      {fault !== null && (
        <span className="leaffault" id={id}>
          {fault}
        </span>
      )}
    </label>
  );
};
