import { useEffect, useMemo, useRef, useState } from 'react';
import { formatPath, type AdjusterDocument, type Fault } from '../../../geometry/index';
import { PartDrawing } from '../../adjusters/parts/PartDrawing';
import { useUnits } from '../../look/units';
import { FieldForm, FieldsOf, neededFirst } from './FieldForm';
import { focusPlace } from './focusPlace';
import { FormContext, useForm, type FormHost } from './formHost';
import type { Field } from './fieldTree';
import { faultOf, faultWords, isAt, judgeEdit } from './judgeEdit';
import { NameLeaf } from './NameLeaf';
import { untakenIn, untakenWords } from './untaken';
import { isFresh, type Draft, type SetDraft } from './useDraft';
import { valueAt, withValue, type FieldPath } from './pathValue';
import { faultOfSpelling, mendedName } from '../renaming/renamePart';
import { sampleOfKind } from './sampleParts';
import { TryDraft } from './TryDraft';

interface DraftPartProps {
  readonly field: Field;
  /** where the part will be; its last step is empty where the person names it */
  readonly path: FieldPath;
  readonly draft: Draft;
  readonly onDraft: SetDraft;
}

const STILL_MISSING = 'This is still missing.';

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/**
 * A part that is being made: judged as a whole when it is added, and nothing of it is in the car before that. Whoever shows it
 * keeps what was typed.
 */
