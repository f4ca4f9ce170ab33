export { clockSeen, hourWords, seenFromWords } from '../../geometry/index';
