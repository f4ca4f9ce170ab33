import type * as z from 'zod/mini';
import { isObject } from '../place';

interface Definition {
  readonly type: string;
  readonly innerType?: z.core.$ZodType;
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly element?: z.core.$ZodType;
  readonly valueType?: z.core.$ZodType;
  readonly items?: readonly z.core.$ZodType[];
  readonly options?: readonly z.core.$ZodType[];
  /** the key by which the options of a union tell themselves apart */
  readonly discriminator?: string;
}

const definitionOf = (schema: z.core.$ZodType): Definition => schema._zod.def as unknown as Definition;

/** Goes one step into a schema; a union may lead to several. */
function stepInto(schema: z.core.$ZodType, step: string | number): readonly z.core.$ZodType[] {
  const definition = definitionOf(schema);
  switch (definition.type) {
    case 'object': {
      const next = definition.shape?.[step];
      return next === undefined ? [] : [next];
    }
    case 'record':
      return definition.valueType === undefined ? [] : [definition.valueType];
    case 'array':
      return definition.element === undefined ? [] : [definition.element];
    case 'tuple': {
      const next = typeof step === 'number' ? definition.items?.[step] : undefined;
      return next === undefined ? [] : [next];
    }
    default:
      return [];
  }
}

/** Takes off "optional" and "null allowed", and opens unions; of kinds, the one that the value names. */
function open(schema: z.core.$ZodType, value: unknown): readonly z.core.$ZodType[] {
  const definition = definitionOf(schema);
  if (definition.innerType !== undefined) return open(definition.innerType, value);
  if (definition.options === undefined) return [schema];
  const all = definition.options.flatMap((option) => open(option, value));
  const { discriminator = 'kind' } = definition;
  const kind = isObject(value) ? value[discriminator] : undefined;
  const named = all.filter((option) => kindsOf(option, discriminator).includes(kind));
  return named.length > 0 ? named : all;
}

/** What may stand at the key by which a union tells its options apart; undefined where it may be left out. */
function kindsOf(schema: z.core.$ZodType, discriminator: string): readonly unknown[] {
  const kind = definitionOf(schema).shape?.[discriminator];
  return kind === undefined ? [undefined] : [...(kind._zod.values ?? [])];
}

/** The keys that an object at a path of the document may have: what an unknown key is held against. */
export function knownKeysAt(schema: z.core.$ZodType, document: unknown, path: readonly PropertyKey[]): readonly string[] {
  let value = document;
  let schemas = open(schema, value);
  for (const step of path) {
    if (typeof step === 'symbol') return [];
    const container = value as Readonly<Record<string | number, unknown>> | null | undefined;
    value = container?.[step];
    schemas = schemas.flatMap((candidate) => stepInto(candidate, step)).flatMap((candidate) => open(candidate, value));
  }
  return [...new Set(schemas.flatMap((candidate) => Object.keys(definitionOf(candidate).shape ?? {})))];
}
