import type { ServerResponse } from 'node:http';

/** How often a line is sent down each open stream; a window that went without a word is noticed by it. */
const SIGN_MS = 15_000;

/**
 * Whether the window is still there. It keeps a stream open; `onGone` is called once when there has been no stream and no
 * request for `goneAfterMs`. Before the first sign of the window nothing is counted: it may take a person long to open it.
 */
export class Presence {
  private readonly streams = new Set<ServerResponse>();
  private timer: NodeJS.Timeout | null = null;
  private readonly signs: NodeJS.Timeout;

  constructor(
    private readonly goneAfterMs: number,
    private readonly onGone: () => void,
  ) {
    this.signs = setInterval(() => this.streams.forEach((stream) => stream.write(':\n\n')), SIGN_MS);
    this.signs.unref();
  }

  get isSeen(): boolean {
    return this.streams.size > 0;
  }

  /** A sign of life: the count starts again. */
  noteSign(): void {
    if (this.timer) clearTimeout(this.timer);
    this.timer = this.isSeen ? null : setTimeout(this.onGone, this.goneAfterMs);
  }

  /** Keeps a stream open until the window closes it. @param onClosed - called then */
  hold(stream: ServerResponse, onClosed: () => void): void {
    stream.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' });
    stream.write(':\n\n');
    this.streams.add(stream);
    stream.on('close', () => {
      this.streams.delete(stream);
      this.noteSign();
      onClosed();
    });
    this.noteSign();
  }

  /** Ends the streams and counts no more. */
  close(): void {
    clearInterval(this.signs);
    this.streams.forEach((stream) => stream.removeAllListeners('close').end());
    this.streams.clear();
    if (this.timer) clearTimeout(this.timer);
  }
}
