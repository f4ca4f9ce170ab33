import { useState } from 'react';
import type { AxleName, CarDocument, LoadCase, SideName } from '../../../geometry/index';
import { NumberField } from '../../look/controls/NumberField';
import { Segments } from '../../look/controls/Segments';
import type { FormHost } from '../../points/fields/formHost';
import {
  areWheelsAlike,
  copyName,
  freeCaseName,
  renamedCase,
  withAlike,
  withCopy,
  withDriven,
  withForce,
  withForces,
  withG,
  withNewCase,
  withNotes,
  withoutCase,
  type ForceKey,
} from './loadCaseEdits';

type Cases = NonNullable<CarDocument['loads']>;

interface CaseEditorProps {
  readonly host: FormHost;
  /** the cases of the file, or what they would be */
  readonly cases: Cases;
  /** the chosen case as it was worked out */
  readonly now: LoadCase;
  readonly axle: AxleName;
  readonly side: SideName;
  /** another case is the chosen one, or this one is called so now */
  readonly onName: (name: string) => void;
}

const FORCES: readonly { readonly key: ForceKey; readonly label: string; readonly unit: string }[] = [
  { key: 'Fx', label: 'Fx, forward', unit: 'N' },
  { key: 'Fy', label: 'Fy, to the left', unit: 'N' },
  { key: 'Fz', label: 'Fz, up', unit: 'N' },
  { key: 'Mz', label: 'Mz, seen from above counter-clockwise', unit: 'N·m' },
];
/** Far past anything a wheel carries, so that only a slip of the hand is refused [N]. */
const MOST_FORCE = 1e6;
const MOST_G = 10;
const G_STEP = 0.1;
const FORCE_STEP = 100;

/** A text that is taken on leaving or with Enter; Escape gives it up. */
const TextBox = ({
  label,
  value,
  className,
  onTake,
}: {
  readonly label: string;
  readonly value: string;
  readonly className: string;
  readonly onTake: (text: string) => void;
}) => {
  const [typed, setTyped] = useState<string | null>(null);
  const take = () => {
    if (typed !== null && typed.trim() !== value) onTake(typed.trim());
    setTyped(null);
  };
  return (
    <label className={className}>
      {label}
      <input
        type="text"
        value={typed ?? value}
        data-draft={typed === null ? undefined : ''}
        spellCheck={false}
        autoComplete="off"
        onChange={(event) => setTyped(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key !== 'Escape' || typed === null) return;
          event.stopPropagation();
          setTyped(null);
        }}
      />
    </label>
  );
};

/** The chosen case: its name, and either accelerations or what stands on one wheel. Every change is one undo step of the car. */
export const CaseEditor = ({ host, cases, now, axle, side, onName }: CaseEditorProps) => {
  const [fault, setFault] = useState<string | null>(null);
  const { name, g } = now;
  const own = cases[name];
  const write = (next: Cases | undefined, what: string): boolean => {
    const refused = host.write(['loads'], next, what);
    setFault(refused);
    return refused === null;
  };
  const what = `Load case ${name}`;
  const rename = (to: string) => {
    if (to === '') return setFault('A case needs a name.');
    if (Object.hasOwn(cases, to)) return setFault(`There is a case ${to} already: choose another name.`);
    if (write(renamedCase(cases, name, to), `Rename ${name}`)) onName(to);
  };
  const add = (called: string, make: (all: Cases, to: string) => Cases) => {
    if (write(make(cases, called), `Add load case ${called}`)) onName(called);
  };
  const wheel = now[axle]?.[side];
  const isAlike = areWheelsAlike(cases, name, axle);
  return (
    <div className="caseeditor" role="group" aria-label={`Load case ${name}`}>
      <div className="caserow">
        <TextBox label="Case" value={name} className="casename" onTake={rename} />
        <Segments
          label="Given by"
          options={[
            { name: 'g', label: 'By g' },
            { name: 'forces', label: 'By wheel' },
          ]}
          chosen={g === null ? 'forces' : 'g'}
          onChoose={(by) => write(by === 'g' ? withG(cases, name, g ?? [0, 0]) : withForces(cases, now), what)}
        />
        <span className="spread" />
        <button type="button" className="button" onClick={() => add(freeCaseName(cases), withNewCase)}>
          New
        </button>
        <button type="button" className="button" onClick={() => add(copyName(cases, name), (all, to) => withCopy(all, name, to))}>
          Copy
        </button>
        <button type="button" className="button" onClick={() => write(withoutCase(cases, name), `Remove ${name}`)}>
          Remove
        </button>
      </div>
      {g !== null ? (
        <div className="caserow">
          {(['To the left', 'Forward'] as const).map((label, index) => (
            <span key={label} className="casefield">
              <span aria-hidden="true">{label}</span>
              <NumberField
                label={`${label}, g`}
                value={g[index] ?? 0}
                unit="g"
                min={-MOST_G}
                max={MOST_G}
                decimals={2}
                onSet={(value) => write(withG(cases, name, index === 0 ? [value, g[1]] : [g[0], value]), what)}
                onStep={(steps) => {
                  const value = Math.round(((g[index] ?? 0) + steps * G_STEP) * 1000) / 1000;
                  write(withG(cases, name, index === 0 ? [value, g[1]] : [g[0], value]), what);
                }}
                onHome={() => write(withG(cases, name, index === 0 ? [0, g[1]] : [g[0], 0]), what)}
              />
            </span>
          ))}
          <span className="quiet casenote">− to the right, − braking</span>
        </div>
      ) : (
        <>
          <div className="caserow">
            {FORCES.map(({ key, label, unit }) => {
              const value = (wheel?.[key] ?? 0) / (key === 'Mz' ? 1000 : 1);
              const set = (to: number) => write(withForce(cases, name, axle, side, key, to), what);
              return (
                <span key={key} className="casefield">
                  <span title={label} aria-hidden="true">
                    {key}
                  </span>
                  <NumberField
                    label={`${label}, ${axle} ${side}, ${unit}`}
                    value={value}
                    unit={unit}
                    measures={key === 'Mz' ? 'moment' : 'force'}
                    min={-MOST_FORCE}
                    max={MOST_FORCE}
                    decimals={1}
                    onSet={set}
                    onStep={(steps) => set(value + steps * FORCE_STEP)}
                    onHome={() => set(0)}
                  />
                </span>
              );
            })}
          </div>
          <div className="caserow">
            <label className="tick">
              <input
                type="checkbox"
                checked={wheel?.driven ?? false}
                onChange={(event) => write(withDriven(cases, name, axle, side, event.target.checked), what)}
              />
              Fx through a shaft
            </label>
            <label className="tick">
              <input
                type="checkbox"
                checked={isAlike}
                onChange={(event) => write(withAlike(cases, name, axle, side, event.target.checked), what)}
              />
              other wheel alike, mirrored
            </label>
          </div>
        </>
      )}
      <TextBox
        label="Notes"
        value={own?.notes ?? ''}
        className="casenotes"
        onTake={(notes) => write(withNotes(cases, name, notes), what)}
      />
      {fault !== null && (
        <p className="leaffault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
};
