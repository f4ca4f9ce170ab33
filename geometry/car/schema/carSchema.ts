import * as z from 'zod/mini';
import type { CarDocument } from '../document';
import { axleSchema } from './axleSchema';
import { jointSchema, partSchema, spanSchema } from './fitUpSchema';
import { loadCaseSchema } from './loadSchema';
import { measurementSchema, surveySchema, uncertaintySchema } from './measuringSchema';
import { questionSchema } from './questionSchema';
import { limitSchema, setupSchema, toleranceSchema } from './setupSchema';
import {
  about,
  fields,
  filledText,
  flag,
  list,
  name,
  named,
  notNegative,
  point,
  positive,
  share,
  text,
  title,
} from './vocabulary';

const body = fields({
  mass: about(z.optional(positive), { description: 'kg, with every mass below that is "included".' }),
  frontShare: about(z.optional(share), { description: 'Share of the mass on the front axle.' }),
  leftShare: about(z.optional(share), { description: 'Share of the mass on the left wheels.' }),
  centreOfGravityHeight: about(z.optional(positive), { description: 'Above the ground.' }),
  unsprungFront: about(z.optional(notNegative), { description: 'kg per corner.' }),
  unsprungRear: about(z.optional(notNegative), { description: 'kg per corner.' }),
  brakeFrontShare: about(z.optional(share), { description: 'Share of the braking force on the front axle.' }),
  drivenAxle: z.optional(z.enum(['front', 'rear', 'both'], { error: '"front", "rear" or "both"' })),
  driveFrontShare: z.optional(share),
});

const mass = fields({
  name: filledText,
  mass: about(notNegative, { description: 'kg.' }),
  at: point,
  included: about(z.optional(flag), { description: 'true: part of body.mass; false: added to it.' }),
});

const carFields = fields({
  $schema: z.optional(text),
  format: z.literal('jounce-car', { error: '"jounce-car"' }),
  version: z.literal(1, { error: '1' }),
  name: filledText,
  notes: z.optional(text),
  revision: z.optional(text),
  date: z.optional(text),
  onCar: about(z.optional(title), { description: 'The setup that is on the car now.' }),
  units: z.optional(fields({ length: z.enum(['mm', 'in'], { error: '"mm" or "in"' }) })),
  body: z.optional(body),
  masses: z.optional(list(mass)),
  front: z.optional(axleSchema),
  rear: z.optional(axleSchema),
  setups: z.optional(named(title, setupSchema)),
  limits: z.optional(list(limitSchema)),
  tolerances: z.optional(z.record(text, toleranceSchema, { error: 'an object { "reading": … }' })),
  margins: z.optional(named(name, notNegative)),
  parts: z.optional(named(name, partSchema)),
  joints: z.optional(named(name, jointSchema)),
  spans: z.optional(named(name, spanSchema)),
  loads: z.optional(named(title, loadCaseSchema)),
  questions: z.optional(named(title, questionSchema)),
  measurements: z.optional(list(measurementSchema)),
  uncertainty: z.optional(uncertaintySchema),
  survey: z.optional(surveySchema),
});

/** The car file's form, held to the type of the document. What one field asks of another is in rules/. */
export const carSchema: z.ZodMiniType<CarDocument> = carFields;