export const DraftPart = ({ field, path, draft: { name, value, inside }, onDraft }: DraftPartProps) => {
  const host = useForm();
  const units = useUnits();
  const isNamed = path.at(-1) === '';
  const change = (part: (now: Draft) => Partial<Draft>) => onDraft((now) => (now === null ? null : { ...now, ...part(now) }));
  const setValue = (made: (now: unknown) => unknown) => change((now) => ({ value: made(now.value) }));
  const onDone = () => {
    const goOn = focusPlace(box.current);
    onDraft(null);
    goOn();
  };
  // once it was to be made and could not be, it is judged as it changes: a field that was mended says nothing any more
  const [isJudged, setJudged] = useState(false);
  const [missing, setMissing] = useState<string | null>(null);
  const [attempts, setAttempts] = useState(0);
  const box = useRef<HTMLFieldSetElement>(null);
  const beforeDrag = useRef<unknown>(undefined);
  // one that was there when the page was come back to is not jumped to
  const begins = useRef(isFresh({ name, value, ...(inside && { inside }) }));
  useEffect(() => {
    if (begins.current) box.current?.querySelector<HTMLElement>('input, select')?.focus();
  }, []);
  // what is missing may be out of sight, over the button that was pressed, or in a part that is folded
  useEffect(() => {
    if (attempts === 0) return undefined;
    const faulty = (): HTMLElement | null =>
      ['.faulty :is(input, select, textarea)', ':scope .draft :is(input, select)']
        .map((what) => box.current?.querySelector<HTMLElement>(what) ?? null)
        .find((found) => found !== null) ?? null;
    const first = faulty();
    if (first) return first.focus();
    for (const folded of box.current?.querySelectorAll('details') ?? []) folded.open = true;
    const frame = requestAnimationFrame(() => faulty()?.focus());
    return () => cancelAnimationFrame(frame);
  }, [attempts]);
  const place: FieldPath = isNamed ? [...path.slice(0, -1), name] : path;
  const { document } = host;
  const key = place.at(-1);
  const faults = useMemo<readonly Fault[]>(
    () => (isJudged && key !== undefined && key !== '' ? judgeEdit(withValue(document, [...path.slice(0, -1), key], value)) : []),
    [isJudged, document, path, key, value],
  );
  const inDraft = (at: FieldPath): FieldPath => at.slice(place.length);
  // by its place in the part, whose name may change meanwhile
  const keyIn = (what: string, at: FieldPath): string => [what, ...inDraft(at)].join('.');
  const draft: FormHost = {
    ...host,
    document: host.document,
    isOfCar: false,
    read: (at) =>
      at.length >= place.length && place.every((step, i) => step === at[i]) ? valueAt(value, inDraft(at)) : host.read(at),
    write: (at, given) => {
      setValue((before) => withValue(before, inDraft(at), given));
      return null;
    },
    faultAt: (at) => {
      const own = faults.filter((fault) => fault.path !== null && isAt(fault.path, at));
      if (own.length === 0) return null;
      return valueAt(value, inDraft(at)) === undefined ? STILL_MISSING : faultOf(own, at);
    },
    inside: {
      read: (what, at) => inside?.[keyIn(what, at)] ?? null,
      write: (what, at, next) =>
        change((now) => ({ inside: { ...now.inside, [keyIn(what, at)]: next(now.inside?.[keyIn(what, at)] ?? null) } })),
    },
    drag: (phase) =>
      setValue((now) => {
        if (phase === 'begin') beforeDrag.current = now;
        return phase === 'abandon' ? beforeDrag.current : now;
      }),
  };
  const naming: FormHost = {
    ...draft,
    read: () => name,
    faultAt: () => missing,
    write: (_at, given) => {
      const typed = String(given ?? '').trim();
      change(() => ({ name: typed }));
      setMissing(typed === '' ? null : faultOfSpelling(typed));
      return null;
    },
  };
  const untaken = untakenIn(draft, field, place, units);
  const refuse = (ofName: string | null) => {
    setMissing(ofName);
    setAttempts((before) => before + 1);
  };
  const make = () => {
    const parent = host.read(place.slice(0, -1));
    if (isNamed && (name === '' || Object.hasOwn((parent ?? {}) as object, name)))
      return refuse(name === '' ? 'Give it a name.' : `There is a ${name} already.`);
    const spelling = isNamed ? faultOfSpelling(name) : null;
    if (spelling !== null) return refuse(spelling);
    // the part has what was last taken there, which is not what is read in the field
    if (untaken.length > 0 || judgeEdit(withValue(host.document, place, value)).length > 0) {
      setJudged(true);
      return refuse(null);
    }
    host.write(place, value, `Add ${lower(field.words.label)}${isNamed ? ` ${name}` : ''}`);
    onDone();
  };
  const { label } = field.words;
  // a fault of the part itself has no field that could say it
  const whole = formatPath(place);
  const elsewhere = faults.filter(({ path: at }) => at === null || at === whole || !isAt(at, place) || field.kind === 'leaf');
  const leftOut = attempts > 0 ? untakenWords(untaken) : null;
  const mended = missing === null || name === '' ? null : mendedName(name);
  return (
    <FormContext value={draft}>
      <fieldset ref={box} className="group draft">
        <legend>New {lower(label)}</legend>
        <div className="leaves">
          {isNamed && <NameLeaf host={naming} path={place} />}
          {mended !== null && mended !== name && (
            <p className="mendedname">
              <button type="button" className="button" onClick={() => naming.write(place, mended, '')}>
                Use {mended}
              </button>
            </p>
          )}
          {field.kind === 'kinds' ? (
            <NewKind
              field={field}
              path={place}
              value={value as Partial<AdjusterDocument>}
              onKind={(made) => setValue(() => made)}
            />
          ) : field.kind === 'group' ? (
            <FieldsOf fields={field.fields} path={place} />
          ) : (
            <FieldForm field={field} path={place} />
          )}
        </div>
        {elsewhere.length > 0 && (
          <div className="leaffault" role="alert">
            {elsewhere.map((fault, index) => (
              <p key={index}>{faultWords(fault, place)}</p>
            ))}
          </div>
        )}
        {field.kind === 'kinds' && host.axle !== null && (
          <TryDraft document={host.document} axle={host.axle} name={name} value={value} />
        )}
        <p className="draftend">
          <button type="button" className="button" onClick={onDone}>
            Cancel
          </button>
          <button type="button" className="button primary" onClick={make}>
            Make it
          </button>
          <span className="quiet">one undo step</span>
        </p>
        {leftOut !== null && (
          <p className="leaffault" role="alert">
            {leftOut}
          </p>
        )}
      </fieldset>
    </FormContext>
  );
};

interface NewKindProps {
  readonly field: Extract<Field, { kind: 'kinds' }>;
  readonly path: FieldPath;
  readonly value: Partial<AdjusterDocument>;
  readonly onKind: (value: unknown) => void;
}

/** What kind of part, by its drawing; then the fields of that kind. */
const NewKind = ({ field, path, value, onKind }: NewKindProps) => (
  <>
    <div className="kinds" role="group" aria-label="What kind of part">
      {field.kinds.map(({ name }) => {
        const sample = sampleOfKind(name as AdjusterDocument['kind']);
        return (
          <button
            key={name}
            type="button"
            aria-pressed={value.kind === name}
            onClick={() => onKind({ kind: name, ...sample.start })}
          >
            <PartDrawing adjuster={sample.drawn} value={0} mm={1} pivotToBolt={40} size={44} className="mini" />
            <span>
              <b>{sample.title}</b>
              <span className="quiet">{sample.does}</span>
            </span>
          </button>
        );
      })}
    </div>
    {value.kind !== undefined && (
      <FieldsOf fields={neededFirst(field.kinds.find(({ name }) => name === value.kind)?.fields ?? [])} path={path} />
    )}
  </>
);
