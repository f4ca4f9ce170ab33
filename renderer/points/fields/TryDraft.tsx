import { useEffect, useMemo, useState } from 'react';
import { findReading, type AdjusterDocument, type AxleName, type CarDocument } from '../../../geometry/index';
import { hoursTyped } from '../../adjusters/hoursTyped';
import { fitterWordsOfSides } from '../../adjusters/fitterWords';
import { PartDrawing } from '../../adjusters/parts/PartDrawing';
import { isOffMark, scaleOf, stepSetting } from '../../compute/adjusterSteps';
import { changesBetween } from '../../compute/effects';
import { NumberField } from '../../look/controls/NumberField';
import { useUnits } from '../../look/units';
import { useBench, useWindow } from '../../shell/benchContext';
import { tryCar } from '../../state/actions/tryCar';
import { layRange } from '../../state/actions/viewing';
import { setupNamed, withSetting, withSetup } from '../../state/settings';
import { mmPerFileUnit } from '../../units/fileLength';
import { formatShort } from '../../units/format';
import { shownQuantity, shownReading, withUnit } from '../../units/shownQuantity';
import { aimRangeOf } from './aimRange';
import { judgeEdit } from './judgeEdit';
import { withValue } from './pathValue';

interface TryDraftProps {
  readonly document: CarDocument;
  readonly axle: AxleName;
  readonly name: string;
  /** the adjuster as far as it is filled in */
  readonly value: unknown;
}

const UNITS = { length: 'mm', clock: '°', turns: 'turn' } as const;
const NAMED = 5;

/** The car with the adjuster on it; null while something is missing. A draft without a name is tried under one of its own. */
export const withDraft = (
  document: CarDocument,
  axle: AxleName,
  name: string,
  value: unknown,
): { readonly document: CarDocument; readonly name: string; readonly adjuster: AdjusterDocument } | null => {
  const taken = document[axle]?.adjusters ?? {};
  const isFree = /^[A-Za-z][A-Za-z0-9_-]*$/.test(name) && !Object.hasOwn(taken, name);
  const key = isFree ? name : 'partBeingMade';
  const tried = withValue(document, [axle, 'adjusters', key], value);
  const adjuster = tried[axle]?.adjusters?.[key];
  return adjuster?.kind !== undefined && judgeEdit(tried).length === 0 ? { document: tried, name: key, adjuster } : null;
};

/** Its range is drawn along its aim as soon as both are given, whole or not. */
const useRange = (document: CarDocument, axle: AxleName, value: unknown, setting: number | null): void => {
  const { store } = useWindow();
  const range = useMemo(() => {
    const points = Object.keys(document[axle]?.points ?? {});
    return aimRangeOf((value ?? {}) as Readonly<Record<string, unknown>>, axle, points, mmPerFileUnit(document), setting);
  }, [document, axle, value, setting]);
  useEffect(() => layRange(store, range), [store, range]);
  useEffect(() => () => layRange(store, null), [store]);
};

/** An adjuster that is being made, turned before it is taken: the view follows, and what it does to the car stands beside it. */
export const TryDraft = ({ document, axle, name, value }: TryDraftProps) => {
  const tried = useMemo(() => withDraft(document, axle, name, value), [document, axle, name, value]);
  return (
    <section className={`trydraft${tried ? ' ready' : ''}`} aria-label="Try it">
      <h3>Try it</h3>
      {tried ? <Trying {...tried} axle={axle} key={tried.adjuster.kind} /> : <Untried {...{ document, axle, value }} />}
    </section>
  );
};

const Untried = ({ document, axle, value }: Omit<TryDraftProps, 'name'>) => {
  useRange(document, axle, value, null);
  return (
    <p className="quiet">With every field marked * filled in, it can be turned here before it is made: the view shows it.</p>
  );
};

interface TryingProps {
  readonly document: CarDocument;
  readonly axle: AxleName;
  readonly name: string;
  readonly adjuster: AdjusterDocument;
}

