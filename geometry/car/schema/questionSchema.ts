import * as z from 'zod/mini';
import {
  about,
  alignmentAngle,
  anyNumber,
  axleName,
  between,
  direction,
  fields,
  flag,
  interval,
  list,
  motion,
  name,
  oneSideOrBoth,
  positive,
  sideName,
  title,
} from './vocabulary';

const wholeNumber = (least: number, greatest: number): z.ZodMiniNumberFormat => {
  const error = `a whole number from ${least} to ${greatest}`;
  return z.int({ error }).check(z.gte(least, { error }), z.lte(greatest, { error }));
};

const end = z.nullable(anyNumber);
const range = z.tuple([end, end], { error: '[least, greatest], either of them null when open' });
/** Past 45° a car no longer stands on its wheels in any sense. */
const rollAngle = between(-45, 45);

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
  range: z.optional(range),
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

const setToe = z.optional(z.union([flag, alignmentAngle], { error: 'true, false or degrees' }));
const locked = z.optional(flag);
const sides = z.optional(oneSideOrBoth);
const place = fields({ travel: z.optional(anyNumber), rack: z.optional(anyNumber), roll: z.optional(rollAngle) });
const at = z.optional(place);
const readings = z.optional(list(name));
const part = fields({ adjuster: name });
const perWheel = z.optional(
  fields({
    frontLeft: z.optional(anyNumber),
    frontRight: z.optional(anyNumber),
    rearLeft: z.optional(anyNumber),
    rearRight: z.optional(anyNumber),
  }),
);

const reach = about(
  fields({
    ask: z.optional(z.literal('reach')),
    setup: z.optional(title),
    setToe,
    locked,
    count: z.optional(wholeNumber(1, 1000)),
    seed: z.optional(wholeNumber(0, 4294967295)),
    wanted: list(wanted),
    may: list(may),
  }),
  { title: 'Reach', description: 'Settings that give everything that is wanted at once; `ask` may be left out.' },
);

const ways = about(
  fields({
    ask: z.literal('ways'),
    setup: z.optional(title),
    setToe,
    locked,
    axle: axleName,
    side: sides,
    at,
    reading: name,
    value: anyNumber,
    tolerance: z.optional(positive),
    pairs: z.optional(flag),
  }),
  { title: 'Ways', description: 'One change that is wanted, and every way to get it.' },
);

const influence = about(fields({ ask: z.literal('influence'), setToe, locked, axle: axleName, side: sides, at, readings }), {
  title: 'Influence',
  description: 'What one step of every part does.',
});

const map = about(
  fields({
    ask: z.literal('map'),
    setToe,
    axle: axleName,
    side: sides,
    at,
    x: part,
    y: z.union([part, fields({ motion })], { error: '{ "adjuster": … } or { "motion": … }' }),
    reading: name,
    wheel: z.optional(sideName),
    value: z.optional(anyNumber),
    tolerance: z.optional(positive),
    where: z.optional(fields({ reading: name, range: z.optional(range) })),
  }),
  { title: 'Map', description: 'One reading over two parts, or over a part and a motion.' },
);

const sweep = about(
  fields({
    ask: z.literal('sweep'),
    axle: z.optional(axleName),
    at,
    over: z.optional(fields({ motion, from: anyNumber, to: anyNumber, steps: wholeNumber(2, 2001) })),
    positions: z.optional(list(place)),
    readings,
  }),
  { title: 'Sweep', description: 'Readings over a motion, or at positions of travel, roll and rack together.' },
);

const compare = about(
  fields({
    ask: z.literal('compare'),
    axle: axleName,
    against: z.optional(list(title)),
    at,
    motion: z.optional(motion),
    readings,
    alike: z.optional(flag),
  }),
  { title: 'Compare', description: 'Setups at the same position, and their curves.' },
);

const gauges = about(
  fields({
    ask: z.literal('gauges'),
    axle: axleName,
    gauge: z.enum(['bumpSteer', 'swing', 'rim', 'strings', 'camber', 'floor'], {
      error: '"bumpSteer", "swing", "rim", "strings", "camber" or "floor"',
    }),
    from: z.optional(anyNumber),
    to: z.optional(anyNumber),
    by: z.optional(positive),
    spacing: z.optional(positive),
    dials: z.optional(z.enum(['mm', 'thou'], { error: '"mm" or "thou"' })),
    swing: z.optional(positive),
    diameter: z.optional(positive),
    offset: z.optional(anyNumber),
    lip: z.optional(anyNumber),
    pads: perWheel,
    cambers: perWheel,
  }),
  { title: 'Gauges', description: 'What an instrument of the shop shows.' },
);

/** A question as it is kept in the car file; its lengths are mm in every file. Without `ask` it is one of reach. */
export const questionSchema = z.discriminatedUnion('ask', [reach, ways, influence, map, sweep, compare, gauges], {
  error: 'a question { "ask": … }',
});
