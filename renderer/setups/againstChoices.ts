import { setupNames, type CarDocument } from '../../geometry/index';
import type { Bench } from '../state/benchStore';
import type { AgainstCar } from '../state/compared';

/** One thing that the setup on the bench can be held against. */
export interface AgainstChoice {
  readonly value: string;
  readonly label: string;
  readonly against: string;
  readonly againstCar: AgainstCar;
}

export interface AgainstGroup {
  readonly label: string;
  readonly choices: readonly AgainstChoice[];
}

const groupOf = (
  label: string,
  againstCar: AgainstCar,
  names: readonly string[],
  words: (name: string) => string,
): AgainstGroup => ({
  label,
  choices: names.map((name) => ({ value: `${againstCar.kind}:${name}`, label: words(name), against: name, againstCar })),
});

/**
 * What can be compared with: the other setups of the car, those of the car as saved where it was changed since, and those of
 * the other file, or the answer of a study, while one is compared with.
 * @param saved - the document as it was last read or saved
 */
export const againstGroups = (bench: Bench, saved: CarDocument | null): readonly AgainstGroup[] => {
  const { document, setup, againstCar } = bench;
  const others = setupNames(document).filter((name) => name !== setup);
  const groups = [groupOf('Setups of this car', { kind: 'own' }, others, (name) => name)];
  if (saved !== null && saved !== document)
    groups.push(groupOf('As saved', { kind: 'saved' }, setupNames(saved), (name) => `as saved: ${name}`));
  if (againstCar.kind === 'file')
    groups.push(
      groupOf(againstCar.title, againstCar, setupNames(againstCar.document), (name) => `${name} of ${againstCar.title}`),
    );
  if (againstCar.kind === 'answer')
    groups.push(groupOf('Answer of a study', againstCar, setupNames(againstCar.document), (name) => name));
  return groups.filter(({ choices }) => choices.length > 0);
};
