export { mattersOf } from '../../geometry/index';
