/**
 * The same function, remembering the few answers that were last asked for, by the identity of the arguments.
 * Documents and setups are immutable, so the same object means the same answer.
 */
export const memoLast = <Arguments extends readonly unknown[], Answer>(
  work: (...args: Arguments) => Answer,
  most = 4,
): ((...args: Arguments) => Answer) => {
  let answers: { readonly args: Arguments; readonly answer: Answer }[] = [];
  return (...args) => {
    const known = answers.findIndex((entry) => entry.args.every((value, index) => Object.is(value, args[index])));
    const kept = answers[known];
    if (kept) {
      // What is asked again and again outlives what was asked once: the compared setup, while the other one is turned.
      if (known > 0) answers = [kept, ...answers.slice(0, known), ...answers.slice(known + 1)];
      return kept.answer;
    }
    const answer = work(...args);
    answers = [{ args, answer }, ...answers].slice(0, most);
    return answer;
  };
};
