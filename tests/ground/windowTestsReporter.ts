import type { Reporter } from 'vitest/node';

export const WINDOW_TESTS_NOT_RUN =
  'Window tests were NOT run: no Chromium was found (set JOUNCE_CHROMIUM to one, or put chromium on the PATH).';

/** Says as the last line of a run that the window tests were not part of it, when no Chromium was found. */
export class WindowTestsReporter implements Reporter {
  constructor(private readonly hasChromium: boolean) {}

  onTestRunEnd(): void {
    if (!this.hasChromium) process.stdout.write(`${WINDOW_TESTS_NOT_RUN}\n`);
  }
}
