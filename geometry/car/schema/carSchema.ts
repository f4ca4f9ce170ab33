import * as z from 'zod';
import type { CarDocument } from '../document';
import { axleSchema } from './axleSchema';
import { jointSchema, partSchema, spanSchema } from './fitUpSchema';
import { measurementSchema, surveySchema, uncertaintySchema } from './measuringSchema';
import { questionSchema } from './questionSchema';
import { limitSchema, setupSchema, toleranceSchema } from './setupSchema';
import { fields, filledText, flag, list, name, named, notNegative, point, positive, share, text, title } from './vocabulary';

const body = fields({
  mass: positive.optional().meta({ description: 'kg, with every mass below that is "included".' }),
  frontShare: share.optional().meta({ description: 'Share of the mass on the front axle.' }),
  leftShare: share.optional().meta({ description: 'Share of the mass on the left wheels.' }),
  centreOfGravityHeight: positive.optional().meta({ description: 'Above the ground.' }),
  unsprungFront: notNegative.optional().meta({ description: 'kg per corner.' }),
  unsprungRear: notNegative.optional().meta({ description: 'kg per corner.' }),
  brakeFrontShare: share.optional().meta({ description: 'Share of the braking force on the front axle.' }),
  drivenAxle: z.enum(['front', 'rear', 'both'], { error: '"front", "rear" or "both"' }).optional(),
  driveFrontShare: share.optional(),
});

const mass = fields({
  name: filledText,
  mass: notNegative.meta({ description: 'kg.' }),
  at: point,
  included: flag.optional().meta({ description: 'true: part of body.mass; false: added to it.' }),
});

const carFields = fields({
  $schema: text.optional(),
  format: z.literal('jounce-car', { error: '"jounce-car"' }),
  version: z.literal(1, { error: '1' }),
  name: filledText,
  notes: text.optional(),
  revision: text.optional(),
  date: text.optional(),
  onCar: title.optional().meta({ description: 'The setup that is on the car now.' }),
  units: fields({ length: z.enum(['mm', 'in'], { error: '"mm" or "in"' }) }).optional(),
  body: body.optional(),
  masses: list(mass).optional(),
  front: axleSchema.optional(),
  rear: axleSchema.optional(),
  setups: named(title, setupSchema).optional(),
  limits: list(limitSchema).optional(),
  tolerances: z.record(text, toleranceSchema, { error: 'an object { "reading": … }' }).optional(),
  margins: named(name, notNegative).optional(),
  parts: named(name, partSchema).optional(),
  joints: named(name, jointSchema).optional(),
  spans: named(name, spanSchema).optional(),
  questions: named(title, questionSchema).optional(),
  measurements: list(measurementSchema).optional(),
  uncertainty: uncertaintySchema.optional(),
  survey: surveySchema.optional(),
});

/** The car file's form, held to the type of the document. What one field asks of another is in rules/. */
export const carSchema: z.ZodType<CarDocument> = carFields;
