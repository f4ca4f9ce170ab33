import type { AxleDocument, CarDocument } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';

/** A label inside a sentence: small, unless it is an abbreviation. */
const inSentence = (label: string): string =>
  /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;

const keysOf = (axle: AxleDocument | undefined): readonly (readonly [string, string])[] => [
  ...Object.entries(axle?.adjusters ?? {}).map(([key, { label }]) => [key, inSentence(label ?? nameOfKey(key))] as const),
  ...[...Object.keys(axle?.points ?? {}), ...Object.keys(axle?.rods ?? {})].map(
    (key) => [key, nameOfKey(key).toLowerCase()] as const,
  ),
];

/** A message of the engine as the fitter says it: "tieRod" is "tie rod", or what the file calls that adjuster. */
export const inFieldWords = (message: string, document: CarDocument): string => {
  const words = new Map<string, string>([
    ['setToe', 'toe'],
    ['tieRod', 'tie rod'],
    ['armFront', 'the front leg of the arm'],
    ['trailingArm', 'trailing arm'],
  ]);
  for (const [key, name] of [...keysOf(document.rear), ...keysOf(document.front)].reverse()) words.set(key, name);
  return message.replace(/\b[A-Za-z_]\w*\b/g, (word) => words.get(word) ?? word);
};
