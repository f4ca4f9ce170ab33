/**
 * A small reader of JSON Schema (the keywords that the car file's schema uses, draft 2020-12), written for the tests
 * so that the published schema is tried by something else than the library that made it.
 */
type Schema = { readonly [keyword: string]: unknown };

const KNOWN = new Set(
  (
    '$schema $id $defs $ref id title description type properties required additionalProperties propertyNames items prefixItems minItems maxItems ' +
    'minimum maximum exclusiveMinimum exclusiveMaximum minLength pattern const enum anyOf oneOf'
  ).split(' '),
);

const typeOf = (value: unknown): string => (value === null ? 'null' : Array.isArray(value) ? 'array' : typeof value);
const asSchema = (value: unknown): Schema => value as Schema;

/** Where a value does not fit its schema; empty when it does. */
export function judgeBySchema(root: Schema, value: unknown, schema: Schema = root, path = '$'): string[] {
  const unknown = Object.keys(schema).filter((keyword) => !KNOWN.has(keyword));
  if (unknown.length > 0) throw new Error(`keyword ${unknown.join()} is not known here`);
  const wrong: string[] = [];
  const judge = (inner: unknown, by: unknown, at: string): string[] => judgeBySchema(root, inner, asSchema(by), at);
  if (typeof schema['$ref'] === 'string') {
    const target = schema['$ref'].replace('#/$defs/', '');
    wrong.push(...judge(value, asSchema(root['$defs'])[target], path));
  }
  const type = schema['type'];
  if (type === 'integer') {
    if (!Number.isInteger(value)) wrong.push(`${path}: integer`);
  } else if (type !== undefined && typeOf(value) !== type) wrong.push(`${path}: ${String(type)}`);
  if ('const' in schema && value !== schema['const']) wrong.push(`${path}: const`);
  if (Array.isArray(schema['enum']) && !schema['enum'].includes(value)) wrong.push(`${path}: enum`);
  for (const keyword of ['anyOf', 'oneOf']) {
    const options = schema[keyword];
    if (!Array.isArray(options)) continue;
    const fitting = options.filter((option) => judge(value, option, path).length === 0).length;
    if (fitting === 0 || (keyword === 'oneOf' && fitting > 1)) wrong.push(`${path}: ${keyword}`);
  }
  if (typeof value === 'number') {
    const { minimum, maximum, exclusiveMinimum, exclusiveMaximum } = schema as Readonly<Record<string, number | undefined>>;
    if (minimum !== undefined && value < minimum) wrong.push(`${path}: minimum`);
    if (maximum !== undefined && value > maximum) wrong.push(`${path}: maximum`);
    if (exclusiveMinimum !== undefined && value <= exclusiveMinimum) wrong.push(`${path}: exclusiveMinimum`);
    if (exclusiveMaximum !== undefined && value >= exclusiveMaximum) wrong.push(`${path}: exclusiveMaximum`);
  }
  if (typeof value === 'string') {
    if (typeof schema['minLength'] === 'number' && [...value].length < schema['minLength']) wrong.push(`${path}: minLength`);
    if (typeof schema['pattern'] === 'string' && !new RegExp(schema['pattern'], 'u').test(value)) wrong.push(`${path}: pattern`);
  }
  if (Array.isArray(value)) wrong.push(...judgeList(schema, value, path, judge));
  else if (typeof value === 'object' && value !== null) wrong.push(...judgeObject(schema, value as Schema, path, judge));
  return wrong;
}

type Judge = (value: unknown, schema: unknown, path: string) => string[];

function judgeList(schema: Schema, value: readonly unknown[], path: string, judge: Judge): string[] {
  const wrong: string[] = [];
  const { minItems, maxItems } = schema as Readonly<Record<string, number | undefined>>;
  if (minItems !== undefined && value.length < minItems) wrong.push(`${path}: minItems`);
  if (maxItems !== undefined && value.length > maxItems) wrong.push(`${path}: maxItems`);
  const first = Array.isArray(schema['prefixItems']) ? (schema['prefixItems'] as readonly unknown[]) : [];
  value.forEach((item, i) => {
    if (i < first.length) wrong.push(...judge(item, first[i], `${path}[${i}]`));
    else if (schema['items'] === false) wrong.push(`${path}[${i}]: items`);
    else if (schema['items'] !== undefined) wrong.push(...judge(item, schema['items'], `${path}[${i}]`));
  });
  return wrong;
}

function judgeObject(schema: Schema, value: Schema, path: string, judge: Judge): string[] {
  const wrong: string[] = [];
  const properties = asSchema(schema['properties'] ?? {});
  for (const key of (schema['required'] as readonly string[] | undefined) ?? [])
    if (!(key in value)) wrong.push(`${path}.${key}: required`);
  for (const [key, inner] of Object.entries(value)) {
    if (schema['propertyNames'] !== undefined) wrong.push(...judge(key, schema['propertyNames'], `${path}.${key}`));
    if (Object.hasOwn(properties, key)) wrong.push(...judge(inner, properties[key], `${path}.${key}`));
    else if (schema['additionalProperties'] === false) wrong.push(`${path}.${key}: unknown`);
    else if (schema['additionalProperties'] !== undefined)
      wrong.push(...judge(inner, schema['additionalProperties'], `${path}.${key}`));
  }
  return wrong;
}
