import { useState, type ReactNode } from 'react';
import { findReading } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import { DraftPart } from './DraftPart';
import { FormContext, useForm } from './formHost';
import type { Field } from './fieldTree';
import { LeafField } from './LeafField';
import { NameLeaf } from './NameLeaf';
import type { FieldPath } from './pathValue';
import { beginDraft, useDraft } from './useDraft';

export interface FieldFormProps {
  readonly field: Field;
  readonly path: FieldPath;
  /** drawn above the fields of a part that the person named */
  readonly above?: (path: FieldPath) => ReactNode;
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** The fields of an object, those of a kind of part among them. */
export const FieldsOf = ({ fields, path }: { readonly fields: readonly Field[]; readonly path: FieldPath }) => (
  <>
    {fields.map((field) => (
      <FieldForm key={field.key} field={field} path={[...path, field.key]} />
    ))}
  </>
);

/** What a part cannot be without, then what may be left out; each in the order of the file. */
export const neededFirst = (fields: readonly Field[]): readonly Field[] => [
  ...fields.filter(({ required }) => required),
  ...fields.filter(({ required }) => !required),
];

/** A part of the car file: a value, a group of them, or any number of named or listed ones. */
export const FieldForm = ({ field, path, above }: FieldFormProps) => {
  const host = useForm();
  switch (field.kind) {
    case 'leaf':
      return field.key === 'layout' && host.isOfCar ? (
        <Settled field={field} path={path} />
      ) : (
        <LeafField field={field} path={path} />
      );
    case 'group':
      return host.read(path) === undefined && !field.required ? (
        <Absent field={field} path={path} />
      ) : (
        <Group field={field} path={path}>
          <FieldsOf fields={field.fields} path={path} />
        </Group>
      );
    case 'kinds':
      return <KindFields field={field} path={path} />;
    case 'named':
    case 'list':
      return <Several field={field} path={path} {...(above ? { above } : {})} />;
  }
};

/** A value that the car was begun with and that nothing but a new car has otherwise. */
const Settled = ({ field, path }: FieldFormProps) => {
  const host = useForm();
  return (
    <div className="leaf">
      <span>{field.words.label}</span>
      <span className="entry">
        <b>{String(host.read(path))}</b>
      </span>
      <span className="meaning">{field.meaning}</span>
    </div>
  );
};

const KindFields = ({ field, path }: { readonly field: Extract<Field, { kind: 'kinds' }>; readonly path: FieldPath }) => {
  const host = useForm();
  const kind = host.read([...path, 'kind']);
  // a solid that is being made is told what it is first; of one in the car the numbers of its kind are changed
  if (path.at(-1) === 'shape') return <ShapeFields field={field} path={path} kind={kind} />;
  return <FieldsOf fields={neededFirst(field.kinds.find(({ name }) => name === kind)?.fields ?? [])} path={path} />;
};

/** The kind of a solid, then its numbers; another kind begins empty. */
const ShapeFields = ({
  field,
  path,
  kind,
}: {
  readonly field: Extract<Field, { kind: 'kinds' }>;
  readonly path: FieldPath;
  readonly kind: unknown;
}) => {
  const host = useForm();
  const options = field.kinds.map(({ name }) => name);
  const choice: Extract<Field, { kind: 'leaf' }> = {
    kind: 'leaf',
    key: 'kind',
    required: true,
    input: { kind: 'choice', options },
    words: field.words,
    meaning: '',
  };
  const fields = neededFirst(field.kinds.find(({ name }) => name === kind)?.fields ?? []);
  return (
    <>
      {host.isOfCar ? (
        <p>
          {field.words.label}: <b>{String(kind)}</b>
        </p>
      ) : (
        <FormContext
          value={{
            ...host,
            write: (at, value, what) => host.write(at.slice(0, -1), value === undefined ? undefined : { kind: value }, what),
          }}
        >
          <LeafField field={choice} path={[...path, 'kind']} />
        </FormContext>
      )}
      <FieldsOf fields={fields} path={path} />
    </>
  );
};

/** What a part says when it would not go. */
const Refusal = ({ text }: { readonly text: string | null }) =>
  text === null ? null : (
    <p className="leaffault" role="alert">
      {text}
    </p>
  );

const Group = ({ field, path, children }: FieldFormProps & { readonly children: ReactNode }) => {
  const host = useForm();
  const [refused, setRefused] = useState<string | null>(null);
  const { label } = field.words;
  return (
    <fieldset className="group">
      <legend>{label}</legend>
      {!field.required && (
        <button
          type="button"
          className="button away"
          onClick={() => setRefused(host.write(path, undefined, `Remove ${lower(label)}`))}
        >
          Remove {lower(label)}
        </button>
      )}
      <Refusal text={refused ?? host.faultAt(path)} />
      <div className="leaves">{children}</div>
    </fieldset>
  );
};

const Absent = ({ field, path }: FieldFormProps) => {
  const [draft, setDraft] = useDraft(path);
  if (draft) return <DraftPart field={field} path={path} draft={draft} onDraft={setDraft} />;
  return (
    <p className="absent">
      <button type="button" className="button" onClick={() => setDraft(beginDraft(field))}>
        Add {lower(field.words.label)}
      </button>{' '}
      <span className="quiet">not in the file</span>
    </p>
  );
};

type SeveralField = Extract<Field, { kind: 'named' | 'list' }>;

const entriesIn = (field: SeveralField, value: unknown): readonly (string | number)[] =>
  field.kind === 'list' ? ((value as readonly unknown[] | undefined) ?? []).map((_, index) => index) : Object.keys(value ?? {});

const Several = ({ field, path, above }: FieldFormProps & { readonly field: SeveralField }) => {
  const host = useForm();
  const [draft, setDraft] = useDraft(path);
  const keys = entriesIn(field, host.read(path));
  const one = lower(field.item.words.label || field.words.label);
  return (
    <fieldset className="group">
      <legend>{field.words.label}</legend>
      {keys.length === 0 && draft === null && <p className="quiet">None in the file.</p>}
      {/* by its place: a part that gets another name stays open, with the cursor in it */}
      {keys.map((key, index) => (
        <Entry key={index} field={field} path={[...path, key]} {...(above ? { above } : {})} />
      ))}
      {draft ? (
        <DraftPart
          field={field.item}
          path={[...path, field.kind === 'list' ? keys.length : '']}
          draft={draft}
          onDraft={setDraft}
        />
      ) : (
        <button type="button" className="button" onClick={() => setDraft(beginDraft(field.item))}>
          Add {one}
        </button>
      )}
    </fieldset>
  );
};

const titleOf = (host: ReturnType<typeof useForm>, path: FieldPath): string => {
  const key = path.at(-1);
  const value = host.read(path) as Readonly<Record<string, unknown>> | undefined;
  const reading = findReading(String(path[0] === 'tolerances' ? key : value?.['reading']))?.name;
  const own = value?.['label'] ?? value?.['name'] ?? reading ?? value?.['reading'] ?? value?.['setting'];
  if (typeof key === 'number') return typeof own === 'string' && own !== '' ? own : String(key + 1);
  return typeof own === 'string' && own !== '' ? `${own}` : nameOfKey(String(key));
};

/** The name in the file where the title is another; of a limit the axle and the side that it is of. */
const besideTitle = (host: ReturnType<typeof useForm>, path: FieldPath, title: string): string => {
  const key = path.at(-1);
  if (typeof key === 'string') return title === key ? '' : key;
  if (path[0] !== 'limits') return '';
  const limit = host.read(path) as Readonly<Record<string, unknown>> | undefined;
  return [limit?.['axle'], limit?.['side']].filter((part) => typeof part === 'string').join(', ');
};

const Entry = ({ field, path, above }: FieldFormProps & { readonly field: SeveralField }) => {
  const host = useForm();
  const [refused, setRefused] = useState<string | null>(null);
  const [open, setOpen] = useState(false);
  const title = titleOf(host, path);
  const { item } = field;
  const remove = () => {
    const fault = host.write(path, undefined, `Remove ${title}`);
    setRefused(fault);
    // the next part takes this place, and begins closed
    if (fault === null) setOpen(false);
  };
  if (item.kind === 'leaf')
    return (
      <div className="entryrow">
        {field.kind === 'named' && <KeyField path={path} />}
        <LeafField field={{ ...item, words: { ...item.words, label: String(path.at(-1)) } }} path={path} />
        <button type="button" className="button" aria-label={`Remove ${title}`} onClick={remove}>
          Remove
        </button>
        <Refusal text={refused} />
      </div>
    );
  return (
    <details className="part" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <b>{title}</b> <span className="quiet">{besideTitle(host, path, title)}</span>
      </summary>
      {open && (
        <>
          {above?.(path)}
          <div className="leaves">
            {field.kind === 'named' && <KeyField path={path} />}
            {item.kind === 'group' ? <FieldsOf fields={item.fields} path={path} /> : <FieldForm field={item} path={path} />}
          </div>
          <button type="button" className="button" onClick={remove}>
            Remove {lower(title)}
          </button>
          <Refusal text={refused} />
        </>
      )}
    </details>
  );
};

/** The name that a part goes by in the file; changed here, it is changed wherever the file names the part. */
const KeyField = ({ path }: { readonly path: FieldPath }) => {
  const host = useForm();
  const renamed = {
    ...host,
    read: () => String(path.at(-1)),
    faultAt: () => null,
    write: (_path: FieldPath, value: unknown): string | null => host.rename(path, String(value ?? '').trim()),
  };
  return <NameLeaf host={renamed} path={path} />;
};
