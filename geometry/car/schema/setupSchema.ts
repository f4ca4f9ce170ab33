import * as z from 'zod';
import { settingSchema } from './adjusterSchema';
import {
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

const settings = named(name, settingSchema).meta({
  id: 'settings',
  description: 'Adjuster: its number. null, or left out, is zero.',
});

const setupAxle = fields({
  both: settings.optional(),
  left: settings.optional(),
  right: settings.optional(),
  setToe: alignmentAngle.optional().meta({ description: 'Degrees per wheel; the toe adjuster is turned until toe is this.' }),
  rideHeight: anyNumber.optional().meta({ description: 'Height of the body over the ground at this axle against design, + up.' }),
  springRate: positive.optional(),
  barHole: z
    .union([filledText, fields({ left: filledText, right: filledText })], {
      error: 'a hole\'s name, or { "left": …, "right": … }',
    })
    .optional(),
  barRate: notNegative.optional().meta({ description: '0: unhooked.' }),
  wheel: partialWheelSchema.optional(),
}).meta({ id: 'setupAxle', title: "An axle's part of a setup" });

const record = fields({
  label: filledText,
  unit: text.optional(),
  values: named(filledText, z.union([anyNumber, text], { error: 'a number or text' })),
});

export const setupSchema = fields({
  notes: text.optional(),
  front: setupAxle.optional(),
  rear: setupAxle.optional(),
  record: list(record).optional(),
}).meta({ id: 'setup', title: 'Setup' });

export const limitSchema = fields({
  reading: name.optional(),
  setting: name.optional(),
  axle: axleName.optional(),
  side: eachSide.optional(),
  difference: z.boolean({ error: 'true or false' }).optional(),
  min: anyNumber.optional(),
  max: anyNumber.optional(),
  why: text.optional(),
  source: text.optional(),
});

export const toleranceSchema = fields({ set: positive.optional(), matters: positive.optional() });
