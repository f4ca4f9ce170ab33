/** What stands under every answer about loads in links. */
export const LOAD_CAUTIONS = [
  'Not proof of strength: static, rigid links, no compliance, no fatigue, no shock. Critical parts need calculation and inspection by a qualified engineer, and the rules of the series come first.',
  'What balances the free travel acts along the spring (without one along the damper or strut): what goes beyond its own force at this position is what spring, damper and bump rubber must carry together. Weights of wheels, knuckles and links are not taken off.',
] as const;

/** What stands under every table of readings: what the figures leave out. */
export const CAUTIONS =
  'Rigid links and spherical joints, no compliance. Effects of an adjuster are at the same wheel-centre height to the body. ' +
  'A motion ratio is spring per wheel; others print its inverse. A roll centre predicts load transfer only while left and right forces and slopes are alike.';
