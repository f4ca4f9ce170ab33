import { readingsInContractUnits, type ReadingValues, type WholeCarRow } from '../../geometry/index';

/** Readings of the whole car in contract units; its reasons keyed "wholeCar.rake". */
export const wholeCarInContractUnits = ({
  readings,
  why: reasons,
}: WholeCarRow): { readonly values: ReadingValues; readonly why: Readonly<Record<string, string>> } => {
  const why = Object.entries(reasons).map(([key, reason]) => [`wholeCar.${key}`, reason]);
  return { values: readingsInContractUnits(readings, 'car'), why: Object.fromEntries(why) };
};
