export { fitterWords, fitterWordsOfSides, nameOfKey, partSize, shimsFor, turnsText } from '../../geometry/index';
