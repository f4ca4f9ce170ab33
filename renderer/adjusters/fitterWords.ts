export {
  fitterWords,
  fitterWordsOfSides,
  nameOfKey,
  partSize,
  shimsFor,
  turnsText,
  type FitterWords,
} from '../../geometry/index';
