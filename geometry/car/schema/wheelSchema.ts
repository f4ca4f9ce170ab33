import * as z from 'zod';
import { alignmentAngle, anyNumber, fields, list, notNegative, positive, threadMaterial } from './vocabulary';

const studs = fields({
  diameter: positive,
  pitch: positive,
  engaged: notNegative.meta({ description: 'Length of thread in the nut with no spacer.' }),
  material: threadMaterial.optional(),
});

export const wheelSchema = fields({
  camber: alignmentAngle.meta({ title: 'Camber', description: 'Design camber in degrees; + is top outboard.' }),
  toe: alignmentAngle.meta({ title: 'Toe', description: 'Design toe of this wheel in degrees; + is toe-in.' }),
  loadedRadius: positive.meta({ description: "Height of the wheel centre over the ground, along the wheel's plane." }),
  tyreRadius: positive.optional().meta({ description: 'Unloaded radius.' }),
  tyreWidth: positive.optional(),
  rimDiameter: positive.optional(),
  rimWidth: positive.optional(),
  shoulderRadius: notNegative.optional().meta({ description: "Rounding of the tyre's shoulder." }),
  rimInside: list(z.tuple([anyNumber, positive], { error: '[offset from the centre plane, radius]' }))
    .optional()
    .meta({ description: "Inside of the rim: [offset from the wheel's centre plane, + outboard; radius]." }),
  toeDiameter: positive.optional().meta({ description: 'Diameter at which toe is read off as a length.' }),
  tyreRate: positive.optional().meta({ description: 'N/mm.' }),
  growth: notNegative.optional().meta({ description: 'How much the tyre grows at speed, on the radius.' }),
  sideDeflection: notNegative.optional(),
  studs: studs.optional(),
});

/** Right-hand wheel, or a setup's wheel: only what differs. */
export const partialWheelSchema = wheelSchema
  .partial()
  .meta({ id: 'partialWheel', description: 'Only what differs from the wheel of the axle.' });
