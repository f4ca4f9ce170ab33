import '../zodConfig';
import * as z from 'zod/mini';

/*
 * Words that the schema is made of. Every `error` text completes the sentence "expected …" of a fault.
 * Lengths are in the file's own unit, angles in degrees, masses in kg, rates in N/mm.
 */

/** What an editor shows of a part of the form; `id` gives it a name of its own in the JSON Schema. */
type About = { readonly id?: string; readonly title?: string; readonly description?: string };

/** A copy of a part of the form that says what it means in its place; the part itself may mean other things elsewhere. */
export function about<Part extends z.ZodMiniType>(part: Part, words: About): Part {
  const copy = z.clone(part);
  z.globalRegistry.add(copy, words);
  return copy;
}

/** Largest magnitude of any number. */
export const LARGEST_NUMBER = 1e9;
/** 100 m in mm; files in inches are held to the same 100 m by a rule of their own. */
export const LARGEST_COORDINATE_MM = 100_000;

export const anyNumber = z
  .number({ error: 'a number' })
  .check(
    z.gte(-LARGEST_NUMBER, { error: 'a number of magnitude 1e9 at most' }),
    z.lte(LARGEST_NUMBER, { error: 'a number of magnitude 1e9 at most' }),
  );

export const positive = z
  .number({ error: 'a number greater than 0' })
  .check(z.gt(0, { error: 'a number greater than 0' }), z.lte(LARGEST_NUMBER, { error: 'a number of magnitude 1e9 at most' }));

export const notNegative = z
  .number({ error: 'a number, 0 or more' })
  .check(z.gte(0, { error: 'a number, 0 or more' }), z.lte(LARGEST_NUMBER, { error: 'a number of magnitude 1e9 at most' }));

/** A number between two bounds, both allowed. */
export function between(min: number, max: number): z.ZodMiniNumber {
  const error = `a number from ${min} to ${max}`;
  return z.number({ error }).check(z.gte(min, { error }), z.lte(max, { error }));
}

export const share = between(0, 1);

/** Camber and toe as alignment: past 45° the wheel is no longer upright in any sense. */
export const alignmentAngle = between(-45, 45);

const coordinate = z
  .number({ error: 'a coordinate (a number)' })
  .check(
    z.gte(-LARGEST_COORDINATE_MM, { error: 'a coordinate within 100 m of the origin' }),
    z.lte(LARGEST_COORDINATE_MM, { error: 'a coordinate within 100 m of the origin' }),
  );

export const point = about(z.tuple([coordinate, coordinate, coordinate], { error: 'a point [x, y, z]: three numbers' }), {
  id: 'point',
  description: "A point [x, y, z] in the file's unit of length: x forward, y to the left, z up.",
});

export const direction = about(z.tuple([anyNumber, anyNumber, anyNumber], { error: 'a direction [x, y, z]: three numbers' }), {
  id: 'direction',
  description: "A direction [x, y, z] in the car's frame, left side, at the design position; its length does not matter.",
});

export const interval = z.tuple([anyNumber, anyNumber], { error: 'two numbers [least, greatest]' });

export const flag = z.boolean({ error: 'true or false' });

export const text = z.string({ error: 'text in double quotes' });
export const filledText = z
  .string({ error: 'text in double quotes' })
  .check(z.minLength(1, { error: 'text of at least one character' }));

/** Points, rods, adjusters, parts, joints. */
export const NAME_PATTERN = /^[A-Za-z][A-Za-z0-9_-]{0,59}$/;
export const name = about(
  z
    .string({ error: 'a name in double quotes' })
    .check(z.regex(NAME_PATTERN, { error: 'a name: a letter, then up to 59 letters, digits, "_" or "-"' })),
  { id: 'name', description: 'A letter, then up to 59 letters, digits, \"_\" or \"-\".' },
);

/** Setups, questions, surveys. */
export const TITLE_PATTERN = /^(?![+-]?[0-9]+$)[^\p{Cc}]{1,60}$/u;
export const title = about(
  z
    .string({ error: 'a name in double quotes' })
    .check(z.regex(TITLE_PATTERN, { error: 'a name of 1 to 60 characters, not a whole number, no control characters' })),
  { id: 'title', description: '1 to 60 characters, not a whole number.' },
);

export const axleName = z.enum(['front', 'rear'], { error: '"front" or "rear"' });
export const sideName = z.enum(['left', 'right'], { error: '"left" or "right"' });
export const eachSide = z.enum(['each', 'left', 'right', 'both'], { error: '"each", "left", "right" or "both"' });
export const oneSideOrBoth = z.enum(['left', 'right', 'both'], { error: '"left", "right" or "both"' });
export const coordinateAxis = z.enum(['x', 'y', 'z'], { error: '"x", "y" or "z"' });
export const motion = z.enum(['bump', 'roll', 'steer'], { error: '"bump", "roll" or "steer"' });
export const threadMaterial = z.enum(['steel', 'aluminium'], { error: '"steel" or "aluminium"' });

/** An object of named things. */
export const named = <Item extends z.ZodMiniType>(key: z.ZodMiniString, item: Item): z.ZodMiniRecord<z.ZodMiniString, Item> =>
  z.record(key, item, { error: 'an object { "name": … }' });

/** An object of exactly these keys. */
export const fields = <Shape extends z.core.$ZodLooseShape>(shape: Shape): z.ZodMiniObject<Shape, z.core.$strict> =>
  z.strictObject(shape, { error: 'an object { … }' });

export const list = <Item extends z.ZodMiniType>(item: Item): z.ZodMiniArray<Item> => z.array(item, { error: 'a list [ … ]' });
