export { STANDARD_UNITS, unitWords, type ShownUnits, type UnitChoice } from '../../geometry/index';
