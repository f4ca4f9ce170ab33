import * as z from 'zod/mini';
import { about, anyNumber, fields, flag, text } from './vocabulary';

const force = z.optional(anyNumber);

const wheelLoad = fields({
  Fx: about(force, { description: 'N, + forward.' }),
  Fy: about(force, { description: 'N, + to the left.' }),
  Fz: about(force, { description: 'N, + up.' }),
  Mz: about(force, { description: "N·m about the ground's normal, right hand." }),
  driven: about(z.optional(flag), { description: 'true: Fx comes through a drive shaft and pushes at the wheel centre.' }),
});

const axleLoad = fields({
  both: about(z.optional(wheelLoad), { description: "The left wheel's, mirrored to the right: Fy and Mz negated." }),
  left: z.optional(wheelLoad),
  right: z.optional(wheelLoad),
});

export const loadCaseSchema = fields({
  notes: z.optional(text),
  g: about(z.optional(z.tuple([anyNumber, anyNumber], { error: 'two numbers [lateral, longitudinal] in g' })), {
    description: '[lateral, longitudinal] in g: + to the left, + forward.',
  }),
  front: z.optional(axleLoad),
  rear: z.optional(axleLoad),
});
