import { setupNames, type CarDocument } from '../../geometry/index';

/**
 * Which car the compared setup is a setup of: `own`, the one on the bench; `saved`, the same as it was last read or saved;
 * `file`, another one that was opened for comparing only; `answer`, the car with what a study found.
 */
export type AgainstCar =
  | { readonly kind: 'own' }
  | { readonly kind: 'saved' }
  | { readonly kind: 'file'; readonly title: string; readonly document: CarDocument }
  | { readonly kind: 'answer'; readonly document: CarDocument };

/** What the setup on the bench is held against. */
export interface Compared {
  readonly document: CarDocument;
  readonly setup: string;
  /** how it is called on the screen: "Baseline", "Baseline as saved", "Sprint of Marram coupe" */
  readonly name: string;
}

interface Choice {
  readonly document: CarDocument;
  readonly setup: string;
  readonly against: string;
  readonly againstCar: AgainstCar;
}

const documentOf = (choice: Choice, saved: CarDocument | null): CarDocument => {
  switch (choice.againstCar.kind) {
    case 'own':
      return choice.document;
    case 'saved':
      return saved ?? choice.document;
    case 'file':
    case 'answer':
      return choice.againstCar.document;
  }
};

const nameOf = (choice: Choice, setup: string): string => {
  switch (choice.againstCar.kind) {
    case 'own':
    case 'answer':
      return setup;
    case 'saved':
      return `${setup} as saved`;
    case 'file':
      return `${setup} of ${choice.againstCar.title}`;
  }
};

/**
 * What a bench is compared with; the first setup where the one chosen is no longer there.
 * @param saved - the document as it was last read or saved
 * @returns null where it would be the setup on the bench itself: there is nothing to compare
 */
export const comparedOf = (choice: Choice, saved: CarDocument | null): Compared | null => {
  const document = documentOf(choice, saved);
  const names = setupNames(document);
  const setup = names.includes(choice.against) ? choice.against : (names[0] ?? choice.against);
  if (document === choice.document && setup === choice.setup) return null;
  return { document, setup, name: nameOf(choice, setup) };
};
