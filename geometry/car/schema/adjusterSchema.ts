import * as z from 'zod/mini';
import {
  about,
  anyNumber,
  direction,
  fields,
  interval,
  list,
  name,
  notNegative,
  positive,
  text,
  threadMaterial,
} from './vocabulary';

const seat = about(z.optional(z.enum(['body', 'arm', 'knuckle'], { error: '"body", "arm" or "knuckle"' })), {
  description: 'The body that carries the moved centre, and so what keeps its length. Left out: the body the point is on.',
});

const seenFrom = about(
  z.optional(
    z.enum(['above', 'below', 'front', 'rear', 'inboard', 'outboard'], {
      error: '"above", "below", "front", "rear", "inboard" or "outboard"',
    }),
  ),
  { description: 'From where the fitter looks at the clock. Left out: along the axis.' },
);

const range = about(interval, { description: 'Least and greatest setting.' });
const step = about(positive, { description: 'Smallest change the part allows; settings are whole multiples counted from zero.' });

const clockMark = about(
  z
    .number({ error: 'degrees between marks, greater than 0' })
    .check(
      z.gt(0, { error: 'degrees between marks, greater than 0' }),
      z.lte(90, { error: 'degrees between marks, 90 at most' }),
    ),
  { description: 'Degrees between marks.' },
);

const common = {
  label: about(z.optional(text), { description: 'Shown instead of the key.' }),
  notes: z.optional(text),
  torque: about(z.optional(text), { description: 'Printed as typed.' }),
  locked: about(z.optional(text), { description: 'Why the rules forbid it.' }),
  draw: about(
    z.optional(
      fields({
        bore: z.optional(positive),
        outer: z.optional(positive),
        slot: z.optional(positive),
        washer: z.optional(positive),
        studPitch: z.optional(positive),
      }),
    ),
    { description: 'True sizes for the drawing.' },
  ),
};

const slide = about(
  fields({
    kind: z.literal('slide'),
    moves: name,
    along: z.union([direction, z.literal('spindle')], { error: 'a direction [x, y, z] or "spindle"' }),
    seat,
    range,
    step,
    shims: about(z.optional(list(positive)), { description: 'Thicknesses in stock, largest first.' }),
    ...common,
  }),
  { title: 'Slide', description: 'Moves a point along a direction: a top plate, a shim, a slot, a pin, a spacer.' },
);

const eccentricBolt = about(
  fields({
    kind: z.literal('eccentric-bolt'),
    moves: name,
    slot: direction,
    throw: positive,
    seat,
    mark: clockMark,
    seenFrom,
    ...common,
  }),
  { title: 'Eccentric bolt', description: 'Cam washers move the bolt by throw · sin(clock) along the slot; −90…90°.' },
);

const offsetBushing = about(
  fields({
    kind: z.literal('offset-bushing'),
    moves: name,
    axis: direction,
    twelve: direction,
    offset: positive,
    seat,
    index: about(
      z
        .number({ error: 'degrees between positions, greater than 0' })
        .check(
          z.gt(0, { error: 'degrees between positions, greater than 0' }),
          z.lte(360, { error: 'degrees between positions, 360 at most' }),
        ),
      { description: 'Degrees between the positions it can be fitted in.' },
    ),
    seenFrom,
    ...common,
  }),
  {
    title: 'Offset bushing',
    description: "The hole sits off the bore's centre, turned by the clock angle from twelve about the axis; 0…360°.",
  },
);

const clampEccentric = about(
  fields({
    kind: z.literal('clamp-eccentric'),
    pivot: name,
    bolt: name,
    axis: direction,
    throw: positive,
    mark: clockMark,
    seenFrom,
    ...common,
  }),
  {
    title: 'Clamp eccentric',
    description: 'The camber bolt: the knuckle turns against the strut about the other bolt; −90…90°.',
  },
);

const thread = fields({
  diameter: positive,
  pitch: positive,
  engaged: notNegative,
  ends: z.optional(z.union([z.literal(1), z.literal(2)], { error: '1 or 2' })),
  material: z.optional(threadMaterial),
});

const turnbuckle = about(
  fields({
    kind: z.literal('turnbuckle'),
    rod: name,
    perTurn: positive,
    range,
    step,
    flats: about(
      z.optional(
        z
          .int({ error: 'a whole number of flats, 2 to 24' })
          .check(
            z.gte(2, { error: 'a whole number of flats, 2 to 24' }),
            z.lte(24, { error: 'a whole number of flats, 2 to 24' }),
          ),
      ),
      { description: '6: words and steps count flats of the hexagon.' },
    ),
    thread: z.optional(thread),
    ...common,
  }),
  { title: 'Turnbuckle', description: "The rod's length changes by perTurn for each turn." },
);

const perch = about(
  fields({
    kind: z.literal('perch'),
    perTurn: positive,
    range,
    step,
    moves: z.optional(z.enum(['seat', 'body'], { error: '"seat" or "body"' })),
    ...common,
  }),
  { title: 'Perch', description: 'Spring seat ("seat") or threaded strut foot ("body").' },
);

export const adjusterSchema = about(
  z.discriminatedUnion('kind', [slide, eccentricBolt, offsetBushing, clampEccentric, turnbuckle, perch], {
    error: 'an adjuster { "kind": … }',
  }),
  { id: 'adjuster', title: 'Adjuster', description: 'One number with a range and a step, on each side of the car.' },
);

/** Degrees or turns or lengths: what a setting may be before its own range is asked. */
export const settingSchema = z.nullable(anyNumber);
