import type { CarDocument, KeptQuestionDocument } from '../../../geometry/index';
import type { BenchStore } from '../benchStore';
import { editCar } from './editCar';

const LONGEST_NAME = 60;

/** Why a question cannot be called that; null where it can. @param own - its name now, which it may keep */
export const faultOfQuestionName = (document: CarDocument, name: string, own: string | null): string | null => {
  const wanted = name.trim();
  if (wanted === '') return 'A question needs a name.';
  if (wanted.length > LONGEST_NAME) return `At most ${LONGEST_NAME} characters.`;
  if (/\p{Cc}/u.test(wanted)) return 'No line breaks or control characters.';
  if (/^[+-]?\d+$/.test(wanted)) return 'Put a word to the number: a file cannot keep the order of bare numbers.';
  if (wanted !== own && Object.hasOwn(document.questions ?? {}, wanted)) return `There is a question “${wanted}” already.`;
  return null;
};

const withQuestions = (document: CarDocument, entries: readonly (readonly [string, KeptQuestionDocument])[]): CarDocument => {
  const { questions, ...rest } = document;
  if (entries.length > 0) return { ...document, questions: Object.fromEntries(entries) };
  return questions === undefined ? document : rest;
};

const entriesOf = ({ questions = {} }: CarDocument): readonly (readonly [string, KeptQuestionDocument])[] =>
  Object.entries(questions);

/** Keeps a question in the car file, in the place of the one of that name where there is one. */
export const keepQuestion = (store: BenchStore, name: string, question: KeptQuestionDocument): void =>
  editCar(store, `Keep question ${name}`, (document) =>
    Object.hasOwn(document.questions ?? {}, name)
      ? withQuestions(
          document,
          entriesOf(document).map(([other, kept]) => [other, other === name ? question : kept]),
        )
      : withQuestions(document, [...entriesOf(document), [name, question]]),
  );

export const renameQuestion = (store: BenchStore, from: string, to: string): void =>
  editCar(store, `Rename question ${from}`, (document) =>
    from === to
      ? document
      : withQuestions(
          document,
          entriesOf(document).map(([name, question]) => [name === from ? to : name, question]),
        ),
  );

export const deleteQuestion = (store: BenchStore, name: string): void =>
  editCar(store, `Delete question ${name}`, (document) =>
    withQuestions(
      document,
      entriesOf(document).filter(([other]) => other !== name),
    ),
  );
