import type { CarDocument } from '../../geometry/index';

const MM_PER_INCH = 25.4;

/** Millimetres in one unit of length of the file. Settings are kept in the file's unit and shown in mm. */
export const mmPerFileUnit = (document: CarDocument): number => (document.units?.length === 'in' ? MM_PER_INCH : 1);

/** A length in mm as the file's unit has it, to nine decimals so that 0.1 in stays 0.1. */
export const toFileLength = (document: CarDocument, mm: number): number => Number((mm / mmPerFileUnit(document)).toFixed(9));
