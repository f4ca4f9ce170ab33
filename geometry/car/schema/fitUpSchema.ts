import * as z from 'zod';
import {
  axleName,
  direction,
  fields,
  flag,
  list,
  name,
  notNegative,
  point,
  positive,
  between,
  sideName,
  text,
} from './vocabulary';

const shape = z.discriminatedUnion(
  'kind',
  [
    fields({ kind: z.literal('sphere'), at: point, radius: positive }),
    fields({ kind: z.literal('capsule'), from: point, to: point, radius: positive }),
    fields({ kind: z.literal('cylinder'), from: point, to: point, radius: positive }),
    fields({
      kind: z.literal('box'),
      centre: point,
      size: z.tuple([positive, positive, positive], { error: 'three sizes greater than 0' }),
      axes: z.tuple([direction, direction], { error: 'two directions; the third is their cross product' }).optional(),
    }),
    fields({ kind: z.literal('tyre') }),
    fields({ kind: z.literal('rim') }),
    fields({
      kind: z.literal('mesh'),
      file: text.optional().meta({ description: 'Relative to the car file.' }),
      data: text.optional().meta({ description: 'Binary STL in base64.' }),
      scale: positive.optional(),
      place: fields({
        at: point.optional(),
        axes: z.tuple([direction, direction], { error: 'two directions; the third is their cross product' }).optional(),
      }).optional(),
    }),
  ],
  { error: 'a shape { "kind": … }' },
);

export const partSchema = fields({
  axle: axleName.optional(),
  side: sideName.optional(),
  only: flag.optional().meta({ description: 'true: this side only; otherwise mirrored to the other.' }),
  on: name.meta({ description: 'What carries the part: "body", "knuckle", "wheel", a rod\'s name …' }),
  shape,
  kind: name.optional().meta({ description: 'Picks the margin.' }),
  margin: notNegative.optional(),
  touches: list(name).optional(),
});

export const jointSchema = fields({
  axle: axleName.optional(),
  bolt: direction,
  boltOn: name,
  bore: direction.optional(),
  boreOn: name.optional(),
  rod: name.optional(),
  rated: between(0, 90).meta({ description: 'Greatest tilt in degrees that the maker allows.' }),
});

const spanEnd = z.union([point, name], { error: "a point [x, y, z] or a point's name" });

export const spanSchema = fields({
  axle: axleName.optional(),
  side: sideName.optional(),
  from: spanEnd,
  fromOn: name,
  to: spanEnd,
  toOn: name,
  length: positive,
});
