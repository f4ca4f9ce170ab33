import { createContext, useContext } from 'react';

/** What is said of the last run at the foot of the list, one line each: "4,394 combinations", "every one tried", "0.02 s". */
export type RunLines = readonly string[];

export const TellRunContext = createContext<(lines: RunLines) => void>(() => undefined);

/** How a study says what its last run took. */
export const useTellRun = (): ((lines: RunLines) => void) => useContext(TellRunContext);

/** "0.3 s", "12 s": how long a run took. @param ms - milliseconds */
export const timeTaken = (ms: number): string =>
  `${ms < 10_000 ? (ms / 1000).toFixed(ms < 1000 ? 2 : 1) : Math.round(ms / 1000)} s`;
