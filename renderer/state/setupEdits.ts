import { setupNames, type CarDocument, type KeptQuestionDocument, type SetupDocument } from '../../geometry/index';
import { setupNamed } from './settings';

/** One line of what was written down about a setup: "pressure cold, bar" at each corner. */
export type RecordLine = NonNullable<SetupDocument['record']>[number];

const LONGEST_NAME = 60;

/** Why a setup cannot be called that; null where it can. @param own - its name now, which it may keep */
export const faultOfName = (document: CarDocument, name: string, own: string | null): string | null => {
  const wanted = name.trim();
  if (wanted === '') return 'A setup needs a name.';
  if (wanted.length > LONGEST_NAME) return `At most ${LONGEST_NAME} characters.`;
  if (/\p{Cc}/u.test(wanted)) return 'No line breaks or control characters.';
  if (/^[+-]?\d+$/.test(wanted)) return 'Put a word to the number: a file cannot keep the order of bare numbers.';
  if (wanted !== own && setupNames(document).includes(wanted)) return `There is a setup “${wanted}” already.`;
  return null;
};

/** Setups by name in order; a car that lists none has its one plain setup. */
const entriesOf = (document: CarDocument): readonly (readonly [string, SetupDocument])[] =>
  setupNames(document).map((name) => [name, setupNamed(document, name)] as const);

const withEntries = (document: CarDocument, entries: readonly (readonly [string, SetupDocument])[]): CarDocument => ({
  ...document,
  setups: Object.fromEntries(entries),
});

/** A setup put behind another one. */
export const withSetupAfter = (document: CarDocument, after: string, name: string, setup: SetupDocument): CarDocument =>
  withEntries(
    document,
    entriesOf(document).flatMap((entry) => (entry[0] === after ? [entry, [name, setup] as const] : [entry])),
  );

/** The setups that a kept question names. */
const setupsAsked = (question: KeptQuestionDocument): readonly string[] => {
  if (question.ask === 'compare') return question.against ?? [];
  return 'setup' in question && question.setup !== undefined ? [question.setup] : [];
};

const askedOf = (question: KeptQuestionDocument, from: string, to: string): KeptQuestionDocument => {
  if (!setupsAsked(question).includes(from)) return question;
  if (question.ask === 'compare')
    return { ...question, against: (question.against ?? []).map((name) => (name === from ? to : name)) };
  return 'setup' in question ? { ...question, setup: to } : question;
};

/** Everything that names a setup, told its new name. */
const withReferences = (document: CarDocument, from: string, to: string): CarDocument => {
  const named = <Value extends { readonly setup?: string }>(value: Value): Value =>
    value.setup === from ? { ...value, setup: to } : value;
  return {
    ...document,
    ...(document.onCar === from && { onCar: to }),
    ...(document.measurements && { measurements: document.measurements.map(named) }),
    ...(document.questions && {
      questions: Object.fromEntries(
        Object.entries(document.questions).map(([name, question]) => [name, askedOf(question, from, to)]),
      ),
    }),
  };
};

export const withSetupRenamed = (document: CarDocument, from: string, to: string): CarDocument =>
  withReferences(
    withEntries(
      document,
      entriesOf(document).map(([name, setup]) => [name === from ? to : name, setup]),
    ),
    from,
    to,
  );

/** What else in the file names a setup, in words; empty where nothing does. */
export const namedBy = (document: CarDocument, setup: string): readonly string[] => [
  ...(document.measurements ?? []).filter((one) => one.setup === setup).map(({ name }) => `the measurement “${name}”`),
  ...Object.entries(document.questions ?? {})
    .filter(([, question]) => setupsAsked(question).includes(setup))
    .map(([name]) => `the question “${name}”`),
];

/** Why a setup cannot be deleted; null where it can. */
export const faultOfDeleting = (document: CarDocument, name: string): string | null => {
  if (setupNames(document).length < 2) return 'The last setup stays: a car stands as something.';
  const users = namedBy(document, name);
  if (users.length === 0) return null;
  const all = users.join(' and ');
  const begun = all.charAt(0).toUpperCase() + all.slice(1);
  return `${begun} ${users.length === 1 ? 'is' : 'are'} of this setup, so it cannot be deleted.`;
};

export const withoutSetup = (document: CarDocument, name: string): CarDocument => {
  const { onCar, ...rest } = document;
  const kept = onCar === name ? rest : document;
  return withEntries(
    kept,
    entriesOf(document).filter(([other]) => other !== name),
  );
};

/** A setup moved on in the order of the file; the same document where it is at the end already. */
export const withSetupMoved = (document: CarDocument, name: string, by: number): CarDocument => {
  const entries = [...entriesOf(document)];
  const at = entries.findIndex(([other]) => other === name);
  const to = Math.min(entries.length - 1, Math.max(0, at + by));
  const [moved] = entries.splice(at, 1);
  if (!moved || to === at) return document;
  entries.splice(to, 0, moved);
  return withEntries(document, entries);
};

/** A setup with some of what it says replaced; what is undefined is taken out. */
export const withSetupPart = (
  document: CarDocument,
  name: string,
  part: { readonly notes?: string | undefined; readonly record?: readonly RecordLine[] | undefined },
): CarDocument => {
  const changed = Object.fromEntries(
    Object.entries({ ...setupNamed(document, name), ...part }).filter(([, value]) => value !== undefined),
  );
  return withEntries(
    document,
    entriesOf(document).map(([other, setup]) => [other, other === name ? changed : setup]),
  );
};

/** The document with another setup marked as the one that is on the car; null: none. */
export const withOnCar = (document: CarDocument, name: string | null): CarDocument => {
  if (name !== null) return { ...document, onCar: name };
  const { onCar, ...rest } = document;
  return onCar === undefined ? document : rest;
};
