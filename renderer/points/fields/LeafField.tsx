import { useEffect, useId, useState } from 'react';
import { useUnits } from '../../look/units';
import { useWindow } from '../../shell/benchContext';
import { askPick } from '../../state/actions/viewing';
import { aimedFrom, firstDirection, isPointField, namesFor, useForm } from './formHost';
import type { Field } from './fieldTree';
import { fieldScale } from './fieldScale';
import { leafText, parseLeaf } from './leafText';
import type { FieldPath } from './pathValue';

type Leaf = Extract<Field, { kind: 'leaf' }>;

export interface LeafFieldProps {
  readonly field: Leaf;
  readonly path: FieldPath;
}

/** One value of the car file: typed and taken on leaving or with Enter. What is refused stays, with the reason under it. */
export const LeafField = ({ field, path }: LeafFieldProps) => {
  const host = useForm();
  const id = useId();
  const { input, words, meaning, required } = field;
  const units = useUnits();
  const { factor, unit, typedIn } = fieldScale(words.unit, host.mm, units);
  const value = host.read(path);
  const text = leafText(input, value, factor);
  const [typed, setTyped] = useState<string | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  useEffect(() => {
    setTyped(null);
    setRefused(null);
  }, [text]);
  const take = (given: string) => {
    if (given === text) {
      setTyped(null);
      setRefused(null);
      return;
    }
    const read = parseLeaf(input, given, typedIn, factor);
    const fault = read.ok ? host.write(path, read.value, words.label) : read.fault;
    setRefused(fault);
    setTyped(fault === null ? null : given);
  };
  const fault = refused ?? (typed === null ? host.faultAt(path) : null);
  const names = namesFor(host, path);
  const notes = [meaning === '' ? null : `${id}-meaning`, fault === null ? null : `${id}-fault`].filter((note) => note !== null);
  const common = {
    id,
    'aria-invalid': fault !== null,
    'aria-describedby': notes.length > 0 ? notes.join(' ') : undefined,
    'aria-required': required || undefined,
  };
  const typing = {
    ...common,
    value: typed ?? text,
    spellCheck: false,
    autoComplete: 'off',
    onChange: (event: { target: { value: string } }) => setTyped(event.target.value),
    onBlur: () => typed !== null && take(typed),
  };
  const chosen = input.kind === 'choice' ? input.options.map(String) : input.kind === 'flag' ? ['true', 'false'] : null;
  return (
    <div className={`leaf${fault === null ? '' : ' faulty'}${input.kind === 'number' ? ' short' : ''}`}>
      <label htmlFor={id}>
        {words.label}
        {required && <span aria-hidden="true"> *</span>}
      </label>
      <span className="entry">
        {chosen ? (
          <select {...common} value={text} onChange={(event) => take(event.target.value)}>
            {(!required || text === '') && <option value="">–</option>}
            {chosen.map((option) => (
              <option key={option} value={option}>
                {input.kind === 'flag' ? (option === 'true' ? 'yes' : 'no') : option}
              </option>
            ))}
          </select>
        ) : field.key === 'notes' ? (
          <textarea {...typing} rows={2} />
        ) : (
          <input
            {...typing}
            type="text"
            inputMode={input.kind === 'number' ? 'decimal' : undefined}
            list={names.length > 0 ? `${id}-names` : undefined}
            onKeyDown={(event) => {
              if (event.key === 'Enter' && typed !== null) {
                event.preventDefault();
                take(typed);
              } else if (event.key === 'Escape' && typed !== null) {
                event.stopPropagation();
                setTyped(null);
                setRefused(null);
              }
            }}
          />
        )}
        {names.length > 0 && (
          <datalist id={`${id}-names`}>
            {names.map((name) => (
              <option key={name} value={name} />
            ))}
          </datalist>
        )}
        {unit !== '' && <span className="unit">{unit}</span>}
        <PickButton field={field} path={path} onPicked={take} />
      </span>
      {meaning !== '' && (
        <span className="meaning" id={`${id}-meaning`}>
          {meaning}
        </span>
      )}
      {fault !== null && (
        <span className="leaffault" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
    </div>
  );
};

/** Points and directions can be shown in the view instead of typed. */
const PickButton = ({ field, path, onPicked }: LeafFieldProps & { readonly onPicked: (text: string) => void }) => {
  const { store } = useWindow();
  const host = useForm();
  const { axle } = host;
  const label = field.words.label;
  useEffect(() => () => askPick(store, null), [store]);
  if (axle === null) return null;
  const from = aimedFrom(host, path);
  if (from !== null) {
    const aim = () =>
      askPick(store, {
        kind: 'direction',
        say: `${label}: drag the ring; Shift holds it to X, Y or Z`,
        from: { axle, side: 'left', point: from },
        direction: firstDirection(host.read(path)),
        onAimed: (direction, phase) => {
          if (phase === 'begin') host.drag('begin');
          host.write(
            path,
            direction.map((part) => Number(part.toFixed(6))),
            label,
          );
          if (phase === 'end') host.drag('end');
        },
      });
    return (
      <button type="button" className="button" aria-label={`${label}: aim in the view`} onClick={aim}>
        Aim
      </button>
    );
  }
  if (!isPointField(path, host.read(path)) || field.input.kind !== 'text') return null;
  const pick = () =>
    askPick(store, {
      kind: 'point',
      say: `${label}: click a point in the view`,
      onPicked: (picked) => {
        askPick(store, null);
        onPicked(picked.point);
      },
    });
  return (
    <button type="button" className="button" aria-label={`${label}: pick in the view`} onClick={pick}>
      Pick
    </button>
  );
};
