import * as z from 'zod';
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

const wholeNumber = (least: number, greatest: number): z.ZodInt => {
  const error = `a whole number from ${least} to ${greatest}`;
  return z.int({ error }).min(least, { error }).max(greatest, { error });
};

const end = anyNumber.nullable();

const wanted = fields({
  reading: name,
  axle: axleName.optional(),
  side: oneSideOrBoth.optional(),
  at: fields({
    travel: z.union([anyNumber, z.tuple([anyNumber, anyNumber])], { error: 'a number, or [left, right]' }).optional(),
    rack: anyNumber.optional(),
    roll: anyNumber.optional(),
  }).optional(),
  over: fields({ motion, from: anyNumber, to: anyNumber, steps: wholeNumber(1, 100_000) }).optional(),
  change: flag.optional(),
  value: anyNumber.optional(),
  range: z.tuple([end, end], { error: '[least, greatest], either of them null when open' }).optional(),
  tolerance: positive,
});

const may = z.union(
  [
    fields({
      axle: axleName,
      adjuster: name,
      sides: z.enum(['together', 'apart'], { error: '"together" or "apart"' }).optional(),
    }),
    fields({
      axle: axleName,
      point: name,
      along: direction,
      range: interval,
      step: positive,
      sides: z.enum(['together', 'apart']).optional(),
    }),
  ],
  { error: '{ "axle", "adjuster", "sides" } or { "axle", "point", "along", "range", "step" }' },
);

/** A question of `reach`, as it is kept in the car file; its lengths are mm in every file. */
export const questionSchema = fields({
  setup: title.optional(),
  setToe: z.union([flag, alignmentAngle], { error: 'true, false or degrees' }).optional(),
  locked: flag.optional(),
  count: wholeNumber(1, 1000).optional(),
  seed: wholeNumber(0, 4294967295).optional(),
  wanted: list(wanted),
  may: list(may),
});
