export { clockSeen, hourWords } from '../../geometry/index';
