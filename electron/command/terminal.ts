/** Half a second: what takes longer tells how far it has come, when someone is watching. */
const QUIET_MS = 500;
/** Between two reports, and between two chances for Ctrl-C. */
const BETWEEN_MS = 50;

/** Writes to standard output and waits while whoever reads it is behind. */
export async function print(text: string): Promise<void> {
  if (process.stdout.write(text)) return;
  await new Promise<void>((resolve) => process.stdout.once('drain', resolve));
}

export function printError(text: string): void {
  process.stderr.write(text);
}

/** Colour only on a terminal whose user has not asked for none. */
export const hasColour = (): boolean => process.stdout.isTTY === true && (process.env['NO_COLOR'] ?? '') === '';

/** Tells on standard error how far the work has come, and lets signals through; `done` without a total counts lines. */
export class Progress {
  private readonly started = performance.now();
  private last = this.started;
  private shown = false;

  async report(done: number, total: number | null): Promise<void> {
    const now = performance.now();
    if (now - this.last < BETWEEN_MS) return;
    if (process.stderr.isTTY === true && now - this.started > QUIET_MS) {
      this.shown = true;
      printError(total === null ? `\r${done} lines` : `\r${Math.floor((100 * done) / total)} %`);
    }
    await this.breathe();
  }

  /** Lets signals through, now and then. */
  async breathe(): Promise<void> {
    const now = performance.now();
    if (now - this.last < BETWEEN_MS) return;
    this.last = now;
    await new Promise((resolve) => setImmediate(resolve));
  }

  /** Takes the last report off the screen. */
  end(): void {
    if (this.shown) printError('\r\u001b[K');
  }
}

/**
 * Says once, if someone is there to see it, that input is waited for when none has come for half a second.
 * @returns to be called when some has come
 */
export function sayWhileWaiting(name: string): () => void {
  if (process.stderr.isTTY !== true) return () => undefined;
  const timer = setTimeout(() => printError(`jounce: waiting for ${name}\n`), QUIET_MS);
  return () => clearTimeout(timer);
}

/**
 * Ends at once on Ctrl-C, and quietly when whoever reads the output has had enough (`| head`).
 */
export function installSignals(): void {
  process.on('SIGINT', () => process.exit(130));
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit(0);
      if (stream === process.stdout) {
        process.stderr.write(`jounce: cannot write the answer: ${error.code ?? error.message}\n`);
        process.exit(3);
      }
    });
}
