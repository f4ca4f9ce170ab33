import * as z from 'zod/mini';
import {
  about,
  anyNumber,
  axleName,
  coordinateAxis,
  fields,
  filledText,
  list,
  name,
  named,
  notNegative,
  oneSideOrBoth,
  point,
  positive,
  sideName,
  title,
} from './vocabulary';

const sigma = about(positive, { description: 'Standard uncertainty.' });

const observation = z.discriminatedUnion(
  'kind',
  [
    fields({ kind: z.literal('distance'), from: name, to: name, value: notNegative, sigma }),
    fields({ kind: z.literal('height'), point: name, value: anyNumber, sigma }),
    fields({ kind: z.literal('coordinate'), point: name, axis: coordinateAxis, value: anyNumber, sigma }),
    fields({ kind: z.literal('difference'), from: name, to: name, axis: coordinateAxis, value: anyNumber, sigma }),
    fields({
      kind: z.literal('inclination'),
      from: name,
      to: name,
      view: z.enum(['front', 'side'], { error: '"front" or "side"' }),
      value: anyNumber,
      sigma,
    }),
  ],
  { error: 'an observation { "kind": … }' },
);

export const surveySchema = named(
  title,
  fields({ axle: axleName, side: sideName, known: z.optional(named(name, point)), observations: list(observation) }),
);

export const measurementSchema = fields({
  name: filledText,
  axle: axleName,
  side: z.optional(oneSideOrBoth),
  setup: z.optional(title),
  input: z.enum(['travel', 'rack', 'roll'], { error: '"travel", "rack" or "roll"' }),
  reading: name,
  rows: list(z.tuple([anyNumber, anyNumber], { error: '[input, value]' })),
  sigma: z.optional(positive),
});

const pointUncertainty = z.union(
  [notNegative, z.tuple([notNegative, notNegative, notNegative], { error: 'three numbers, 0 or more' })],
  {
    error: 'one number for all three coordinates, or [x, y, z]',
  },
);

export const uncertaintySchema = fields({
  default: z.optional(notNegative),
  front: z.optional(named(name, pointUncertainty)),
  rear: z.optional(named(name, pointUncertainty)),
});
