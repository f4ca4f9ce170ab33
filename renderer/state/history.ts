/**
 * Undo by keeping the old values: nothing is inverted, since every value is immutable and shares what did not change.
 */
export interface Step<Value> {
  /** what the person did, for the undo button: "Turn rear bushing" */
  readonly name: string;
  readonly value: Value;
}

export interface History<Value> {
  readonly present: Value;
  /** values before each step, oldest first */
  readonly past: readonly Step<Value>[];
  /** values after each undone step, the next to redo last */
  readonly future: readonly Step<Value>[];
  /** the value at the start of a drag that is still going on */
  readonly mark: Step<Value> | null;
  /** the next value belongs to the last step, as a notch of a wheel belongs to the one before */
  readonly joins?: true;
}

/** Steps that can be undone; older ones are forgotten. */
export const HISTORY_LENGTH = 500;

export const startHistory = <Value>(present: Value): History<Value> => ({ present, past: [], future: [], mark: null });

/**
 * A new present. During a drag it only replaces the present: the whole drag becomes one step when it settles.
 * An equal value is no step.
 */
export const record = <Value>(history: History<Value>, name: string, value: Value): History<Value> => {
  if (value === history.present) return history;
  if (history.mark) return { ...history, present: value, mark: { name, value: history.mark.value } };
  const last = history.joins && history.past.at(-1);
  const past = last
    ? [...history.past.slice(0, -1), { name, value: last.value }]
    : [...history.past, { name, value: history.present }].slice(-HISTORY_LENGTH);
  return { present: value, past, future: [], mark: null };
};

/** The start of a drag. */
export const mark = <Value>(history: History<Value>): History<Value> =>
  history.mark ? history : { ...history, mark: { name: '', value: history.present } };

/** The end of a drag: one step, or none when it ended where it began. */
export const settle = <Value>(history: History<Value>): History<Value> => {
  if (!history.mark) return history;
  const { name, value } = history.mark;
  if (value === history.present) return { ...history, mark: null };
  return { present: history.present, past: [...history.past, { name, value }].slice(-HISTORY_LENGTH), future: [], mark: null };
};

/** A drag given up: the value at its start comes back. */
export const abandon = <Value>(history: History<Value>): History<Value> =>
  history.mark ? { ...history, present: history.mark.value, mark: null } : history;

/** One step back. During a drag there is none: what the hand holds is not in a step yet, and the one before is not meant. */
export const undo = <Value>(history: History<Value>): History<Value> => {
  const last = history.past.at(-1);
  if (!last || history.mark) return history;
  return {
    present: last.value,
    past: history.past.slice(0, -1),
    future: [...history.future, { name: last.name, value: history.present }],
    mark: null,
  };
};

/** One step forward; none during a drag. */
export const redo = <Value>(history: History<Value>): History<Value> => {
  const next = history.future.at(-1);
  if (!next || history.mark) return history;
  return {
    present: next.value,
    past: [...history.past, { name: next.name, value: history.present }],
    future: history.future.slice(0, -1),
    mark: null,
  };
};
