export { shownQuantity, shownReading, withUnit, type Measured, type ShownQuantity } from '../../geometry/index';
