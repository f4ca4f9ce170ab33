import * as z from 'zod';
import { anyNumber, direction, fields, interval, list, name, notNegative, positive, text, threadMaterial } from './vocabulary';

const seat = z.enum(['body', 'arm', 'knuckle'], { error: '"body", "arm" or "knuckle"' }).optional().meta({
  description: 'The body that carries the moved centre, and so what keeps its length. Left out: the body the point is on.',
});

const seenFrom = z
  .enum(['above', 'below', 'front', 'rear', 'inboard', 'outboard'], {
    error: '"above", "below", "front", "rear", "inboard" or "outboard"',
  })
  .optional()
  .meta({ description: 'From where the fitter looks at the clock. Left out: along the axis.' });

const range = interval.meta({ description: 'Least and greatest setting.' });
const step = positive.meta({ description: 'Smallest change the part allows; settings are whole multiples counted from zero.' });

const clockMark = z
  .number({ error: 'degrees between marks, greater than 0' })
  .gt(0, { error: 'degrees between marks, greater than 0' })
  .max(90, { error: 'degrees between marks, 90 at most' })
  .meta({ description: 'Degrees between marks.' });

const common = {
  label: text.optional().meta({ description: 'Shown instead of the key.' }),
  notes: text.optional(),
  torque: text.optional().meta({ description: 'Printed as typed.' }),
  locked: text.optional().meta({ description: 'Why the rules forbid it.' }),
  draw: fields({
    bore: positive.optional(),
    outer: positive.optional(),
    slot: positive.optional(),
    washer: positive.optional(),
    studPitch: positive.optional(),
  })
    .optional()
    .meta({ description: 'True sizes for the drawing.' }),
};

const slide = fields({
  kind: z.literal('slide'),
  moves: name,
  along: z.union([direction, z.literal('spindle')], { error: 'a direction [x, y, z] or "spindle"' }),
  seat,
  range,
  step,
  shims: list(positive).optional().meta({ description: 'Thicknesses in stock, largest first.' }),
  ...common,
}).meta({ title: 'Slide', description: 'Moves a point along a direction: a top plate, a shim, a slot, a pin, a spacer.' });

const eccentricBolt = fields({
  kind: z.literal('eccentric-bolt'),
  moves: name,
  slot: direction,
  throw: positive,
  seat,
  mark: clockMark,
  seenFrom,
  ...common,
}).meta({ title: 'Eccentric bolt', description: 'Cam washers move the bolt by throw · sin(clock) along the slot; −90…90°.' });

const offsetBushing = fields({
  kind: z.literal('offset-bushing'),
  moves: name,
  axis: direction,
  twelve: direction,
  offset: positive,
  seat,
  index: z
    .number({ error: 'degrees between positions, greater than 0' })
    .gt(0, { error: 'degrees between positions, greater than 0' })
    .max(360, { error: 'degrees between positions, 360 at most' })
    .meta({ description: 'Degrees between the positions it can be fitted in.' }),
  seenFrom,
  ...common,
}).meta({
  title: 'Offset bushing',
  description: "The hole sits off the bore's centre, turned by the clock angle from twelve about the axis; 0…360°.",
});

const clampEccentric = fields({
  kind: z.literal('clamp-eccentric'),
  pivot: name,
  bolt: name,
  axis: direction,
  throw: positive,
  mark: clockMark,
  seenFrom,
  ...common,
}).meta({
  title: 'Clamp eccentric',
  description: 'The camber bolt: the knuckle turns against the strut about the other bolt; −90…90°.',
});

const thread = fields({
  diameter: positive,
  pitch: positive,
  engaged: notNegative,
  ends: z.union([z.literal(1), z.literal(2)], { error: '1 or 2' }).optional(),
  material: threadMaterial.optional(),
});

const turnbuckle = fields({
  kind: z.literal('turnbuckle'),
  rod: name,
  perTurn: positive,
  range,
  step,
  flats: z
    .int({ error: 'a whole number of flats, 2 to 24' })
    .min(2, { error: 'a whole number of flats, 2 to 24' })
    .max(24, { error: 'a whole number of flats, 2 to 24' })
    .optional()
    .meta({ description: '6: words and steps count flats of the hexagon.' }),
  thread: thread.optional(),
  ...common,
}).meta({ title: 'Turnbuckle', description: "The rod's length changes by perTurn for each turn." });

const perch = fields({
  kind: z.literal('perch'),
  perTurn: positive,
  range,
  step,
  moves: z.enum(['seat', 'body'], { error: '"seat" or "body"' }).optional(),
  ...common,
}).meta({ title: 'Perch', description: 'Spring seat ("seat") or threaded strut foot ("body").' });

export const adjusterSchema = z
  .discriminatedUnion('kind', [slide, eccentricBolt, offsetBushing, clampEccentric, turnbuckle, perch], {
    error: 'an adjuster { "kind": … }',
  })
  .meta({ id: 'adjuster', title: 'Adjuster', description: 'One number with a range and a step, on each side of the car.' });

/** Degrees or turns or lengths: what a setting may be before its own range is asked. */
export const settingSchema = anyNumber.nullable();
