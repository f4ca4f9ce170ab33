import { useEffect, useId, useRef, useState } from 'react';
import { VerdictShape } from '../../look/controls/VerdictShape';
import { useUnits } from '../../look/units';
import { withUnit } from '../../units/shownQuantity';
import { useBench, useWindow } from '../../shell/benchContext';
import type { Triple } from '../../../geometry/index';
import { askPick } from '../../state/actions/viewing';
import { aimedFrom, firstDirection, isPointField, isRodField, namesFor, rodsAt, useForm } from './formHost';
import type { Field } from './fieldTree';
import { choicesAt, emptyWords } from './choicesAt';
import { leafText, parseLeaf } from './leafText';
import { noteAt } from './noteAt';
import { scaleAt } from './scaleAt';
import type { FieldPath } from './pathValue';
import { useTyped } from './useDraft';

type Leaf = Extract<Field, { kind: 'leaf' }>;

export interface LeafFieldProps {
  readonly field: Leaf;
  readonly path: FieldPath;
}

/** One value of the car file: typed and taken on leaving or with Enter. What is refused stays, with the reason under it. */
export const LeafField = ({ field, path }: LeafFieldProps) => {
  const host = useForm();
  const id = useId();
  const { input, words, required } = field;
  const units = useUnits();
  const scale = scaleAt(host, path, words.unit, units);
  const { unit, typedIn } = scale;
  // the unit that the help speaks of stands behind the field once what it is of was chosen
  const meaning = path[0] === 'limits' && words.unit === '' && unit !== '' ? '' : field.meaning;
  const value = host.read(path);
  const text = leafText(input, value, scale);
  const [typed, setTyped] = useTyped(path, text);
  // what was refused before another page was looked at is refused again, so that it is no riddle
  const [refused, setRefused] = useState<string | null>(() =>
    typed === null ? null : faultOfText(parseLeaf(input, typed, typedIn, scale)),
  );
  const stood = useRef(text);
  useEffect(() => {
    if (stood.current !== text) setRefused(null);
    stood.current = text;
  }, [text]);
  const take = (given: string) => {
    if (given === text) {
      setTyped(null);
      setRefused(null);
      return;
    }
    const read = parseLeaf(input, given, typedIn, scale);
    const fault = read.ok ? host.write(path, read.value, words.label, spoken(given, unit)) : read.fault;
    setRefused(fault);
    setTyped(fault === null ? null : given);
  };
  const fault = refused ?? (typed === null ? host.faultAt(path) : null);
  const note = fault === null && typed === null ? noteAt(host, path, units) : null;
  const names = namesFor(host, path);
  const notes = [
    meaning === '' ? null : `${id}-meaning`,
    fault === null ? null : `${id}-fault`,
    note === null ? null : `${id}-note`,
  ].filter((note) => note !== null);
  const common = {
    id,
    'aria-invalid': fault !== null,
    'aria-describedby': notes.length > 0 ? notes.join(' ') : undefined,
    'aria-required': required || undefined,
  };
  const typing = {
    ...common,
    'data-taken': host.isOfCar && typed === null ? '' : undefined,
    value: typed ?? text,
    spellCheck: false,
    autoComplete: 'off',
    onChange: (event: { target: { value: string } }) => setTyped(event.target.value),
    onBlur: () => typed !== null && take(typed),
  };
  const groups = choicesAt(host, path);
  const chosen = input.kind === 'choice' ? input.options.map(String) : input.kind === 'flag' ? ['true', 'false'] : null;
  return (
    <div className={`leaf${fault === null ? '' : ' faulty'}${input.kind === 'number' ? ' short' : ''}`}>
      <label htmlFor={id}>
        {words.label}
        {required && <span aria-hidden="true"> *</span>}
      </label>
      <span className="entry">
        {groups ? (
          <select {...common} value={text} onChange={(event) => take(event.target.value)}>
            {(!required || text === '') && <option value="">–</option>}
            {groups.map(({ heading, options }) => (
              <optgroup key={heading} label={heading}>
                {options.map((option) => (
                  <option key={option.value} value={option.value}>
                    {option.label}
                  </option>
                ))}
              </optgroup>
            ))}
          </select>
        ) : chosen ? (
          <select {...common} value={text} onChange={(event) => take(event.target.value)}>
            {(!required || text === '') && <option value="">{emptyWords(host, path)}</option>}
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
      {note !== null && (
        <span className="leafnote" id={`${id}-note`}>
          <VerdictShape verdict="close" />
          <span>{note}</span>
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

const faultOfText = (read: ReturnType<typeof parseLeaf>): string | null => (read.ok ? null : read.fault);

/** What was typed, with the unit that a bare number was taken in. */
const spoken = (typed: string, unit: string): string => {
  const text = typed.trim();
  return /[\d.]$/.test(text) && !/[…,]/.test(unit) ? withUnit(text, unit) : text;
};

const isSame = (a: Triple, b: Triple): boolean => a.every((part, index) => part === b[index]);

/** Points and directions can be shown in the view instead of typed; the button takes the asking away again. */
const PickButton = ({ field, path, onPicked }: LeafFieldProps & { readonly onPicked: (text: string) => void }) => {
  const { store } = useWindow();
  const host = useForm();
  const asking = useBench((state) => state.viewing.pick?.say ?? null);
  const { axle } = host;
  const { label } = field.words;
  useEffect(() => () => askPick(store, null), [store]);
  if (axle === null) return null;
  const button = (text: string, spoken: string, say: string, ask: () => void) => (
    <button
      type="button"
      className="button"
      aria-label={`${label}: ${spoken}`}
      aria-pressed={asking === say}
      onClick={() => (asking === say ? askPick(store, null) : ask())}
    >
      {text}
    </button>
  );
  const from = aimedFrom(host, path);
  if (from !== null) {
    const say = `${label}: drag the ring; the X, Y or Z key holds it to that axis, Escape gives it up`;
    const write = (direction: Triple) =>
      host.write(
        path,
        direction.map((part) => Number(part.toFixed(6))),
        label,
      );
    /** The line follows the hand; a drag that was given up, or ends where it began, leaves nothing. */
    const ask = (aimed: Triple, isTyped: boolean): void => {
      let last: Triple | null = null;
      const onAimed = (direction: Triple, phase: 'begin' | 'move' | 'end'): void => {
        if (phase === 'begin') {
          last = null;
          return host.drag('begin');
        }
        if (phase === 'move') {
          last = direction;
          write(direction);
          askPick(store, { kind: 'direction', say, from: { axle, side: 'left', point: from }, direction, onAimed });
          return;
        }
        // a drag that is given up ends somewhere else than it went to last
        const isGivenUp = last === null || !isSame(direction, last);
        if (isGivenUp || (isTyped && isSame(direction, aimed))) host.drag('abandon');
        else {
          write(direction);
          host.drag('end');
        }
        ask(direction, isTyped || !isGivenUp);
      };
      askPick(store, { kind: 'direction', say, from: { axle, side: 'left', point: from }, direction: aimed, onAimed });
    };
    return button('Aim', 'aim in the view', say, () => {
      const typed = host.read(path);
      ask(firstDirection(typed), typed !== undefined);
    });
  }
  if (isRodField(path)) {
    const ask = (say: string): void =>
      askPick(store, {
        kind: 'point',
        say,
        onPicked: ({ point }) => {
          const [rod, second] = rodsAt(host.document[axle], point);
          if (rod !== undefined && second === undefined) {
            askPick(store, null);
            onPicked(rod);
          } else ask(`${label}: ${rod === undefined ? 'no rod ends' : 'more than one rod ends'} at ${point}; click another end`);
        },
      });
    const say = `${label}: click one of its ends in the view`;
    return button('Pick', 'pick in the view', say, () => ask(say));
  }
  if (!isPointField(path, host.read(path)) || field.input.kind !== 'text') return null;
  const say = `${label}: click a point in the view`;
  return button('Pick', 'pick in the view', say, () =>
    askPick(store, {
      kind: 'point',
      say,
      onPicked: (picked) => {
        askPick(store, null);
        onPicked(picked.point);
      },
    }),
  );
};
