import * as z from 'zod/mini';
import {
  alignmentAngle,
  anyNumber,
  axleName,
  direction,
  fields,
  flag,
  interval,
  list,
  motion,
  name,
  oneSideOrBoth,
  positive,
  title,
} from './vocabulary';

const wholeNumber = (least: number, greatest: number): z.ZodMiniNumberFormat => {
  const error = `a whole number from ${least} to ${greatest}`;
  return z.int({ error }).check(z.gte(least, { error }), z.lte(greatest, { error }));
};

const end = z.nullable(anyNumber);

const wanted = fields({
  reading: name,
  axle: z.optional(axleName),
  side: z.optional(oneSideOrBoth),
  at: z.optional(
    fields({
      travel: z.optional(z.union([anyNumber, z.tuple([anyNumber, anyNumber])], { error: 'a number, or [left, right]' })),
      rack: z.optional(anyNumber),
      roll: z.optional(anyNumber),
    }),
  ),
  over: z.optional(fields({ motion, from: anyNumber, to: anyNumber, steps: wholeNumber(1, 100_000) })),
  change: z.optional(flag),
  value: z.optional(anyNumber),
  range: z.optional(z.tuple([end, end], { error: '[least, greatest], either of them null when open' })),
  tolerance: positive,
});

const may = z.union(
  [
    fields({
      axle: axleName,
      adjuster: name,
      sides: z.optional(z.enum(['together', 'apart'], { error: '"together" or "apart"' })),
    }),
    fields({
      axle: axleName,
      point: name,
      along: direction,
      range: interval,
      step: positive,
      sides: z.optional(z.enum(['together', 'apart'])),
    }),
  ],
  { error: '{ "axle", "adjuster", "sides" } or { "axle", "point", "along", "range", "step" }' },
);

/** A question of `reach`, as it is kept in the car file; its lengths are mm in every file. */
export const questionSchema = fields({
  setup: z.optional(title),
  setToe: z.optional(z.union([flag, alignmentAngle], { error: 'true, false or degrees' })),
  locked: z.optional(flag),
  count: z.optional(wholeNumber(1, 1000)),
  seed: z.optional(wholeNumber(0, 4294967295)),
  wanted: list(wanted),
  may: list(may),
});
