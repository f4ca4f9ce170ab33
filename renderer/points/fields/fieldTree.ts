import { carFileSchema } from '../../../geometry/index';
import { fieldWords, type FieldWords } from './fieldWords';

/** How a single value is typed. */
export type LeafInput =
  | { readonly kind: 'number' }
  | { readonly kind: 'text' }
  | { readonly kind: 'flag' }
  | { readonly kind: 'choice'; readonly options: readonly (string | number)[] }
  /** so many numbers, as a point or a range */
  | { readonly kind: 'numbers'; readonly count: number }
  /** so many names, as the two ends of a rod */
  | { readonly kind: 'names'; readonly count: number }
  | { readonly kind: 'numberList' }
  /** any number of names */
  | { readonly kind: 'nameList' }
  /** so many directions, as the axes of a box */
  | { readonly kind: 'directions'; readonly count: number }
  | { readonly kind: 'pairList' }
  /** a number, several numbers or a word: what is typed says which */
  | { readonly kind: 'free' };

interface FieldBase {
  /** key in the object that holds it; empty for what is named or listed */
  readonly key: string;
  readonly required: boolean;
  readonly words: FieldWords;
  readonly meaning: string;
}
/** A part of the car file as it is edited. */
export type Field =
  | (FieldBase & { readonly kind: 'leaf'; readonly input: LeafInput })
  | (FieldBase & { readonly kind: 'group'; readonly fields: readonly Field[] })
  | (FieldBase & { readonly kind: 'named'; readonly item: Field })
  | (FieldBase & { readonly kind: 'list'; readonly item: Field })
  | (FieldBase & {
      readonly kind: 'kinds';
      readonly kinds: readonly { readonly name: string; readonly fields: readonly Field[] }[];
    });

interface Schema {
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Schema>>;
  readonly type?: string;
  readonly const?: string | number;
  readonly enum?: readonly (string | number)[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Schema | boolean;
  readonly items?: Schema | boolean;
  readonly prefixItems?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
}

/**
 * Fields that are not edited in these forms, with the reason. `front` and `rear` have the same fields, so the front one stands
 * for both.
 */
export const ELSEWHERE: Readonly<Record<string, string>> = {
  $schema: 'kept as it is: it is for editors of text',
  format: 'always the same',
  version: 'written by the program',
  setups: 'made and changed on the bench',
  'parts.*.shape.<mesh>.data': 'a mesh in the car file itself, which nobody types',
  loads: 'load cases of the links, which are a page of their own',
  questions: 'questions of the studies, which are a page of their own',
  measurements: 'measured curves, which belong to the fit',
  uncertainty: 'standard uncertainties, which belong to survey and fit',
  survey: 'observations of the survey',
  'axle.points': 'the table of points',
  'axle.right.points': 'the table of points',
};

/** What is edited on the page of fit-up. */
const FIT_UP: readonly string[] = ['parts', 'joints', 'spans'];

const MISSING: FieldWords = { label: '', unit: '', meaning: '' };

const leafOf = (schema: Schema, deref: (schema: Schema) => Schema): LeafInput => {
  const { type, prefixItems, items } = schema;
  if (schema.const !== undefined) return { kind: 'choice', options: [schema.const] };
  if (schema.enum) return { kind: 'choice', options: schema.enum };
  if (schema.anyOf) {
    const parts = schema.anyOf.map(deref);
    const constants = parts.map((part) => part.const).filter((value) => value !== undefined);
    return constants.length === parts.length ? { kind: 'choice', options: constants } : { kind: 'free' };
  }
  if (prefixItems) {
    const first = deref(prefixItems[0] ?? {});
    if (first.prefixItems) return { kind: 'directions', count: prefixItems.length };
    const isNumber = first.type === 'number';
    return isNumber ? { kind: 'numbers', count: prefixItems.length } : { kind: 'names', count: prefixItems.length };
  }
  if (type === 'array') {
    const item = deref(items as Schema);
    if (item.type === 'string') return { kind: 'nameList' };
    return item.prefixItems ? { kind: 'pairList' } : { kind: 'numberList' };
  }
  if (type === 'boolean') return { kind: 'flag' };
  return type === 'number' || type === 'integer' ? { kind: 'number' } : { kind: 'text' };
};

/** The parts of the car file that are edited in forms, made from its published form and the table of words. */
export const buildFieldTree = (root: Schema = carFileSchema() as Schema) => {
  const deref = (schema: Schema): Schema => {
    const name = schema.$ref?.split('/').at(-1);
    const found = name === undefined ? undefined : root.$defs?.[name];
    return found ? { ...found, ...(schema.description === undefined ? {} : { description: schema.description }) } : schema;
  };

  const fieldsOf = (schema: Schema, pattern: readonly string[]): Field[] =>
    Object.entries(schema.properties ?? {})
      .filter(([key]) => !(pattern.concat(key).join('.') in ELSEWHERE))
      .map(([key, property]) => fieldOf(property, key, pattern.concat(key), schema.required?.includes(key) ?? false));

  const fieldOf = (given: Schema, key: string, pattern: readonly string[], required: boolean): Field => {
    const schema = deref(given);
    const words = fieldWords(pattern) ?? MISSING;
    const base: FieldBase = { key, required, words, meaning: words.meaning || ownDescription(given, root) };
    if (schema.oneOf) {
      const kinds = schema.oneOf.map(deref).map((kind) => {
        const name = String(deref(kind.properties?.['kind'] ?? {}).const);
        return { name, fields: fieldsOf(kind, pattern.concat(`<${name}>`)).filter((field) => field.key !== 'kind') };
      });
      return { ...base, kind: 'kinds', kinds };
    }
    if (schema.properties) return { ...base, kind: 'group', fields: fieldsOf(schema, pattern) };
    if (typeof schema.additionalProperties === 'object')
      return { ...base, kind: 'named', item: fieldOf(schema.additionalProperties, '', pattern.concat('*'), true) };
    if (schema.type === 'array' && typeof schema.items === 'object' && deref(schema.items).properties)
      return { ...base, kind: 'list', item: fieldOf(schema.items, '', pattern.concat('[]'), true) };
    return { ...base, kind: 'leaf', input: leafOf(schema, deref) };
  };

  const top = fieldsOf(root, []);
  const axle = fieldsOf(deref(root.properties?.['front'] ?? {}), ['axle']);
  const isCars = ({ key }: Field): boolean => key !== 'front' && key !== 'rear' && !FIT_UP.includes(key);
  return { car: top.filter(isCars), axle, fitUp: top.filter(({ key }) => FIT_UP.includes(key)) };
};

/** What the form says of this field itself; what it says of every point or name is known. */
const ownDescription = (given: Schema, root: Schema): string => {
  const general = given.$ref === undefined ? undefined : root.$defs?.[given.$ref.split('/').at(-1) ?? '']?.description;
  const { description = '' } = given;
  const known = ['point', 'name', 'title', 'direction'].map((name) => root.$defs?.[name]?.description);
  // the unit alone stands behind the field, as it was chosen
  const isUnit = /^(N\/mm²?|kg)\.$/.test(description);
  return description === general || known.includes(description) || isUnit ? '' : description;
};
