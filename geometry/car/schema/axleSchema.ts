import * as z from 'zod';
import { adjusterSchema } from './adjusterSchema';
import {
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
  axis: direction.meta({ description: 'Direction in which the rack moves; belongs to the car and is not mirrored.' }),
  travel: z
    .union([notNegative, interval], { error: 'a number (each way from centre) or [negative end, positive end]' })
    .optional()
    .meta({ description: 'Rack travel each way from centre, or [negative end, positive end].' }),
  perTurn: positive.optional().meta({ description: 'Rack travel for one turn of the steering wheel.' }),
  rod: name.optional().meta({ description: 'The rod that the rack moves; needed on a multi-link.' }),
});

const helperSpring = fields({ rate: positive, freeLength: positive, solidLength: notNegative });

const spring = fields({
  seat: z.literal('strut', { error: '"strut"' }).optional(),
  upper: name.optional(),
  lower: name.optional(),
  lowerOn: name.optional(),
  rate: positive.optional().meta({ description: 'N/mm.' }),
  rates: list(positive).optional().meta({ description: 'The only rates a setup may use.' }),
  freeLength: positive.optional(),
  installed: positive.optional().meta({ description: 'Length between the seats at design, perch at zero.' }),
  solidLength: notNegative.optional().meta({ description: 'Length when the coils touch.' }),
  helper: helperSpring.optional(),
});

const damper = fields({
  upper: name.optional(),
  lower: name.optional(),
  lowerOn: name.optional(),
  stroke: positive.optional().meta({ description: 'From open to solid.' }),
  bumpStopAt: anyNumber.optional().meta({ description: 'Damper travel at which rubber or packer first touches.' }),
  droopStopAt: anyNumber.optional().meta({ description: 'The damper is fully open at damper travel = −droopStopAt.' }),
  open: positive.optional().meta({ description: 'Eye-to-eye length fully open.' }),
  closed: positive.optional().meta({ description: 'Eye-to-eye length solid.' }),
});

const antiRollBar = fields({
  pivot: point.meta({ description: "Any point of the bar's centre line." }),
  axis: direction.optional(),
  armEnd: point,
  linkEnd: point,
  linkOn: name.meta({ description: 'What carries the link\'s other end: "strut", "knuckle", "trailingArm", "arm" or a rod.' }),
  rate: notNegative.optional().meta({ description: 'N at each arm end per mm of one arm end with the other held.' }),
  holes: list(fields({ name: filledText, armEnd: point, rate: notNegative.optional() })).optional(),
});

const section = fields({
  diameter: positive,
  wall: notNegative.optional().meta({ description: '0: solid.' }),
  modulus: positive.optional().meta({ description: 'N/mm².' }),
  yield: positive.optional().meta({ description: 'N/mm².' }),
});

const driveShaft = fields({
  inner: point,
  outer: point,
  innerAxis: direction.optional(),
  plunge: interval.optional(),
  maxAngleInner: between(0, 90).optional(),
  maxAngleOuter: between(0, 90).optional(),
});

export const axleSchema = fields({
  layout: z.enum(['strut', 'multi-link'], { error: '"strut" or "multi-link"' }),
  points: points.meta({ description: 'Pickup points of the left side, at design.' }),
  rods: named(name, rod).optional().meta({ description: 'Rods of a multi-link: [point on the body, point on the knuckle].' }),
  trailingArm: fields({ pivot: name, axis: direction }).optional(),
  right: fields({ points: points.optional(), wheel: partialWheelSchema.optional() })
    .optional()
    .meta({ description: 'What is not the mirror image of the left side; y is negative on the right.' }),
  wheel: wheelSchema,
  steering: steering.optional(),
  spring: spring.optional(),
  damper: damper.optional(),
  antiRollBar: antiRollBar.optional(),
  sections: named(name, section).optional(),
  driveShaft: driveShaft.optional(),
  brake: fields({ disc: fields({ radius: positive, thickness: positive, at: anyNumber }).optional() }).optional(),
  strutTube: fields({ radius: positive, from: anyNumber, to: anyNumber }).optional(),
  heightAt: fields({ point, name: filledText }).optional(),
  travel: interval.optional().meta({ description: 'Wheel travel [droop, bump] where no damper says it.' }),
  adjusters: named(name, adjusterSchema).optional(),
  toeAdjuster: name.optional().meta({ description: 'The adjuster that resets toe when a setup asks for it.' }),
}).meta({ id: 'axle', title: 'Axle', description: 'One axle; the left side, which the right one mirrors.' });
