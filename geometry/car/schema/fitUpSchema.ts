import * as z from 'zod/mini';
import {
  about,
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
      axes: z.optional(z.tuple([direction, direction], { error: 'two directions; the third is their cross product' })),
    }),
    fields({ kind: z.literal('tyre') }),
    fields({ kind: z.literal('rim') }),
    fields({
      kind: z.literal('mesh'),
      file: about(z.optional(text), { description: 'Relative to the car file.' }),
      data: about(z.optional(text), { description: 'Binary STL in base64.' }),
      scale: about(z.optional(positive), {
        description:
          'Units of the car file per unit of the mesh; 1 when not given: a mesh in mm beside a car in inches needs 0.03937.',
      }),
      place: z.optional(
        fields({
          at: z.optional(point),
          axes: z.optional(z.tuple([direction, direction], { error: 'two directions; the third is their cross product' })),
        }),
      ),
    }),
  ],
  { error: 'a shape { "kind": … }' },
);

export const partSchema = fields({
  axle: z.optional(axleName),
  side: z.optional(sideName),
  only: about(z.optional(flag), { description: 'true: this side only; otherwise mirrored to the other.' }),
  on: about(name, { description: 'What carries the part: "body", "knuckle", "wheel", a rod\'s name …' }),
  shape,
  kind: about(z.optional(name), { description: 'Picks the margin.' }),
  margin: z.optional(notNegative),
  touches: z.optional(list(name)),
  held: about(z.optional(text), {
    description:
      'How a part on a rod that could turn about its own line is kept from turning; without it the ring that it sweeps counts.',
  }),
});

export const jointSchema = fields({
  axle: z.optional(axleName),
  bolt: direction,
  boltOn: name,
  bore: z.optional(direction),
  boreOn: z.optional(name),
  rod: z.optional(name),
  rated: about(between(0, 90), { description: 'Greatest tilt in degrees that the maker allows.' }),
});

const spanEnd = z.union([point, name], { error: "a point [x, y, z] or a point's name" });

export const spanSchema = fields({
  axle: z.optional(axleName),
  side: z.optional(sideName),
  from: spanEnd,
  fromOn: name,
  to: spanEnd,
  toOn: name,
  length: positive,
});
