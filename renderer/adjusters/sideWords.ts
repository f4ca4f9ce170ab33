export { sideWords } from '../../geometry/index';
