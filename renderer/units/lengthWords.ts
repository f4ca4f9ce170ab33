export { lengthWords } from '../../geometry/index';
