import type { Vector } from '../core/vector';
import type { Path } from './fault';

/**
 * A value somewhere in a file that may be broken, with the path that led to it.
 * Rules read through these, so that each can be judged whatever else is wrong: what is not of the form a rule
 * needs reads as absent, and the schema has said so already.
 */
export interface Place {
  readonly value: unknown;
  readonly path: Path;
}

export const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The named thing inside; its value is undefined when it is not there. */
export function at(place: Place, ...keys: readonly string[]): Place {
  let value: unknown = place.value;
  for (const key of keys) value = isObject(value) && Object.hasOwn(value, key) ? value[key] : undefined;
  return { value, path: [...place.path, ...keys] };
}

export const isThere = (place: Place): boolean => place.value !== undefined;

/** Names and values of an object; nothing for anything else. */
export function entriesOf(place: Place): readonly (readonly [string, Place])[] {
  if (!isObject(place.value)) return [];
  return Object.entries(place.value).map(([key, value]) => [key, { value, path: [...place.path, key] }] as const);
}

export const namesOf = (place: Place): readonly string[] => (isObject(place.value) ? Object.keys(place.value) : []);

/** Entries of a list; nothing for anything else. */
export function itemsOf(place: Place): readonly Place[] {
  if (!Array.isArray(place.value)) return [];
  return place.value.map((value: unknown, i) => ({ value, path: [...place.path, i] }));
}

/** Finite number, or undefined. */
export const numberOf = (place: Place): number | undefined =>
  typeof place.value === 'number' && Number.isFinite(place.value) ? place.value : undefined;

export const textOf = (place: Place): string | undefined => (typeof place.value === 'string' ? place.value : undefined);

/** Three finite numbers, or undefined. */
export function vectorOf(place: Place): Vector | undefined {
  const { value } = place;
  if (!Array.isArray(value) || value.length !== 3) return undefined;
  const [x, y, z] = value as readonly unknown[];
  return isFiniteNumber(x) && isFiniteNumber(y) && isFiniteNumber(z) ? [x, y, z] : undefined;
}

/** Two finite numbers, or undefined. */
export function pairOf(place: Place): readonly [number, number] | undefined {
  const { value } = place;
  if (!Array.isArray(value) || value.length !== 2) return undefined;
  const [a, b] = value as readonly unknown[];
  return isFiniteNumber(a) && isFiniteNumber(b) ? [a, b] : undefined;
}

const isFiniteNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