const Trying = ({ document, axle, name, adjuster }: TryingProps) => {
  const { store } = useWindow();
  const units = useUnits();
  const setupName = useBench((state) => state.history?.present.setup ?? '');
  const [setting, setSetting] = useState<number | null>(null);
  useRange(document, axle, adjuster, setting);
  const scale = scaleOf(adjuster);
  const mm = mmPerFileUnit(document);
  const factor = scale.measure === 'length' ? mm : 1;
  const trial = useMemo(
    () => withSetup(document, setupName, withSetting(setupNamed(document, setupName), axle, name, 'both', setting)),
    [document, setupName, axle, name, setting],
  );
  useEffect(() => tryCar(store, trial), [store, trial]);
  useEffect(() => () => tryCar(store, null), [store]);
  const length = shownQuantity({ quantity: 'length', decimals: 2 }, units);
  const shown = (value: number): string =>
    scale.measure === 'length' ? withUnit(length.format(value), length.unit) : withUnit(formatShort(value), UNITS[scale.measure]);
  const words = fitterWordsOfSides(adjuster, { left: setting, right: setting }, mm, units).short;
  return (
    <>
      <div className="tryrow">
        <PartDrawing adjuster={adjuster} value={setting} mm={mm} pivotToBolt={undefined} size={44} className="mini" />
        <input
          type="range"
          aria-label={`Try it, from ${shown(scale.min * factor)} to ${shown(scale.max * factor)}`}
          aria-valuetext={words}
          min={scale.min}
          max={scale.max}
          step={scale.step}
          value={setting ?? 0}
          onChange={(event) => setSetting(Number(event.target.value))}
        />
        <NumberField
          label={`Try it, left and right, ${scale.measure === 'clock' ? 'degrees' : UNITS[scale.measure]}`}
          value={setting === null ? (adjuster.kind === 'offset-bushing' ? null : 0) : setting * factor}
          absent={adjuster.kind === 'offset-bushing' ? 'none' : ''}
          unit={UNITS[scale.measure]}
          measures={scale.measure === 'length' ? 'length' : undefined}
          moreUnits={hoursTyped(adjuster, 'both')}
          onClear={adjuster.kind === 'offset-bushing' ? () => setSetting(null) : undefined}
          min={scale.min * factor}
          max={scale.max * factor}
          onSet={(to) => setSetting(Number((to / factor).toFixed(9)))}
          onStep={(steps) => setSetting((now) => stepSetting(adjuster, now, steps))}
          onHome={() => setSetting(0)}
        />
      </div>
      <p className="quiet">
        {words}
        {isOffMark(adjuster, setting) ? '; between its steps' : ''}
      </p>
      <Effects document={document} at={words} />
    </>
  );
};

/** What it does where it stands, against the car without it. */
const Effects = ({ document, at }: { readonly document: CarDocument; readonly at: string }) => {
  const units = useUnits();
  const isTried = useBench((state) => state.trial !== null);
  const answer = useBench((state) => state.answer);
  if (!isTried || !answer) return null;
  if (!answer.ok) return <p role="status">The linkage does not close there: {answer.failure.message}.</p>;
  const { row, compared } = answer.value;
  const changes = compared.ok ? changesBetween(document, compared.value, row).slice(0, NAMED) : [];
  const reset = row.toeReset ? ', with toe reset' : '';
  if (changes.length === 0) return <p className="quiet">Nothing that counts changes there{reset}.</p>;
  return (
    <ul className="tryeffects" aria-label={`Against the car without it${reset}`}>
      <li className="quiet">
        Against without it ({at}
        {reset}):
      </li>
      {changes.map(({ key, owner, name, change }) => {
        const entry = findReading(key);
        const reading = entry && shownReading(entry, units);
        return (
          <li key={`${owner} ${key}`}>
            {name} <b>{reading ? withUnit(reading.formatChange(change), reading.unit) : ''}</b>
          </li>
        );
      })}
    </ul>
  );
};
