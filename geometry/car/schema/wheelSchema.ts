import * as z from 'zod/mini';
import { about, alignmentAngle, anyNumber, fields, list, notNegative, positive, threadMaterial } from './vocabulary';

const studs = fields({
  diameter: positive,
  pitch: positive,
  engaged: about(notNegative, { description: 'Length of thread in the nut with no spacer.' }),
  material: z.optional(threadMaterial),
});

export const wheelSchema = fields({
  camber: about(alignmentAngle, { title: 'Camber', description: 'Design camber in degrees; + is top outboard.' }),
  toe: about(alignmentAngle, { title: 'Toe', description: 'Design toe of this wheel in degrees; + is toe-in.' }),
  loadedRadius: about(positive, { description: "Height of the wheel centre over the ground, along the wheel's plane." }),
  tyreRadius: about(z.optional(positive), { description: 'Unloaded radius.' }),
  tyreWidth: z.optional(positive),
  rimDiameter: z.optional(positive),
  rimWidth: z.optional(positive),
  shoulderRadius: about(z.optional(notNegative), { description: "Rounding of the tyre's shoulder." }),
  rimInside: about(z.optional(list(z.tuple([anyNumber, positive], { error: '[offset from the centre plane, radius]' }))), {
    description: "Inside of the rim: [offset from the wheel's centre plane, + outboard; radius].",
  }),
  toeDiameter: about(z.optional(positive), { description: 'Diameter at which toe is read off as a length.' }),
  tyreRate: about(z.optional(positive), { description: 'N/mm.' }),
  growth: about(z.optional(notNegative), { description: 'How much the tyre grows at speed, on the radius.' }),
  sideDeflection: z.optional(notNegative),
  studs: z.optional(studs),
});

/** Right-hand wheel, or a setup's wheel: only what differs. */
export const partialWheelSchema = about(z.partial(wheelSchema), {
  id: 'partialWheel',
  description: 'Only what differs from the wheel of the axle.',
});
