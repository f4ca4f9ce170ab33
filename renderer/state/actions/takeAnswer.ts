import { setupNames } from '../../../geometry/index';
import { answeredSetup, withAnswerPoints, type FoundAnswer } from '../answeredSetup';
import { benchOf, change, type BenchStore } from '../benchStore';
import { withCopy } from '../copiedFrom';
import { record } from '../history';
import { movedPointLines } from '../movedPoints';
import { freeTrialName, handedOn, setupNamed, withSetup } from '../settings';
import { chooseAgainst } from './editSetup';

/**
 * Puts an answer on the bench: one undo step.
 * Points of the drawing that it moves stand in the setup's notes as work to do, and so on its sheet.
 * @param as - `new`: a trial of its own beside the setup that was started from, which it is compared with; `change`: that setup
 *   itself is changed
 * @param name - what the person did, for the undo button: "Take clamp bolt 3 marks, top in"
 * @returns the setup that holds it now; null with no car open
 */
export const takeAnswer = (store: BenchStore, found: FoundAnswer, as: 'new' | 'change', name: string): string | null => {
  const { history } = store.getState();
  if (!history) return null;
  const { document, copies } = history.present;
  const setup = as === 'new' ? freeTrialName(setupNames(document)) : found.from;
  const withNames = document.setups ? document : withSetup(document, found.from, setupNamed(document, found.from));
  const answered = answeredSetup(document, found);
  const made = as === 'new' ? handedOn(answered) : answered;
  // points are of the drawing, which no sheet compares: what is to be done to the metal goes with the setup, in words
  const work = movedPointLines(document, found.points);
  const notes = [...(made.notes === undefined ? [] : [made.notes]), ...work].join('\n');
  const noted = work.length === 0 ? made : { ...made, notes };
  const taken = withSetup(withAnswerPoints(withNames, found.points), setup, noted);
  const beside = { against: found.from, againstCar: { kind: 'own' }, copies: withCopy(copies, setup, found.from) } as const;
  const bench = { ...history.present, ...(as === 'new' && beside), document: taken, setup };
  change(store, { history: record(history, name, bench) });
  return setup;
};

/**
 * Shows an answer in the view as what the setup it started from is compared with. The car is not changed.
 * @param title - what it is called where things that can be compared are listed
 */
export const showAnswer = (store: BenchStore, found: FoundAnswer, title: string): void => {
  const bench = benchOf(store.getState());
  if (!bench) return;
  const { history } = store.getState();
  if (history && bench.setup !== found.from) change(store, { history: { ...history, present: { ...bench, setup: found.from } } });
  const document = withSetup(withAnswerPoints(bench.document, found.points), title, answeredSetup(bench.document, found));
  chooseAgainst(store, title, { kind: 'answer', document: { ...document, setups: { [title]: document.setups?.[title] ?? {} } } });
};
