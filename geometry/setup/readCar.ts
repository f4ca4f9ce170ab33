import { parseCar as parseText, parseCarBytes as parseBytes, type BadCarFile, type ParsedCar } from '../car/parseCar';
import type { Result } from '../core/result';
import { judgeMechanism } from './judgeMechanism';

/**
 * Reads a car file and judges it whole, the linkage at design included.
 * @param text - of the file, decoded; a byte-order mark is read and dropped
 * @returns the document as it stands in the file, or every fault with its place
 */
export const parseCar = (text: string): Result<ParsedCar, BadCarFile> => parseText(text, { judge: judgeMechanism });

/** As `parseCar`, from the bytes of a file. */
export const parseCarBytes = (bytes: Uint8Array): Result<ParsedCar, BadCarFile> => parseBytes(bytes, { judge: judgeMechanism });
