import type { ShownUnits } from '../../units/unitChoice';
import type { Field } from './fieldTree';
import type { FormHost } from './formHost';
import { leafText } from './leafText';
import type { FieldPath } from './pathValue';
import { scaleAt } from './scaleAt';
import { isFresh, type Draft, type TypedText } from './useDraft';

/** A field of a part that is being made whose text is no value of it, or a part inside of it that was begun and is not made. */
export interface Untaken {
  readonly kind: 'text' | 'part';
  readonly label: string;
}

/**
 * What stands in the fields of a part that is being made and is not in the part, in the order in which they are shown. A field that
 * its kind no longer has does not count: nobody sees it.
 * @param host - of the part that is being made
 */
export const untakenIn = (host: FormHost, part: Field, place: FieldPath, units: ShownUnits): readonly Untaken[] => {
  const begun = (field: Field, path: FieldPath, within: readonly string[]): readonly Untaken[] => {
    const draft = (host.inside?.read('draft', path) ?? null) as Draft | null;
    return draft === null || isFresh(draft) ? [] : [{ kind: 'part', label: [...within, field.words.label].join(', ') }];
  };
  /** @param within - the labels of the parts that it is in, its own last where it is one */
  const walk = (field: Field, path: FieldPath, within: readonly string[]): readonly Untaken[] => {
    const value = host.read(path);
    const each = (fields: readonly Field[]): readonly Untaken[] =>
      fields.flatMap((own) => {
        const holds = own.kind === 'group' || own.kind === 'named' || own.kind === 'list';
        return walk(own, [...path, own.key], holds ? [...within, own.words.label] : within);
      });
    switch (field.kind) {
      case 'leaf': {
        const kept = (host.inside?.read('typed', path) ?? null) as TypedText | null;
        if (kept?.over !== leafText(field.input, value, scaleAt(host, path, field.words.unit, units))) return [];
        return [{ kind: 'text', label: [...within, field.words.label].join(', ') }];
      }
      case 'group':
        return value === undefined && !field.required ? begun(field, path, within.slice(0, -1)) : each(field.fields);
      case 'kinds': {
        const kind = (value as { readonly kind?: unknown } | undefined)?.kind;
        return each(field.kinds.find(({ name }) => name === kind)?.fields ?? []);
      }
      case 'named':
        return [
          ...Object.keys(value ?? {}).flatMap((key) => walk(field.item, [...path, key], [...within, key])),
          ...begun(field.item, path, within),
        ];
      case 'list':
        return [
          ...((value ?? []) as readonly unknown[]).flatMap((_, at) =>
            walk(field.item, [...path, at], [...within, String(at + 1)]),
          ),
          ...begun(field.item, path, within),
        ];
    }
  };
  return walk(part, place, []);
};

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** Why a part is not made, in words; null where nothing of it is left to take. */
export const untakenWords = (untaken: readonly Untaken[]): string | null => {
  const texts = untaken.filter(({ kind }) => kind === 'text').map(({ label }) => label);
  const parts = untaken.filter(({ kind }) => kind === 'part').map(({ label }) => label);
  const told = [
    texts.length === 0
      ? []
      : [
          texts.length === 1
            ? `what stands in ${listed(texts)} is no value of it. Type another, or press Escape there for what it was.`
            : `what stands in ${listed(texts)} are no values of them. Type others, or press Escape there for what it was.`,
        ],
    parts.length === 0 ? [] : [`${listed(parts)} inside of it is begun. Make that first, or cancel it.`],
  ].flat();
  return told.length === 0 ? null : `Not made: ${told.join(' And ')}`;
};
