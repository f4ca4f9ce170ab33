/**
 * How the window reaches files. The window knows nothing else of the machine that it runs on.
 *
 * Two implementations keep this contract: in Electron the preload script hands one over as `window.jounce`; in a browser
 * the window asks the loopback server that served it (`GET /api/samples`, `GET /api/samples/<name>`, each answered with the
 * JSON of the same `FileAnswer`; status 200 when `ok`, 404 or 500 with `ok: false`). No method throws or rejects:
 * what goes wrong is a `FileFailure`.
 */
export interface FileService {
  /** The cars that come with the program, sorted by name. */
  listSamples(): Promise<FileAnswer<readonly SampleFile[]>>;
  /** The text of one of them; `name` is one of those that `listSamples` gave. */
  readSample(name: string): Promise<FileAnswer<OpenedFile>>;
}

/** A car that comes with the program. */
export interface SampleFile {
  /** The file's name without its ending `.jounce.json`. */
  readonly name: string;
}

export interface OpenedFile {
  readonly name: string;
  /** The whole file, decoded from UTF-8. */
  readonly text: string;
}

export type FileAnswer<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly failure: FileFailure };

/** Why a file could not be had. The screen turns the code into a sentence; `name` is the file, or null. */
export interface FileFailure {
  /** `notFound`: no such file. `unreadable`: the system would not read it. `disconnected`: nobody answers any more. */
  readonly code: 'notFound' | 'unreadable' | 'disconnected';
  readonly name: string | null;
}

/**
 * In a browser the window keeps an `EventSource` open on this address as long as it lives: the server counts these and
 * ends when there has been none for a minute. Electron does not serve it.
 */
export const PRESENCE_ADDRESS = '/api/presence';

/** What Electron's preload script puts on the window; absent in a browser. */
export interface WindowBridge {
  readonly jounce?: FileService;
}
