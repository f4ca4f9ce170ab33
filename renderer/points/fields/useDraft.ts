import { useKept } from '../../shell/keptState';
import type { Field } from './fieldTree';
import { useForm } from './formHost';
import type { FieldPath } from './pathValue';

/** A part that was begun and is not made yet. */
export interface Draft {
  /** empty until it is given, and where the part has none */
  readonly name: string;
  readonly value: unknown;
  /** what was typed into it and not taken, and parts inside of it that are being made, each by what it is and its place */
  readonly inside?: Readonly<Record<string, unknown>>;
}

export const beginDraft = (field: Field): Draft => ({ name: '', value: field.kind === 'leaf' ? undefined : {} });

/** Nothing was typed into it yet. */
export const isFresh = ({ name, value, inside }: Draft): boolean =>
  name === '' &&
  Object.values(inside ?? {}).every((kept) => kept === null) &&
  (value === undefined || Object.keys(value as object).length === 0);

export type SetDraft = (next: Draft | null | ((now: Draft | null) => Draft | null)) => void;

type Update<Value> = (next: Value | null | ((now: Value | null) => Value | null)) => void;

/**
 * Something that is typed or made at a place, null where nothing is. It is there again when one comes back from another page, step
 * or axle; inside of a part that is being made it is kept with that, and goes with it.
 */
const useShelved = <Value>(what: string, path: FieldPath): readonly [Value | null, Update<Value>] => {
  const { inside } = useForm();
  const ofCar = useKept<Value | null>(`points.${what}.${path.join('.')}`, () => null);
  if (!inside) return ofCar;
  const set: Update<Value> = (next) =>
    inside.write(what, path, (now) =>
      typeof next === 'function' ? (next as (now: Value | null) => Value | null)(now as Value | null) : next,
    );
  return [inside.read(what, path) as Value | null, set];
};

/** The part that is being made at a place. */
export const useDraft = (path: FieldPath): readonly [Draft | null, SetDraft] => useShelved<Draft>('draft', path);

/** What is typed into a field and not taken. */
export interface TypedText {
  readonly text: string;
  /** what stood in the field before: once something else does, the text is of another value */
  readonly over: string;
}

/** What is typed into a field and not taken yet. @param over - what stands in it otherwise */
export const useTyped = (path: FieldPath, over: string): readonly [string | null, (text: string | null) => void] => {
  const [kept, keep] = useShelved<TypedText>('typed', path);
  return [kept !== null && kept.over === over ? kept.text : null, (text) => keep(text === null ? null : { text, over })];
};
