import { readingsInContractUnits, type CarReadings, type ReadingValues } from '../../geometry/index';

/** Readings of the whole car in contract units; its reasons keyed "wholeCar.rake". */
export const wholeCarInContractUnits = ({
  wholeCar,
  why: reasons,
}: CarReadings): { readonly values: ReadingValues; readonly why: Readonly<Record<string, string>> } => {
  const why = Object.entries(reasons).map(([key, reason]) => [`wholeCar.${key}`, reason]);
  return { values: readingsInContractUnits(wholeCar, 'car'), why: Object.fromEntries(why) };
};
