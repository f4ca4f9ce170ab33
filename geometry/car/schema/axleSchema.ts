import * as z from 'zod/mini';
import { adjusterSchema } from './adjusterSchema';
import {
  about,
  anyNumber,
  between,
  direction,
  fields,
  filledText,
  interval,
  list,
  name,
  named,
  notNegative,
  point,
  positive,
} from './vocabulary';
import { partialWheelSchema, wheelSchema } from './wheelSchema';

const points = named(name, point);

const rod = z.tuple([name, name], { error: '[point on the body, point on the knuckle]' });

const steering = fields({
  axis: about(direction, { description: 'Direction in which the rack moves; belongs to the car and is not mirrored.' }),
  travel: about(
    z.optional(z.union([notNegative, interval], { error: 'a number (each way from centre) or [negative end, positive end]' })),
    { description: 'Rack travel each way from centre, or [negative end, positive end].' },
  ),
  perTurn: about(z.optional(positive), { description: 'Rack travel for one turn of the steering wheel.' }),
  rod: about(z.optional(name), { description: 'The rod that the rack moves; needed on a multi-link.' }),
});

const helperSpring = fields({ rate: positive, freeLength: positive, solidLength: notNegative });

const spring = fields({
  seat: z.optional(z.literal('strut', { error: '"strut"' })),
  upper: z.optional(name),
  lower: z.optional(name),
  lowerOn: z.optional(name),
  rate: about(z.optional(positive), { description: 'N/mm.' }),
  rates: about(z.optional(list(positive)), { description: 'The only rates a setup may use.' }),
  freeLength: z.optional(positive),
  installed: about(z.optional(positive), { description: 'Length between the seats at design, perch at zero.' }),
  solidLength: about(z.optional(notNegative), { description: 'Length when the coils touch.' }),
  helper: z.optional(helperSpring),
});

const damper = fields({
  upper: z.optional(name),
  lower: z.optional(name),
  lowerOn: z.optional(name),
  stroke: about(z.optional(positive), { description: 'From open to solid.' }),
  bumpStopAt: about(z.optional(anyNumber), { description: 'Damper travel at which rubber or packer first touches.' }),
  droopStopAt: about(z.optional(anyNumber), { description: 'The damper is fully open at damper travel = −droopStopAt.' }),
  open: about(z.optional(positive), { description: 'Eye-to-eye length fully open.' }),
  closed: about(z.optional(positive), { description: 'Eye-to-eye length solid.' }),
});

const antiRollBar = fields({
  pivot: about(point, { description: "Any point of the bar's centre line." }),
  axis: z.optional(direction),
  armEnd: point,
  linkEnd: point,
  linkOn: about(name, { description: 'What carries the link\'s other end: "strut", "knuckle", "trailingArm", "arm" or a rod.' }),
  rate: about(z.optional(notNegative), { description: 'N at each arm end per mm of one arm end with the other held.' }),
  holes: z.optional(list(fields({ name: filledText, armEnd: point, rate: z.optional(notNegative) }))),
});

const section = fields({
  diameter: positive,
  wall: about(z.optional(notNegative), { description: '0: solid.' }),
  modulus: about(z.optional(positive), { description: 'N/mm².' }),
  yield: about(z.optional(positive), { description: 'N/mm².' }),
});

const driveShaft = fields({
  inner: point,
  outer: point,
  innerAxis: z.optional(direction),
  plunge: z.optional(interval),
  maxAngleInner: z.optional(between(0, 90)),
  maxAngleOuter: z.optional(between(0, 90)),
});

export const axleSchema = about(
  fields({
    layout: z.enum(['strut', 'multi-link'], { error: '"strut" or "multi-link"' }),
    points: about(points, { description: 'Pickup points of the left side, at design.' }),
    rods: about(z.optional(named(name, rod)), {
      description: 'Rods of a multi-link: [point on the body, point on the knuckle].',
    }),
    trailingArm: z.optional(fields({ pivot: name, axis: direction })),
    right: about(z.optional(fields({ points: z.optional(points), wheel: z.optional(partialWheelSchema) })), {
      description: 'What is not the mirror image of the left side; y is negative on the right.',
    }),
    wheel: wheelSchema,
    steering: z.optional(steering),
    spring: z.optional(spring),
    damper: z.optional(damper),
    antiRollBar: z.optional(antiRollBar),
    sections: z.optional(named(name, section)),
    driveShaft: z.optional(driveShaft),
    brake: z.optional(fields({ disc: z.optional(fields({ radius: positive, thickness: positive, at: anyNumber })) })),
    strutTube: z.optional(fields({ radius: positive, from: anyNumber, to: anyNumber })),
    heightAt: z.optional(fields({ point, name: filledText })),
    travel: about(z.optional(interval), { description: 'Wheel travel [droop, bump] where no damper says it.' }),
    adjusters: z.optional(named(name, adjusterSchema)),
    toeAdjuster: about(z.optional(name), { description: 'The adjuster that resets toe when a setup asks for it.' }),
  }),
  { id: 'axle', title: 'Axle', description: 'One axle; the left side, which the right one mirrors.' },
);
