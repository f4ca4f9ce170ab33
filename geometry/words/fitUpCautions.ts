/** What stands under every answer of fit-up, on the command line and in the window: what the car still has to show. */
const PROVE_IT =
  'Links are rigid: compliance and bent parts are not modelled. Prove it on the car, springs out, at full bump, droop and both locks.';

export const JOINT_CAUTIONS = [
  PROVE_IT,
  'Rated is the maker’s figure as typed. Makers publish three kinds of it for one bearing, and they differ by up to three times: make sure which one it is.',
] as const;

export const STROKE_CAUTIONS = [
  PROVE_IT,
  'Thread engagement: watch below 1.5 × the diameter in steel and 2.0 × in aluminium, out below 1.0 × and 1.5 × (common practice, no source); the material is that of the female thread. Lock nut and witness hole are checked on the car.',
] as const;

/** What stands under every answer about loads in links. */
export const LOAD_CAUTIONS = [
  'Not proof of strength: static, rigid links, no compliance, no fatigue, no shock. Critical parts need calculation and inspection by a qualified engineer, and the rules of the series come first.',
  'What balances the free travel acts along the spring (without one along the damper or strut): what goes beyond its own force at this position is what spring, damper and bump rubber must carry together. Weights of wheels, knuckles and links are not taken off.',
] as const;

/** What stands under every answer about clearance. */
export const CLEARANCE_CAUTIONS = [
  "Tyre growth and side deflection are as typed; compliance, bent parts and what the file does not describe are not in it. Prove it with clay or tape on the car, springs out, at full bump, full droop and both locks, and keep to the maker's service data and the rules of the series.",
] as const;

/** What stands under every answer about swept space, and on every template of it. */
export const KEEP_OUT_CAUTIONS = [
  PROVE_IT,
  'Tyre growth and side deflection are as typed; what the file does not describe is not in it. What may come near needs its own margin, in the growth or besides.',
] as const;
