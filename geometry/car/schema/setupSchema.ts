import * as z from 'zod/mini';
import { settingSchema } from './adjusterSchema';
import {
  about,
  alignmentAngle,
  anyNumber,
  eachSide,
  axleName,
  fields,
  filledText,
  list,
  name,
  named,
  notNegative,
  positive,
  text,
} from './vocabulary';
import { partialWheelSchema } from './wheelSchema';

const settings = about(named(name, settingSchema), {
  id: 'settings',
  description: 'Adjuster: its number. null, or left out, is zero.',
});

const setupAxle = about(
  fields({
    both: z.optional(settings),
    left: z.optional(settings),
    right: z.optional(settings),
    setToe: about(z.optional(alignmentAngle), {
      description: 'Degrees per wheel; the toe adjuster is turned until toe is this.',
    }),
    rideHeight: about(z.optional(anyNumber), {
      description: 'Height of the body over the ground at this axle against design, + up.',
    }),
    springRate: z.optional(positive),
    barHole: z.optional(
      z.union([filledText, fields({ left: filledText, right: filledText })], {
        error: 'a hole\'s name, or { "left": …, "right": … }',
      }),
    ),
    barRate: about(z.optional(notNegative), { description: '0: unhooked.' }),
    wheel: z.optional(partialWheelSchema),
  }),
  { id: 'setupAxle', title: "An axle's part of a setup" },
);

const record = fields({
  label: filledText,
  unit: z.optional(text),
  values: named(filledText, z.union([anyNumber, text], { error: 'a number or text' })),
});

export const setupSchema = about(
  fields({
    notes: z.optional(text),
    front: z.optional(setupAxle),
    rear: z.optional(setupAxle),
    record: z.optional(list(record)),
  }),
  { id: 'setup', title: 'Setup' },
);

export const limitSchema = fields({
  reading: z.optional(name),
  setting: z.optional(name),
  axle: z.optional(axleName),
  side: z.optional(eachSide),
  difference: z.optional(z.boolean({ error: 'true or false' })),
  min: z.optional(anyNumber),
  max: z.optional(anyNumber),
  why: z.optional(text),
  source: z.optional(text),
});

export const toleranceSchema = fields({ set: z.optional(positive), matters: z.optional(positive) });
