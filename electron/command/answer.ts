import type { StudyAnswers, StudyOrder } from '../../geometry/index';
import type { Options } from './options';
import type { LoadedCar } from './carSource';
import type { TextStyle } from './textTable';

/** Called again and again with how much of how much is done. */
export type Tell = (done: number, total: number) => Promise<void>;

/** What a verb was asked, its options read and its car found. */
export interface Call {
  /** the car, for the verbs that take one */
  readonly car: LoadedCar | null;
  readonly options: Options;
  /** paths of the files that the call reads: none of them may be written */
  readonly reads: readonly string[];
  /** works out a study of the car; throws a CommandError where its setup cannot be put together */
  readonly study: <Order extends StudyOrder>(order: Order) => Promise<StudyAnswers[Order['study']]>;
  /** tells how far a long answer has come, and lets Ctrl-C through */
  readonly progress: Tell;
}

/** A verb's answer: the document of `--json` (signed when printed), and the same in words. */
export interface Answer {
  readonly document: object;
  readonly words: (style: TextStyle) => string;
  /** printed to the letter instead of the words, when it is there */
  readonly text?: string;
}

export type VerbModule = { readonly answer: (call: Call) => Promise<Answer> };
