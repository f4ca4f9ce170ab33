export { CLEARANCE_CAUTIONS, JOINT_CAUTIONS, LOAD_CAUTIONS, STROKE_CAUTIONS } from '../../geometry/index';

/** What stands under every table of readings: what the figures leave out. */
export const CAUTIONS =
  'Rigid links and spherical joints, no compliance. Effects of an adjuster are at the same wheel-centre height to the body. ' +
  'A motion ratio is spring per wheel; others print its inverse. A roll centre predicts load transfer only while left and right forces and slopes are alike.';
