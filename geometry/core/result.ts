/** An answer, or the reason why there is none. Solvers return this; they do not throw. */
export type Result<Value, Reason> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly failure: Reason };

export const succeed = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({ ok: true, value });
export const fail = <Reason>(failure: Reason): { readonly ok: false; readonly failure: Reason } => ({ ok: false, failure });
