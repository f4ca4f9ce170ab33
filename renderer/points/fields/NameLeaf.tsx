import type { FormHost } from './formHost';
import { FormContext } from './formHost';
import type { Field } from './fieldTree';
import { LeafField } from './LeafField';
import type { FieldPath } from './pathValue';

const NAME: Extract<Field, { kind: 'leaf' }> = {
  kind: 'leaf',
  key: 'key',
  required: true,
  input: { kind: 'text' },
  words: { label: 'Name in the file', unit: '', meaning: '' },
  meaning: 'A letter, then letters, digits, “_” or “-”; no blanks.',
};

/** A tolerance goes by the reading that it is of, which is chosen. */
const READING: typeof NAME = { ...NAME, words: { ...NAME.words, label: 'Reading' }, meaning: '' };

/** The field of a name, read and written by a host of its own. */
export const NameLeaf = ({ host, path }: { readonly host: FormHost; readonly path: FieldPath }) => (
  <FormContext value={host}>
    <LeafField field={path[0] === 'tolerances' ? READING : NAME} path={[...path, NAME.key]} />
  </FormContext>
);
