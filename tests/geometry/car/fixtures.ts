import { readFileSync } from 'node:fs';
import type { CarDocument } from '../../../geometry/car/document';

export const readFixture = (path: string): string => readFileSync(new URL(`../../fixtures/${path}`, import.meta.url), 'utf8');
export const readGolden = (name: string): string =>
  readFileSync(new URL(`../../golden/cars/${name}.jounce.json`, import.meta.url), 'utf8');

/** Every key of the format, front strut and rear trailing arm, in mm. */
export const EVERYTHING = readFixture('cars/everything.jounce.json');
/** A steered double wishbone alone, in inches. */
export const WISHBONES = readFixture('cars/wishbones.jounce.json');
export const GOLDEN_NAMES = ['car-21', 'car-22', 'car-23', 'car-24'] as const;
export const GOOD_CARS: readonly (readonly [name: string, text: string])[] = [
  ['everything', EVERYTHING],
  ['wishbones', WISHBONES],
  ...GOLDEN_NAMES.map((name) => [name, readGolden(name)] as const),
];

export const documentOf = (text: string): CarDocument => JSON.parse(text) as CarDocument;
