import '../zodConfig';
import * as z from 'zod';

/*
 * Words that the schema is made of. Every `error` text completes the sentence "expected …" of a fault.
 * Lengths are in the file's own unit, angles in degrees, masses in kg, rates in N/mm.
 */

/** Largest magnitude of any number. */
export const LARGEST_NUMBER = 1e9;
/** 100 m in mm; files in inches are held to the same 100 m by a rule of their own. */
export const LARGEST_COORDINATE_MM = 100_000;

export const anyNumber = z
  .number({ error: 'a number' })
  .min(-LARGEST_NUMBER, { error: 'a number of magnitude 1e9 at most' })
  .max(LARGEST_NUMBER, { error: 'a number of magnitude 1e9 at most' });

export const positive = z
  .number({ error: 'a number greater than 0' })
  .gt(0, { error: 'a number greater than 0' })
  .max(LARGEST_NUMBER, { error: 'a number of magnitude 1e9 at most' });

export const notNegative = z
  .number({ error: 'a number, 0 or more' })
  .min(0, { error: 'a number, 0 or more' })
  .max(LARGEST_NUMBER, { error: 'a number of magnitude 1e9 at most' });

/** A number between two bounds, both allowed. */
export function between(min: number, max: number): z.ZodNumber {
  const error = `a number from ${min} to ${max}`;
  return z.number({ error }).min(min, { error }).max(max, { error });
}

export const share = between(0, 1);

/** Camber and toe as alignment: past 45° the wheel is no longer upright in any sense. */
export const alignmentAngle = between(-45, 45);

const coordinate = z
  .number({ error: 'a coordinate (a number)' })
  .min(-LARGEST_COORDINATE_MM, { error: 'a coordinate within 100 m of the origin' })
  .max(LARGEST_COORDINATE_MM, { error: 'a coordinate within 100 m of the origin' });

export const point = z
  .tuple([coordinate, coordinate, coordinate], { error: 'a point [x, y, z]: three numbers' })
  .meta({ id: 'point', description: "A point [x, y, z] in the file's unit of length: x forward, y to the left, z up." });

export const direction = z.tuple([anyNumber, anyNumber, anyNumber], { error: 'a direction [x, y, z]: three numbers' }).meta({
  id: 'direction',
  description: "A direction [x, y, z] in the car's frame, left side, at the design position; its length does not matter.",
});

export const interval = z.tuple([anyNumber, anyNumber], { error: 'two numbers [least, greatest]' });

export const flag = z.boolean({ error: 'true or false' });

export const text = z.string({ error: 'text in double quotes' });
export const filledText = z.string({ error: 'text in double quotes' }).min(1, { error: 'text of at least one character' });

/** Points, rods, adjusters, parts, joints. */
export const NAME_PATTERN = /^[A-Za-z][A-Za-z0-9_-]{0,59}$/;
export const name = z
  .string({ error: 'a name in double quotes' })
  .regex(NAME_PATTERN, { error: 'a name: a letter, then up to 59 letters, digits, "_" or "-"' })
  .meta({ id: 'name', description: 'A letter, then up to 59 letters, digits, \"_\" or \"-\".' });

/** Setups, questions, surveys. */
export const TITLE_PATTERN = /^(?![+-]?[0-9]+$)[^\p{Cc}]{1,60}$/u;
export const title = z
  .string({ error: 'a name in double quotes' })
  .regex(TITLE_PATTERN, { error: 'a name of 1 to 60 characters, not a whole number, no control characters' })
  .meta({ id: 'title', description: '1 to 60 characters, not a whole number.' });

export const axleName = z.enum(['front', 'rear'], { error: '"front" or "rear"' });
export const sideName = z.enum(['left', 'right'], { error: '"left" or "right"' });
export const eachSide = z.enum(['each', 'left', 'right', 'both'], { error: '"each", "left", "right" or "both"' });
export const oneSideOrBoth = z.enum(['left', 'right', 'both'], { error: '"left", "right" or "both"' });
export const coordinateAxis = z.enum(['x', 'y', 'z'], { error: '"x", "y" or "z"' });
export const motion = z.enum(['bump', 'roll', 'steer'], { error: '"bump", "roll" or "steer"' });
export const threadMaterial = z.enum(['steel', 'aluminium'], { error: '"steel" or "aluminium"' });

/** An object of named things. */
export const named = <Item extends z.ZodType>(key: z.ZodString, item: Item): z.ZodRecord<z.ZodString, Item> =>
  z.record(key, item, { error: 'an object { "name": … }' });

/** An object of exactly these keys. */
export const fields = <Shape extends z.core.$ZodLooseShape>(shape: Shape): z.ZodObject<Shape, z.core.$strict> =>
  z.strictObject(shape, { error: 'an object { … }' });

export const list = <Item extends z.ZodType>(item: Item): z.ZodArray<Item> => z.array(item, { error: 'a list [ … ]' });
